import { addDays } from '../../shared/calendar/plain-date.js';
import { estimatedClimate } from '../../shared/farm/estimated-climate.js';
import type { Grazing } from '../../shared/farm/herd-places.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import { planPasture, type PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import type { StartDefaults } from '../../shared/plan/start/start-defaults.js';
import { startFarm } from '../../shared/plan/start/start-farm.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { estimateClimate } from '../../shared/weather/climate-estimate.js';
import { loadRegions } from '../../src/climate-estimate/load-regions.js';
import { readSeed } from '../../src/reference/load-tables.js';
import { tables } from './factories.js';

/** Hay counted on the day of the start, kg. */
export const COUNTED_KG = 22_455;
export const STARTED_ON = '2026-11-30';
export const LOOKS_ON = ['2027-04-20', '2027-05-05', '2027-05-20', '2027-06-10', '2027-07-01'];

/** Eight cows on twenty acres in central Pennsylvania that make hay, as they are when they have begun. */
export function startedHayFarm(): FarmPicture {
  const at = { latitudeDeg: 40.9, longitudeDeg: -77.5, elevationM: 330 };
  const estimate = estimateClimate(loadRegions(), at)!;
  let made = 0;
  const rows = startFarm(
    {
      start: {
        ...{ ...at, timeZone: 'America/New_York', units: 'us', currency: 'USD' },
        people: [{ free: 'mornings-and-evenings' }, { free: 'evenings' }],
        cattle: [{ classId: 'cow-calf', head: 8, calvesOn: '2027-04-15' }],
        paddocks: { count: 10, allM2: 20 * 4046.86 },
      },
      ...{ today: STARTED_ON, publicHolidays: [] },
      defaults: JSON.parse(readSeed('start.json')) as StartDefaults,
      estimate: estimatedClimate(estimate, tables.nights.likeness.value),
    },
    { tables, newId: () => `row-${++made}` },
  );
  const { monthlyMinC, monthlyMaxC, monthlyRainMm } = rows.farm;
  return {
    ...rows,
    today: STARTED_ON,
    climate: climateFromMonthlyMeans(monthlyMinC, monthlyMaxC, 6, monthlyRainMm),
    ...{ products: [], brooderLooks: [], weighings: [], cows: [], readings: [], jobs: [] },
    ...{ handovers: [], progress: [], groundChecks: [], keptPlans: [], eggCounts: [] },
    publicHolidays: [],
    grazings: [],
    pastureChoices: {
      ...rows.pastureChoices,
      ...{ makesHay: true, hayInStoreKg: COUNTED_KG, hayInStoreOn: STARTED_ON },
    },
  };
}

/** The same on later days, each move told as it was planned on the day before it that is looked at. */
export function looksAtHayFarm(): { picture: FarmPicture; plan: PasturePlan }[] {
  let picture = startedHayFarm();
  return [STARTED_ON, ...LOOKS_ON].map((today, k) => {
    picture = { ...picture, today };
    const plan = planPasture(picture, tables);
    const looked = { picture, plan };
    const next = LOOKS_ON[k];
    if (next !== undefined) picture = movedAsPlanned(picture, plan, next);
    return looked;
  });
}

function movedAsPlanned(picture: FarmPicture, plan: PasturePlan, until: string): FarmPicture {
  const grazings: Grazing[] = [...(picture.grazings ?? [])];
  for (const { herdId, paddockId, from } of plan.moves) {
    const last = grazings.at(-1);
    if (until <= from || (last?.to === undefined && last?.paddockId === paddockId)) continue;
    if (last) grazings[grazings.length - 1] = { ...last, to: addDays(from, -1) };
    grazings.push({ herdId, paddockId, from });
  }
  const now = grazings.at(-1);
  if (!now) return picture;
  return {
    ...picture,
    grazings: [...grazings.slice(0, -1), { ...now, seenOn: until }],
    herds: picture.herds.map((herd) => ({
      ...herd,
      ...{ inPaddockId: now.paddockId, inSince: now.from },
    })),
  };
}
