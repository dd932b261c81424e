import { addDays, dayOfYear, daysBetween } from '../../shared/calendar/plain-date.js';
import { compare, type Check } from '../../shared/checks/compare.js';
import { EXAMPLE_BATCH, exampleFarm } from '../../shared/checks/example-farm.js';
import { givenOf } from '../../shared/checks/given.js';
import { planBatch, type BatchPlan } from '../../shared/plan/batch-plan.js';
import { nightLowAt } from '../../shared/plan/move-out.js';
import { defaultRow, rowById, type Tables } from '../../shared/tables/tables.js';
import {
  climateFromDaily,
  climateFromMonthlyMeans,
  type Climate,
  type DailyWeather,
} from '../../shared/weather/climate.js';
import { frostDates, recordedFrost } from '../../shared/weather/frost.js';
import type { ReadRows } from './read-rows.js';
import { LATITUDE_DEG, monthlyMeans, TOWN_FILE, townHistory } from './town-checks.js';

const TOPIC = 'Moving out of the brooder, planned from half the years and counted in the others';
const NIGHTS = 7;

/** A batch; all of its first week out it is old enough, and not yet of the age that stands more. */
interface Case {
  readonly id: string;
  readonly birds: string;
  readonly f: number;
  readonly strain: string;
  readonly purpose: string;
  /** Day of the arrival by the way of being sure. */
  readonly arrives: Readonly<Record<string, string>>;
}

const CASES: readonly Case[] = [
  {
    ...{ id: 'meat', birds: 'meat chicks', f: 45, strain: 'fast-meat', purpose: 'meat' },
    arrives: { half: '2027-04-28', 'five-in-six': '2027-05-18', 'nine-in-ten': '2027-05-22' },
  },
  {
    ...{ id: 'pullets', birds: 'pullets', f: 50, strain: 'brown-layer', purpose: 'layers' },
    arrives: { half: '2027-05-03', 'five-in-six': '2027-05-27', 'nine-in-ten': '2027-05-30' },
  },
];

/** How a household tells the weather of its place, with what that may be off by in days. */
interface Way {
  readonly id: string;
  readonly name: string;
  readonly climate: Climate;
  readonly allowedDays: number;
  readonly why: string;
}

/** Whole plans from the even years of 1900 to 1969, against the odd years that they never saw. */
export function moveOutChecks(read: ReadRows, tables: Tables): readonly Check[] {
  const history = townHistory(read).filter(({ date }) => date < '1970');
  const isEven = ({ date }: DailyWeather): boolean => Number(date.slice(0, 4)) % 2 === 0;
  const known = history.filter(isEven);
  const unseen = lowsOf(history.filter((day) => !isEven(day)));
  const frost = frostDates(recordedFrost(known, LATITUDE_DEG), {
    ...{ thresholdC: 1e-9, latitudeDeg: LATITUDE_DEG, sureShare: 0.9 },
  });
  const place = {
    latitudeDeg: LATITUDE_DEG,
    lastFrost: frost.lastSpring!.half,
    firstFrost: frost.firstAutumn!.half,
  };
  return waysOf(known).flatMap((way) =>
    CASES.flatMap((each) => checksOf(way, each, { place, unseen, tables })),
  );
}

const waysOf = (known: readonly DailyWeather[]): readonly Way[] => [
  {
    id: 'typed',
    name: 'typed averages and frost dates',
    climate: climateFromMonthlyMeans(
      monthlyMeans(known, ({ minC }) => minC),
      monthlyMeans(known, ({ maxC }) => maxC),
      6,
    ),
    allowedDays: 7,
    why: 'A degree of spread either way, as single places have, is 6 days of spring; a share counted in 35 years is known to 3 days.',
  },
  {
    id: 'daily',
    name: 'a daily record',
    climate: climateFromDaily(known, { way: 'csv', label: 'Record' }),
    allowedDays: 5,
    why: 'A share counted in 35 years is known to 3 days, on either side; the record is in whole degrees.',
  },
];

type Lows = ReadonlyMap<string, ReadonlyMap<string, number>>;

/** Lows by year, then by month and day. */
function lowsOf(history: readonly DailyWeather[]): Lows {
  const byYear = new Map<string, Map<string, number>>();
  for (const { date, minC } of history) {
    const year = date.slice(0, 4);
    if (!byYear.has(year)) byYear.set(year, new Map());
    byYear.get(year)!.set(date.slice(5), minC);
  }
  return byYear;
}

interface Setting {
  readonly place: { latitudeDeg: number; lastFrost: string; firstFrost: string };
  readonly unseen: Lows;
  readonly tables: Tables;
}

function checksOf(way: Way, each: Case, { place, unseen, tables }: Setting): Check[] {
  const byNights = tables.nights.surety.choices.filter(({ share }) => 0 < share);
  return byNights.flatMap(({ id, name, share }) => {
    const arrives = each.arrives[id]!;
    const plan = planOf(way, each, { arrives, nightSuretyId: id, place, tables });
    const out = String(plan.outdoors.moveOut!.value);
    const { rules } = rowById(tables.moveOut, rowById(tables.strains, each.strain).moveOut);
    const limitC = (date: string): number =>
      nightLowAt(defaultRow(rules), daysBetween(arrives, date));
    const first = addDays(arrives, defaultRow(rules).fromDay);
    const row = {
      ...{ source: 'COLORADO_DAILY', where: `${TOWN_FILE}, odd years to 1969`, why: way.why },
      mark: 'computed' as const,
    };
    const who = `${each.birds} whose nights stay above ${each.f} °F on ${name}`;
    return [
      compare(
        TOPIC,
        {
          ...row,
          ...explained(`out-${way.id}-${each.id}-${id}`),
          what: `First day out for ${who}, by ${way.name}, as a day of the year`,
          theirs: dayOfYear(firstWarmDay(unseen, { first, limitC, share })),
          unit: 'count',
          allowedAmount: way.allowedDays,
        },
        dayOfYear(out),
      ),
      compare(
        TOPIC,
        {
          ...row,
          ...explained(`week-${way.id}-${each.id}-${id}`),
          what: `Chance of a night below that in the first week after it, ${who}, by ${way.name}`,
          theirs: shareOfColdWeeks(unseen, out, limitC),
          unit: 'share',
          allowedAmount: 0.19,
          why: 'Counted in 35 years a share is known to 0.08 (one standard error).',
        },
        plan.outdoors.coldNight!.value,
      ),
    ];
  });
}

function planOf(
  { climate }: Way,
  { strain, purpose }: Case,
  {
    arrives,
    nightSuretyId,
    place,
    tables,
  }: { arrives: string; nightSuretyId: string } & Pick<Setting, 'place' | 'tables'>,
): BatchPlan {
  const picture = exampleFarm(
    givenOf({ id: 'moving-out', given: { strain, purpose, wanted: 50, arrives } }, tables),
  );
  const batches = picture.batches.map((batch) => ({ ...batch, nightSuretyId }));
  const farm = { ...picture.farm, ...place };
  return planBatch({ ...picture, farm, climate, batches }, tables, EXAMPLE_BATCH);
}

/** Days either side of a date whose nights are counted as its own. */
const AROUND_DAYS = 3;

/** What birds stand of a night, by its date. */
type LimitC = (date: string) => number;

/** Share of nights of the years, around a date, that were too cold. */
function shareBelow(lows: Lows, date: string, limitC: LimitC): number {
  const nights = [...lows.values()].flatMap((year) =>
    Array.from({ length: 2 * AROUND_DAYS + 1 }, (_, k) =>
      year.get(addDays(date, k - AROUND_DAYS).slice(5)),
    ).filter((low) => low !== undefined),
  );
  return nights.filter((low) => low < limitC(date) - 1e-9).length / nights.length;
}

/** First day from which each of a week's nights was warm enough in that share of the years. */
function firstWarmDay(
  lows: Lows,
  { first, limitC, share }: { first: string; limitC: LimitC; share: number },
): string {
  const week = (date: string): string[] =>
    Array.from({ length: NIGHTS }, (_, k) => addDays(date, k));
  const isWarm = (date: string): boolean => shareBelow(lows, date, limitC) <= 1 - share;
  const days = Array.from({ length: 120 }, (_, k) => addDays(first, k));
  const out = days.find((date) => week(date).every(isWarm));
  if (out === undefined) throw new Error(`No week from ${first} on is warm enough.`);
  return out;
}

/** Share of the years in which a night of the week from a day on was too cold. */
function shareOfColdWeeks(lows: Lows, from: string, limitC: LimitC): number {
  const week = Array.from({ length: NIGHTS }, (_, k) => addDays(from, k));
  const cold = [...lows.values()].filter((year) =>
    week.some((date) => {
      const low = year.get(date.slice(5));
      return low !== undefined && low < limitC(date) - 1e-9;
    }),
  );
  return cold.length / lows.size;
}

const TOO_HIGH =
  'Too high, which is the careful side: a record in whole degrees has 45 °F where it was 44.6, and a chain that knows the night before and none further back gives a week a little too much.';
const BY_AGE =
  'Ours waits until they are 7 weeks old and stand 40 °F: by normal nights one in ten is below 50 °F there until then, and fewer were counted.';

/** Why rows lie beyond their allowance. */
const DISAGREEMENTS: Readonly<Record<string, string>> = {
  'week-typed-meat-five-in-six': TOO_HIGH,
  'week-daily-meat-nine-in-ten': TOO_HIGH,
  'out-daily-pullets-nine-in-ten': BY_AGE,
};

const explained = (id: string): { id: string; disagreement?: string } => {
  const disagreement = DISAGREEMENTS[id];
  return disagreement === undefined ? { id } : { id, disagreement };
};
