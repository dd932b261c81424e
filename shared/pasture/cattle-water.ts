import type { Formula } from '../explain/formula.js';
import { monotoneCubic } from '../maths/monotone-cubic.js';
import type { CattleClass, CattleWaterTable, WaterChart } from '../tables/pasture-tables.js';

export const cattleWaterFormulas = {
  day: {
    id: 'cattle-water-day',
    title: 'Water the herd drinks in a day',
    words:
      'Printed water of one animal at the high of the day, times the head. The chart calls its temperatures means of the month; they are the mean highs of eastern Nebraska, where it was made. Milk cows go by feed, milk and the low of the day.',
    symbols: 'V = Σ head·v(T_max)',
    sources: [],
    mark: 'published',
  },
  hotDay: {
    id: 'cattle-water-hot-day',
    title: 'Water the herd drinks on a hot day',
    words:
      'Water of one animal at the high of the hottest day of one year in ten, the higher of two published charts, times the head. Hotter than the charts it rises on as it did over their last degrees; growing cattle heavier than theirs rise with weight as cattle on grain do. The least is the lower chart, read at the mean of that day. Milk cows go by their equation, or by the charts of a nursing cow where that is more.',
    symbols: 'V = Σ head·max(v₁, v₂)(T_max)',
    sources: [],
    mark: 'published',
  },
  edge: {
    id: 'trough-edge',
    title: 'Trough length',
    words: 'Two feet of length for every fifteen head.',
    symbols: 'L = head·0.61 m ÷ 15',
    sources: [],
    mark: 'published',
  },
  tank: {
    id: 'water-tank',
    title: 'Smallest tank',
    words: 'By how fast it refills: what the herd drinks at once, or a share of the day’s water.',
    symbols: 'V = head·7.6 L, or a share of the day',
    sources: [],
    mark: 'published',
  },
  refill: {
    id: 'water-refill',
    title: 'Hours for a day’s water',
    words: 'Water of the hot day divided by what the supply brings in an hour.',
    symbols: 't = V ÷ q',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  lasts: {
    id: 'water-lasts',
    title: 'Without supply it lasts',
    words:
      'What the full tank holds over what the herd drinks, spread evenly over the day. Cattle drink most in the afternoon, when it is gone sooner.',
    symbols: 't = 24 h·V_tank ÷ V',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Weather of a day, and what an animal is and eats on it. */
export interface DrinkingDay {
  readonly maxC: number;
  readonly minC: number;
  readonly weightKg: number;
  readonly dryMatterKg: number;
  readonly milkKg: number;
}

/**
 * Water one animal drinks in a day, L.
 *
 * Range: highs of 2 to 32 °C; below, the end is kept, above it rises on. Growing cattle from 181 kg,
 * below which that row is kept, to 363 kg, and on to 544 kg as cattle on grain rise.
 */
export function cattleWaterL(
  table: CattleWaterTable,
  of: Pick<CattleClass, 'water'>,
  day: DrinkingDay,
): number {
  return of.water === 'milk-cow' ? milkCowL(table, day) : chartL(table, table, of, day);
}

/** The same on a hot day, by the higher of two charts, with what speaks for less and for more. */
export function hotDayWaterL(
  table: CattleWaterTable,
  of: Pick<CattleClass, 'water'>,
  day: DrinkingDay,
): { readonly value: number; readonly low: number; readonly high: number } {
  if (of.water === 'milk-cow') {
    // The equation knows heat by the low of the day alone.
    const low = milkCowL(table, day);
    const value = Math.max(low, hotChartL(table, { water: LIKE_A_MILK_COW }, day));
    return { value, low, high: Math.max(value, table.milkCowInHeat.most * low) };
  }
  const value = hotChartL(table, of, day);
  const mean = { ...day, maxC: (day.minC + day.maxC) / 2 };
  return { value, low: Math.min(value, chartL(table, table, of, mean)), high: value };
}

/** Row of the charts for a cow in milk. */
const LIKE_A_MILK_COW = 'nursing-cow';

/** The higher of both charts; the one of hot weather from its first row on. */
function hotChartL(
  table: CattleWaterTable,
  of: Pick<CattleClass, 'water'>,
  day: DrinkingDay,
): number {
  const byMonth = chartL(table, table, of, day);
  const isHot = firstC(table.hot) <= day.maxC;
  return isHot ? Math.max(byMonth, chartL(table, table.hot, of, day)) : byMonth;
}

/** Words where a high or a weight lies beyond the charts; undefined where it does not. */
export function beyondCharts(
  table: CattleWaterTable,
  { maxC, growingKg }: { readonly maxC: number; readonly growingKg: number },
): string | undefined {
  const isHotter = lastC(table) < maxC;
  const isHeavier = Math.max(...Object.values(table.growingKg)) < growingKg;
  if (!isHotter && !isHeavier) return undefined;
  const parts = [...(isHotter ? ['hotter'] : []), ...(isHeavier ? ['heavier growing cattle'] : [])];
  return `${parts.join(' and ')} than the charts go: carried on from their last rows`;
}

/** Asked for on every day of every group: it is looked up once for a chart. */
function firstC(chart: WaterChart): number {
  let first = knownFirst.get(chart);
  if (first === undefined) {
    first = Math.min(...Object.values(chart.classes).map((rows) => rows[0]!.airC));
    knownFirst.set(chart, first);
  }
  return first;
}

const knownFirst = new WeakMap<WaterChart, number>();

const lastC = ({ classes }: WaterChart): number =>
  Math.max(...Object.values(classes).map((rows) => rows.at(-1)!.airC));

function milkCowL({ milkCow: eq }: CattleWaterTable, day: DrinkingDay): number {
  return (
    eq.base +
    eq.perKgDryMatter * day.dryMatterKg +
    eq.perKgMilk * day.milkKg +
    eq.perGSodium * eq.sodiumGPerKgDryMatter * day.dryMatterKg +
    eq.perC * day.minC
  );
}

function chartL(
  table: CattleWaterTable,
  chart: WaterChart,
  { water }: Pick<CattleClass, 'water'>,
  { maxC, weightKg }: DrinkingDay,
): number {
  if (water !== 'growing') return curveOf(chart, water)(maxC);
  const [, lastKg] = Object.entries(chart.growingKg).at(-1)!;
  if (weightKg <= lastKg) return byWeightL(chart, chart.growingKg, maxC, weightKg);
  const grainL = (kg: number): number => byWeightL(table, table.heavierKg, maxC, kg);
  return (byWeightL(chart, chart.growingKg, maxC, lastKg) * grainL(weightKg)) / grainL(lastKg);
}

/** Between printed weights, in rising order; below the first as the first, above the last it rises on. */
function byWeightL(
  chart: WaterChart,
  weights: Readonly<Record<string, number>>,
  maxC: number,
  weightKg: number,
): number {
  const rows = Object.entries(weights).map(([id, kg]) => ({ id, kg }));
  const at = (k: number): number => curveOf(chart, rows[k]!.id)(maxC);
  const above = rows.findIndex((row) => weightKg < row.kg);
  if (above === 0) return at(0);
  const k = above === -1 ? rows.length - 1 : above;
  const [low, high] = [rows[k - 1]!, rows[k]!];
  return at(k - 1) + ((weightKg - low.kg) / (high.kg - low.kg)) * (at(k) - at(k - 1));
}

type WaterCurve = (maxC: number) => number;
const cache = new WeakMap<WaterChart, Map<string, WaterCurve>>();

/** Degrees over which the last rise of a chart is taken: single rows are rounded to half a gallon. */
const LAST_RISE_K = 5;

function curveOf(chart: WaterChart, id: string): WaterCurve {
  let curves = cache.get(chart);
  if (!curves) cache.set(chart, (curves = new Map()));
  let curve = curves.get(id);
  if (!curve) {
    const rows = chart.classes[id]!;
    const within = monotoneCubic(
      rows.map((row) => row.airC),
      rows.map((row) => row.liters),
    );
    const last = rows.at(-1)!;
    const before = rows.findLast(({ airC }) => airC <= last.airC - LAST_RISE_K)!;
    const perK = (last.liters - before.liters) / (last.airC - before.airC);
    curve = (maxC) => (maxC <= last.airC ? within(maxC) : last.liters + perK * (maxC - last.airC));
    curves.set(id, curve);
  }
  return curve;
}

/** Smallest tank, L, for a herd and the hours a refill takes. */
export function tankL(
  table: CattleWaterTable,
  herd: { head: number; litersPerDay: number; refillH: number },
): number {
  const { rows } = table.tank;
  const row = rows.find((each) => herd.refillH <= each.refillH) ?? rows.at(-1)!;
  return row.litersPerHead === undefined
    ? row.shareOfDay! * herd.litersPerDay
    : row.litersPerHead * herd.head;
}
