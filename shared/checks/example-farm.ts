import type { Batch } from '../farm/batch.js';
import type { Brooder, Coop } from '../farm/facility.js';
import type { Farm } from '../farm/farm.js';
import type { FarmPicture } from '../farm/picture.js';
import { climateFromMonthlyMeans } from '../weather/climate.js';
import type { Given } from './given.js';

/** Lows and highs by month of a cool hill farm, °C. */
const HILL_MIN_C = [-11, -10.5, -5.5, 0.8, 6.7, 12, 14.4, 13.6, 9.6, 3.9, -0.8, -7];
const HILL_MAX_C = [-1.5, -0.3, 4.8, 12.3, 19.3, 23.8, 26.1, 25, 20.9, 13.9, 6.9, 0.9];
/** A cold night lies this far below its average. */
const COLD_NIGHT_K = 6;

/** A valid farm with nothing on it. */
export const EXAMPLE_FARM: Farm = {
  name: 'Example',
  latitudeDeg: 42.9,
  longitudeDeg: -75.3,
  elevationM: 0,
  timeZone: 'America/New_York',
  units: 'metric',
  currency: 'USD',
  electricityPricePerKWh: '0.20',
  gasPricePerL: '0.80',
  monthlyMinC: HILL_MIN_C,
  monthlyMaxC: HILL_MAX_C,
  lastFrost: '05-20',
  firstFrost: '09-28',
  noDeliveryDates: [],
};

/** Lists of a farm on which nothing is, for the examples to fill. */
export const NOTHING_ELSE = {
  facilities: [],
  products: [],
  people: [],
  batches: [],
  paddocks: [],
  herds: [],
  cows: [],
  readings: [],
  headChanges: [],
  brooderLooks: [],
  weighings: [],
  eggCounts: [],
  pastureChoices: {},
  jobs: [],
  handovers: [],
  progress: [],
  groundChecks: [],
  keptPlans: [],
} satisfies Omit<FarmPicture, 'today' | 'farm' | 'climate'>;

/** Id of the batch that an example plans. */
export const EXAMPLE_BATCH = 'example';

/**
 * A farm with one batch, as the source of a row describes it; what it leaves out is as on a cool
 * hill farm. With `floorM2` there is a square brooder in a room of `roomC`, with `lightH` a hen house
 * whose day is so long.
 */
export function exampleFarm(given: Given): FarmPicture {
  const brooder = brooderOf(given);
  const coop = coopOf(given);
  const batch = {
    ...batchOf(given),
    ...(brooder ? { brooderId: brooder.id } : {}),
    ...(coop ? { coopId: coop.id } : {}),
  };
  return {
    ...NOTHING_ELSE,
    today: '2026-11-25',
    farm: EXAMPLE_FARM,
    climate: climateFromMonthlyMeans(HILL_MIN_C, HILL_MAX_C, COLD_NIGHT_K),
    facilities: [brooder, coop].filter((each) => each !== undefined),
    batches: [{ ...batch, id: EXAMPLE_BATCH }],
  };
}

/** A field that is left out where nothing is known of it. */
const known = <K extends string, V>(name: K, value: V | undefined): { readonly [k in K]?: V } =>
  value === undefined ? {} : ({ [name]: value } as { readonly [k in K]: V });

function batchOf({ numberOr, textOr, text }: Given): Batch {
  const purpose = textOr('purpose', 'meat') as Batch['purpose'];
  const placed = numberOr('placed', undefined);
  const feed = ['starter', 'grower', 'finisher'].flatMap((phase) => {
    const price = textOr(`${phase}Price`, undefined);
    return price === undefined ? [] : [[phase, price] as const];
  });
  return {
    name: 'Example',
    purpose,
    strainId: text('strain'),
    sex: textOr('sex', purpose === 'meat' ? 'straight-run' : 'pullets') as Batch['sex'],
    wantedBirds: numberOr('wanted', placed ?? 100),
    arrivalDate: textOr('arrives', '2027-05-05'),
    hatchToArrivalDays: 0,
    ...known('orderedBirds', placed),
    ...known('moveOutDate', textOr('movesOut', undefined)),
    ...known('leaveAgeDays', numberOr('leaveDay', undefined)),
    ...known('plucking', textOr('plucking', undefined) as Batch['plucking']),
    ...(numberOr('isFirst', 0) === 1 ? { processingIsFirst: true } : {}),
    ...known('bagKg', numberOr('bagKg', undefined)),
    ...known('firstWeekLossPercent', numberOr('firstWeekLossPercent', undefined)),
    ...known('laterLossPercent', numberOr('laterLossPercent', undefined)),
    ...(feed.length === 0 ? {} : { prices: { feedPerBag: Object.fromEntries(feed) } }),
  };
}

function brooderOf({ number, numberOr, textOr }: Given): Brooder | undefined {
  const floorM2 = numberOr('floorM2', undefined);
  if (floorM2 === undefined) return undefined;
  const wall = { rM2KPerW: number('wallM2KPerW') };
  return {
    kind: 'brooder',
    id: 'brooder',
    name: 'Brooder',
    lengthM: Math.sqrt(floorM2),
    widthM: Math.sqrt(floorM2),
    heightM: number('heightM'),
    walls: wall,
    roof: wall,
    standsIn: 'heated-room',
    roomC: number('roomC'),
    heat: {
      kind: textOr('heater', 'lamp') as Brooder['heat']['kind'],
      wattsEach: numberOr('wattsEach', 250),
      count: numberOr('heaters', 1),
      thermostat: true,
    },
  };
}

function coopOf({ numberOr }: Given): Coop | undefined {
  const lightH = numberOr('lightH', undefined);
  if (lightH === undefined) return undefined;
  const room = { floorM2: 30, roostM: 25, nestBoxes: 25, runM2: 0 };
  return { kind: 'coop', id: 'coop', name: 'Hen house', ...room, lightH };
}
