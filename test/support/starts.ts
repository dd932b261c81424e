import { estimatedClimate } from '../../shared/farm/estimated-climate.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import type { Start } from '../../shared/farm/start.js';
import type { StartDefaults } from '../../shared/plan/start/start-defaults.js';
import { startFarm, type StartedFarm } from '../../shared/plan/start/start-farm.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { estimateClimate } from '../../shared/weather/climate-estimate.js';
import { loadRegions } from '../../src/climate-estimate/load-regions.js';
import { readSeed } from '../../src/reference/load-tables.js';
import { tables } from './factories.js';

const defaults = JSON.parse(readSeed('start.json')) as StartDefaults;
const regions = loadRegions();
export const TODAY = '2026-11-27';

const VERMONT: Start = {
  ...{ latitudeDeg: 44.3, longitudeDeg: -72.5, elevationM: 250, place: 'Montpelier' },
  ...{ timeZone: 'America/New_York', units: 'us', currency: 'USD' },
  people: [{ free: 'mornings-and-evenings' }, {}],
};

export function start(more: Partial<Start>, today = TODAY): StartedFarm {
  const asked = { ...VERMONT, ...more };
  const { latitudeDeg, longitudeDeg, elevationM = 200 } = asked;
  const estimate = estimateClimate(regions, { latitudeDeg, longitudeDeg, elevationM });
  let made = 0;
  return startFarm(
    {
      ...{ start: asked, today, publicHolidays: [], defaults },
      ...(estimate ? { estimate: estimatedClimate(estimate, tables.nights.likeness.value) } : {}),
    },
    { tables, newId: () => `row-${++made}` },
  );
}

export function pictureOf(rows: StartedFarm): FarmPicture {
  const { monthlyMinC, monthlyMaxC, monthlyRainMm } = rows.farm;
  return {
    ...rows,
    today: TODAY,
    climate: climateFromMonthlyMeans(monthlyMinC, monthlyMaxC, 6, monthlyRainMm),
    ...{
      products: [],
      headChanges: [],
      brooderLooks: [],
      weighings: [],
      cows: [],
      readings: [],
      pastureChoices: {},
      jobs: [],
    },
    ...{ handovers: [], progress: [], groundChecks: [], keptPlans: [], eggCounts: [] },
  };
}
