import { compare, type Check } from '../../shared/checks/compare.js';
import { MONTHS } from '../../shared/farm/field.js';
import type { Tables } from '../../shared/tables/tables.js';
import { dayOfYear } from '../../shared/calendar/plain-date.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { spreadOfLows } from '../../shared/weather/night-spread.js';
import type { ReadRows } from './read-rows.js';

const TOPIC = 'Nights and rain at weather stations';
const two = (month: number): string => String(month).padStart(2, '0');

/** How single nights spread at stations that the fit has not seen, and how rain comes in days. */
export function stationChecks(read: ReadRows, tables: Tables): readonly Check[] {
  return [
    ...spreadChecks(read('climate/stations_world.csv'), tables),
    ...wetSpellChecks(read('climate/stations_world.csv'), tables),
    ...wetDayChecks(read('climate/stations_us.csv'), tables),
  ];
}

type Row = Readonly<Record<string, string>>;
const twelve = (row: Row, name: string): number[] =>
  Array.from({ length: 12 }, (_, m) => Number(row[`${name}_${two(m + 1)}`]));

const average = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

function spreadChecks(rows: readonly Row[], tables: Tables): Check[] {
  // Cells that are mostly sea, and figures that their own compiler does not trust.
  const stations = rows.filter(
    ({ latitude_deg, flags }) =>
      25 < Math.abs(Number(latitude_deg)) && !/sea|range|sd\b/.test(flags!),
  );
  const sums = Array.from({ length: 12 }, () => ({ theirs: 0, ours: 0 }));
  for (const station of stations) {
    const [minC, maxC, sdC] = ['tmin_c', 'tmax_c', 'sd_tmin_c'].map((name) =>
      twelve(station, name),
    );
    const climate = climateFromMonthlyMeans(minC!, maxC!, 6);
    const latitudeDeg = Number(station['latitude_deg']);
    const ours = spreadOfLows(climate, latitudeDeg, tables.nights.spread);
    sums.forEach((sum, m) => {
      const drift = (minC![(m + 1) % 12]! - minC![(m + 11) % 12]!) / 2;
      sum.theirs += Math.sqrt(Math.max(0, sdC![m]! ** 2 - drift ** 2 / 12));
      sum.ours += ours[dayOfYear(`2023-${two(m + 1)}-15`) - 1]!;
    });
  }
  return sums.map(({ theirs, ours }, m) =>
    compare(
      TOPIC,
      {
        id: `spread-world-${m + 1}`,
        what: `How far single nights of ${MONTHS[m]} lie from their average, mean of ${stations.length} stations outside the United States`,
        source: 'CLIGEN_WORLD',
        where: 'climate/stations_world.csv, drift within the month taken off',
        mark: 'computed',
        theirs: theirs / stations.length,
        unit: 'K',
        allowedAmount: 0.8,
        why: 'Their nights are a reanalysis, which is 3 to 12 % too even; the fit is good to 0.7 °C at single stations.',
      },
      ours / stations.length,
    ),
  );
}

/** Mean over stations of a figure of the months in which work waits for dry days. */
const growing = (rows: readonly Row[], name: string, months: readonly [number, number]): number =>
  average(rows.flatMap((row) => twelve(row, name).slice(...months)));

const ALLOWED = {
  mark: 'computed',
  allowedShare: 0.25,
  why: 'One figure stands for all climates and months; between stations it varies by a quarter.',
} as const;

/** Their rain is of station records, and none of them is in the figure of the plans. */
function wetSpellChecks(rows: readonly Row[], { work: { wetDay } }: Tables): Check[] {
  const north = rows.filter((row) => 25 < Number(row['latitude_deg']));
  return [
    compare(
      TOPIC,
      {
        ...ALLOWED,
        id: 'wet-after-wet',
        what: `Share of wet days that follow a wet one, mean of ${north.length} stations outside the United States`,
        source: 'CLIGEN_WORLD',
        where: 'climate/stations_world.csv, April to October',
        theirs: growing(north, 'p_wet_wet', [3, 10]),
        unit: 'share',
      },
      wetDay.wetAfterWetShare,
    ),
  ];
}

function wetDayChecks(rows: readonly Row[], { work: { wetDay } }: Tables): Check[] {
  return [
    compare(
      TOPIC,
      {
        ...ALLOWED,
        id: 'rain-of-a-wet-day',
        what: `Rain of a wet day, mean of ${rows.length} stations in the United States`,
        source: 'CLIGEN_2015',
        where: 'climate/stations_us.csv, April to October',
        theirs: growing(rows, 'mean_wet_mm', [3, 10]),
        unit: 'mm',
      },
      wetDay.meanRainMm,
    ),
  ];
}
