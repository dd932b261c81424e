import { addDays } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { Person } from '../../shared/farm/farm.js';
import type { CattleGroup } from '../../shared/farm/herd.js';
import { estimatedClimate } from '../../shared/farm/estimated-climate.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { estimateClimate } from '../../shared/weather/climate-estimate.js';
import { loadRegions } from '../../src/climate-estimate/load-regions.js';
import { newBatch, newFarm, newRequest, tables } from './factories.js';
import { newHerd, newPaddocks } from './pasture-factories.js';
import { newPicture } from './pictures.js';
import { newOwnJob } from './season-factories.js';

export const TODAY = '2027-03-15';

const EVENINGS = [2, 2, 2, 2, 2, 6, 4];
const AT_HOME = [5, 5, 5, 5, 5, 6, 3];
const AT_WORK = [1, 1, 1, 1, 1, 7, 5];

const person = (name: string, hoursByWeekday: number[], more: Partial<Person> = {}): Person => ({
  ...{ id: name, name, away: [], hoursByWeekday },
  ...more,
});
const atHome = (name: string, more: Partial<Person> = {}): Person =>
  person(name, AT_HOME, { byDay: 'at-home', ...more });
const child = (name: string): Person => person(name, [1, 1, 1, 1, 1, 2, 2], { isChild: true });
const meat = (more: Partial<Batch> = {}) => ({
  ...newBatch({ arrivalDate: '2027-05-05', wantedBirds: 40, leaveAgeDays: 56, ...more }),
  id: 'meat',
  name: 'Meat',
});
const hens = (more: Partial<Batch> = {}) => ({
  ...meat({ purpose: 'layers', strainId: 'brown-layer', sex: 'pullets', wantedBirds: 30, ...more }),
  id: 'hens',
  name: 'Hens',
});
const cattle = (more: CattleGroup[] = []) => ({
  herds: [newHerd({ groups: [{ classId: 'cow-calf', head: 4, calvesOn: '2027-05-01' }, ...more] })],
  paddocks: newPaddocks(6),
});
const ground = { dryGround: true } as const;
const beds = (hours: number) =>
  newOwnJob({
    id: 'beds',
    name: 'Dig the new beds',
    hours,
    dueOn: '2027-05-10',
    conditions: ground,
  });
const fence = newOwnJob({ id: 'fence', name: 'Mend the fence', hours: 8, dueOn: '2027-04-20' });
const potatoes = (dueOn: string, noUseAfter: string) =>
  newOwnJob({
    id: 'potatoes',
    name: 'Plant potatoes',
    hours: 5,
    conditions: { ...ground, soilAtLeastC: 7.2 },
    dueOn,
    noUseAfter,
  });
const trees = newOwnJob({
  id: 'trees',
  name: 'Plant the young trees',
  hours: 5,
  conditions: ground,
  dueOn: '2027-03-22',
  noUseAfter: '2027-03-26',
});
const jobs = [beds(24), fence, potatoes('2027-04-25', '2027-05-10')];

/** Where they live, with the climate that is estimated there. */
const PLACES = {
  ithaca: { latitudeDeg: 42.44, longitudeDeg: -76.5, elevationM: 250 },
  montpelier: { latitudeDeg: 44.26, longitudeDeg: -72.58, elevationM: 180 },
  lancaster: { latitudeDeg: 40.04, longitudeDeg: -76.31, elevationM: 110 },
  madison: { latitudeDeg: 43.07, longitudeDeg: -89.4, elevationM: 270 },
  portland: { latitudeDeg: 45.52, longitudeDeg: -122.68, elevationM: 60 },
  olympia: { latitudeDeg: 47.04, longitudeDeg: -122.9, elevationM: 60 },
  coopersville: { latitudeDeg: 43.06, longitudeDeg: -85.93, elevationM: 195 },
  fortCollins: { latitudeDeg: 40.59, longitudeDeg: -105.08, elevationM: 1520 },
  springfield: { latitudeDeg: 37.2, longitudeDeg: -93.29, elevationM: 390 },
  mallow: { latitudeDeg: 52.2, longitudeDeg: -8.3, elevationM: 60 },
};

const regions = loadRegions();

/** A farm there, its averages as a first start takes them. */
function farmIn(place: keyof typeof PLACES): Pick<FarmPicture, 'farm' | 'climate'> {
  const { latitudeDeg, longitudeDeg, elevationM } = PLACES[place];
  const estimate = estimateClimate(regions, PLACES[place])!;
  const means = estimatedClimate(estimate, tables.nights.likeness.value);
  const { monthlyMinC, monthlyMaxC, monthlyRainMm, lastFrost, firstFrost, frostDatesAre } = means;
  const figures = { monthlyMinC, monthlyMaxC, monthlyRainMm, lastFrost, firstFrost, frostDatesAre };
  const farm = newFarm({ latitudeDeg, longitudeDeg, elevationM, ...figures });
  const climate = climateFromMonthlyMeans(monthlyMinC, monthlyMaxC, 6, monthlyRainMm);
  return { farm, climate };
}

function householdOf(place: keyof typeof PLACES, more: Partial<FarmPicture>): FarmPicture {
  const { facilities } = newRequest();
  return newPicture({ ...farmIn(place), facilities, today: TODAY, jobs, ...more });
}

/** Days away of a household at its first calving. */
const AT_CALVING = { away: [{ from: '2027-04-29', to: '2027-05-03' }] };
const IN_MAY = { away: [{ from: '2027-05-01', to: '2027-05-31' }] };

const WET_SPRING = Array.from({ length: 12 }, (_, k) => addDays(TODAY, k)).map((date) => ({
  ...{ date, minC: 4, maxC: 10, rainMm: 9 },
}));

/** Ten invented households in a spring, each short of something else. */
export const TEN_HOUSEHOLDS: readonly (readonly [string, FarmPicture])[] = [
  [
    'one alone',
    householdOf('montpelier', { people: [person('Ann', EVENINGS)], batches: [meat()] }),
  ],
  [
    'two with jobs',
    householdOf('lancaster', {
      people: [person('Ann', AT_WORK), person('Ben', AT_WORK)],
      batches: [meat({ wantedBirds: 60 })],
    }),
  ],
  [
    'three generations',
    householdOf('madison', {
      people: [
        { ...atHome('Gran'), hoursByWeekday: [3, 3, 3, 3, 3, 2, 2] },
        person('Ann', EVENINGS),
        person('Ben', EVENINGS),
        child('Tom'),
      ],
      batches: [meat({ wantedBirds: 100 }), hens()],
      ...cattle(),
    }),
  ],
  [
    'a milk cow',
    householdOf('ithaca', {
      people: [person('Ann', EVENINGS), person('Ben', AT_WORK)],
      batches: [meat()],
      ...cattle([{ classId: 'milk-cow', head: 1, calvesOn: '2027-04-20' }]),
    }),
  ],
  [
    'twins in May',
    householdOf('portland', {
      people: [atHome('Ann', IN_MAY), person('Ben', [2, 2, 2, 2, 2, 4, 4])],
      batches: [meat()],
    }),
  ],
  [
    'a wet spring',
    householdOf('olympia', {
      climate: { ...farmIn('olympia').climate, forecast: WET_SPRING },
      people: [person('Ann', EVENINGS), person('Ben', EVENINGS)],
      batches: [meat({ arrivalDate: '2027-04-14' })],
      jobs: [beds(24), fence, trees],
    }),
  ],
  [
    'away at calving',
    householdOf('coopersville', {
      people: [atHome('Ann', AT_CALVING), person('Ben', AT_WORK, AT_CALVING)],
      ...cattle(),
    }),
  ],
  [
    'a slot in July',
    householdOf('fortCollins', {
      people: [person('Ann', EVENINGS), person('Ben', AT_WORK)],
      batches: [
        meat({
          ...{ wantedBirds: 80, processing: 'hired', slotDate: '2027-07-08' },
          arrivalDate: '2027-05-12',
        }),
      ],
    }),
  ],
  [
    'no machine',
    householdOf('springfield', {
      people: [person('Ann', EVENINGS), person('Ben', EVENINGS)],
      batches: [meat({ wantedBirds: 75, plucking: 'hand', processingIsFirst: true })],
      jobs: [beds(60), fence, potatoes('2027-04-25', '2027-05-10')],
    }),
  ],
  [
    'four children',
    householdOf('mallow', {
      people: [
        person('Ann', [1.5, 1.5, 1.5, 1.5, 1.5, 3, 2]),
        person('Ben', AT_WORK),
        ...['Ida', 'Tom', 'Una', 'Max'].map(child),
      ],
      batches: [meat(), hens({ wantedBirds: 20, arrivalDate: '2027-04-28' })],
      jobs: [
        beds(24),
        newOwnJob({ id: 'stones', name: 'Pick up stones', hours: 6, forWhom: 'child' }),
      ],
    }),
  ],
];
