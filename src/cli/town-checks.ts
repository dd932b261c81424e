import { addDays, dayOfYear, daysOfYear } from '../../shared/calendar/plain-date.js';
import { compare, type Check, type Compared } from '../../shared/checks/compare.js';
import { expectedNights, nightsOfPlace } from '../../shared/plan/expected-nights.js';
import type { Tables } from '../../shared/tables/tables.js';
import { fToC } from '../../shared/units/convert.js';
import { climateFromMonthlyMeans, type DailyWeather } from '../../shared/weather/climate.js';
import { frostDates, recordedFrost } from '../../shared/weather/frost.js';
import { chanceOfColdNight } from '../../shared/weather/night-chances.js';
import type { ReadRows } from './read-rows.js';

const TOPIC = 'Nights and frost of one town, day by day';
export const TOWN_FILE = 'datasets/fort-collins-daily-1900-1999.csv';
export const LATITUDE_DEG = 40.6;

/** The days of the record, oldest first. */
export const townHistory = (read: ReadRows): DailyWeather[] =>
  read(TOWN_FILE).map((day) => ({
    date: day['date']!,
    minC: fToC(Number(day['tmin_f'])),
    maxC: fToC(Number(day['tmax_f'])),
  }));

/** Averages by month of some years. */
export const monthlyMeans = (
  history: readonly DailyWeather[],
  of: (day: DailyWeather) => number,
): number[] =>
  Array.from({ length: 12 }, (_, m) => {
    const days = history.filter(({ date }) => Number(date.slice(5, 7)) === m + 1);
    return days.reduce((sum, day) => sum + of(day), 0) / days.length;
  });

type Share = 'tenth' | 'half' | 'ninetieth';
const SHARES: readonly Share[] = ['tenth', 'half', 'ninetieth'];

/** Percentiles of 1970 to 1999, worked out apart from this program: days of a common year. */
const FROST = [
  { f: 28, last: [95.8, 107, 122.4], first: [265, 284, 301] },
  { f: 32, last: [111.9, 123, 134.5], first: [262.7, 277.5, 289.1] },
  { f: 36, last: [118.7, 132, 144.2], first: [258.7, 266.5, 277.2] },
] as const;

/** Weeks from a day on, with the low that is asked for. */
const WEEKS = [
  { from: '05-01', f: 45 },
  { from: '05-15', f: 45 },
  { from: '05-15', f: 40 },
  { from: '06-01', f: 45 },
  { from: '06-15', f: 45 },
  { from: '07-01', f: 45 },
  { from: '09-01', f: 45 },
  { from: '09-15', f: 45 },
  { from: '09-15', f: 40 },
] as const;

/** Frost dates of a town's last thirty years, and cold nights of the seventy years before them. */
export function townChecks(read: ReadRows, tables: Tables): readonly Check[] {
  const history = townHistory(read);
  return [
    ...frostChecks(history.filter(({ date }) => '1970' <= date)),
    ...weekChecks(
      history.filter(({ date }) => date < '1970'),
      tables,
    ),
  ];
}

function frostChecks(history: readonly DailyWeather[]): Check[] {
  const lows = recordedFrost(history, LATITUDE_DEG);
  return FROST.flatMap(({ f, last, first }) => {
    const dates = frostDates(lows, {
      thresholdC: fToC(f) + 1e-9,
      latitudeDeg: LATITUDE_DEG,
      sureShare: 0.9,
    });
    const rowsOf = (
      name: string,
      theirs: readonly number[],
      ours: Readonly<Record<Share, string>>,
    ): Check[] =>
      SHARES.map((share, i) =>
        compare(
          TOPIC,
          {
            ...ORIGIN,
            id: `${name}-${f}-${share}`,
            what: `${name === 'last' ? 'Last spring' : 'First fall'} day of ${f} °F or less, ${share} of 30 years, as a day of the year`,
            mark: 'computed',
            theirs: theirs[i]!,
            unit: 'count',
            allowedAmount: 1,
            why: 'A date is a whole day; theirs lies between two.',
          },
          dayOfYear(`2023-${ours[share]}`),
        ),
      );
    return [
      ...rowsOf('last', last, dates.lastSpring!),
      ...rowsOf('first', first, dates.firstAutumn!),
    ];
  });
}

const ORIGIN = { source: 'COLORADO_DAILY', where: TOWN_FILE } as const;

/** The averages and usual frost dates of those years are typed, and the single nights asked for. */
function weekChecks(history: readonly DailyWeather[], tables: Tables): Check[] {
  const years = [...new Set(history.map(({ date }) => date.slice(0, 4)))];
  const lowOn = new Map(history.map(({ date, minC }) => [date, minC]));
  const frost = frostDates(recordedFrost(history, LATITUDE_DEG), {
    thresholdC: 1e-9,
    latitudeDeg: LATITUDE_DEG,
    sureShare: 0.9,
  });
  const place = nightsOfPlace(
    climateFromMonthlyMeans(
      monthlyMeans(history, ({ minC }) => minC),
      monthlyMeans(history, ({ maxC }) => maxC),
      6,
    ),
    {
      latitudeDeg: LATITUDE_DEG,
      lastFrost: frost.lastSpring!.half,
      firstFrost: frost.firstAutumn!.half,
    },
    tables,
  );
  return WEEKS.map(({ from, f }) => {
    const cold = years.filter((year) =>
      Array.from({ length: 7 }, (_, k) => lowOn.get(addDays(`${year}-${from}`, k))!).some(
        (low) => low < fToC(f) - 1e-9,
      ),
    );
    const row: Compared = {
      ...ORIGIN,
      id: `week-${from}-${f}`,
      what: `Chance of a night below ${f} °F in the week from ${from} on, of ${years.length} years`,
      mark: 'published',
      theirs: cold.length / years.length,
      unit: 'share',
      allowedAmount: 0.16,
      why: 'Counted in 70 years a share is known to 0.06 (one standard error), and the spread by the fit is up to a quarter off at single places.',
    };
    const nights = expectedNights(place, daysOfYear(`2027-${from}`, 7));
    return compare(
      TOPIC,
      row,
      // Whole degrees were written down: below 45 is 44 or less.
      chanceOfColdNight(
        nights,
        { from: 0, to: 7 },
        () => fToC(f - 0.5),
        tables.nights.likeness.value,
      ),
    );
  });
}
