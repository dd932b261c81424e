import type { Weighing } from '../farm/weighing.js';
import { planBatch, type BatchPlan } from '../plan/batch-plan.js';
import { addDays } from '../calendar/plain-date.js';
import type { Batch } from '../farm/batch.js';
import type { Facility } from '../farm/facility.js';
import type { Farm } from '../farm/farm.js';
import { birdGrowth } from '../poultry/growth.js';
import type { BirdSex } from '../tables/bird-tables.js';
import { rowById } from '../tables/tables.js';
import { climateFromMonthlyMeans } from '../weather/climate.js';
import { NOTHING_ELSE } from './example-farm.js';
import type { Given, Topic } from './given.js';

const growthOf = ({ tables, text }: Given) =>
  birdGrowth(rowById(tables.growthTables, text('table')), text('sex') as BirdSex);

const ARRIVAL = '2027-05-05';
const BIRDS = 100;
const ID = 'checked';

/** A batch of which none is lost, kept to the day of the row: hatched here, or come grown. */
function batchOf({ number, numberOr, text, textOr }: Given): Batch & { readonly id: string } {
  const startedWeeks = numberOr('startedWeeks', undefined);
  const outFrom = numberOr('outFromDay', undefined);
  const target = numberOr('targetKg', undefined);
  const table = textOr('table', undefined);
  return {
    id: ID,
    name: 'Checked',
    purpose: textOr('purpose', 'meat') as Batch['purpose'],
    strainId: text('strain'),
    sex: textOr('sex', 'straight-run') as Batch['sex'],
    wantedBirds: BIRDS,
    orderedBirds: BIRDS,
    arrivalDate: ARRIVAL,
    hatchToArrivalDays: 0,
    firstWeekLossPercent: 0,
    laterLossPercent: 0,
    keptAs: textOr('keptAs', 'small-flock') as NonNullable<Batch['keptAs']>,
    ...(table === undefined ? {} : { growthTableId: table }),
    ...(startedWeeks === undefined ? {} : { origin: 'started', arrivalAgeWeeks: startedWeeks }),
    ...(target === undefined ? { leaveAgeDays: number('day') } : { targetLiveKg: target }),
    ...(outFrom === undefined ? {} : { moveOutDate: addDays(ARRIVAL, outFrom) }),
  };
}

/** The plan of that batch in air that is the same all year: 15 to 25 °C where the row says nothing. */
function planOf(given: Given): BatchPlan {
  const { tables, numberOr } = given;
  const monthly = (celsius: number): number[] => Array.from({ length: 12 }, () => celsius);
  const farm: Farm = {
    ...FARM,
    monthlyMinC: monthly(numberOr('minC', 15)),
    monthlyMaxC: monthly(numberOr('maxC', 25)),
  };
  return planBatch(
    {
      ...NOTHING_ELSE,
      farm,
      today: addDays(ARRIVAL, -1),
      climate: climateFromMonthlyMeans(
        farm.monthlyMinC,
        farm.monthlyMaxC,
        tables.heat.coldNightMarginK.value,
      ),
      facilities: [BROODER],
      batches: [batchOf(given)],
      weighings: weighingsOf(given),
    },
    tables,
    ID,
  );
}

function weighingsOf({ number, numberOr }: Given): Weighing[] {
  const averageKg = numberOr('weighedKg', undefined);
  if (averageKg === undefined) return [];
  const date = addDays(ARRIVAL, number('weighedDay'));
  return [{ batchId: ID, date, birds: numberOr('birds', 10), averageKg }];
}

const FARM = {
  name: 'Checked',
  latitudeDeg: 45,
  longitudeDeg: 0,
  elevationM: 0,
  timeZone: 'UTC',
  units: 'metric',
  currency: 'EUR',
  electricityPricePerKWh: '0.20',
  gasPricePerL: '0.80',
  lastFrost: '04-15',
  firstFrost: '10-31',
  noDeliveryDates: [],
} as const;
const BOARDS = { layers: [{ materialId: 'plywood', thicknessMm: 12 }] };
const BROODER: Facility = {
  kind: 'brooder',
  id: 'brooder',
  name: 'Brooder',
  standsIn: 'unheated-building',
  lengthM: 5,
  widthM: 4,
  heightM: 0.6,
  walls: BOARDS,
  roof: BOARDS,
  heat: { kind: 'lamp', wattsEach: 250, count: 8, thermostat: true },
};

const daysOf = (plan: BatchPlan, id: string): readonly number[] =>
  plan.daily.find((series) => series.id === id)!.values;

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const weightOn = (given: Given, day: number): number =>
  daysOf(planOf(given), `weight-${given.textOr('of', 'mean')}`)[day]!;
const gainIn = (given: Given, from: number): number =>
  weightOn(given, given.number('day')) - weightOn(given, from);

/** The same row in air that suits the birds. */
const inMildAir = (given: Given): Given => ({
  ...given,
  numberOr: (name, otherwise) =>
    name === 'minC'
      ? given.number('mildC')
      : name === 'maxC'
        ? given.number('mildC')
        : given.numberOr(name, otherwise),
});

/** Weight, feed and water of birds, as the days of a plan are made of them. */
export const growthChecks: Topic = {
  title: 'How birds grow, eat and drink',
  by: {
    'weight-at-day': (given) => growthOf(given).weightKg[given.number('day')]!,
    'planned-weight': (given) => weightOn(given, given.numberOr('at', given.number('day'))),
    'planned-feed-a-day': (given) => {
      const feed = daysOf(planOf(given), 'feed-day').slice(0, given.number('days'));
      return sum(feed) / BIRDS / feed.length;
    },
    'planned-age': (given) => planOf(given).leaving!.age.value,
    'planned-feed': (given) => planOf(given).feed.total.value / BIRDS,
    'planned-conversion': (given) => {
      const plan = planOf(given);
      const [first, last] = [daysOf(plan, 'weight-mean')[0]!, daysOf(plan, 'weight-mean').at(-1)!];
      return plan.feed.total.value / BIRDS / (last - first);
    },
    'planned-water': (given) => daysOf(planOf(given), 'water-day')[given.number('at')]! / BIRDS,
    'planned-water-in-all': (given) => sum(daysOf(planOf(given), 'water-day')) / BIRDS,
    'planned-water-to-feed': (given) => {
      const plan = planOf(given);
      // On the last day the feed is off and the water is not.
      return sum(daysOf(plan, 'water-day').slice(0, -1)) / sum(daysOf(plan, 'feed-day'));
    },
    'gain-share-in-air': (given) =>
      gainIn(given, given.number('outFromDay')) /
      gainIn(inMildAir(given), given.number('outFromDay')),
  },
};
