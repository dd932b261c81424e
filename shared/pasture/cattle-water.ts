import type { Formula } from '../explain/formula.js';
import { monotoneCubic } from '../maths/monotone-cubic.js';
import type { CattleClass, CattleWaterTable } from '../tables/pasture-tables.js';

export const cattleWaterFormulas = {
  day: {
    id: 'cattle-water-day',
    title: 'Water the herd drinks in a day',
    words:
      'Printed water of one animal at that average temperature, times the head. For cows in milk on hot days the larger of two tables is taken.',
    symbols: 'V = Σ head·v(T)',
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
} satisfies Record<string, Formula>;

type WaterCurve = (airC: number) => number;
const cache = new WeakMap<CattleWaterTable, Map<string, WaterCurve>>();

/**
 * Water one animal drinks in a day, L.
 *
 * Range: 2 to 32 °C of mean air temperature; the ends are kept beyond. Growing cattle go by the
 * printed weights, the nearest end beyond 181 to 363 kg.
 */
export function cattleWaterL(
  table: CattleWaterTable,
  of: Pick<CattleClass, 'water'>,
  day: { airC: number; minC: number; weightKg: number; dryMatterKg: number; milkKg: number },
): number {
  if (of.water === 'milk-cow') {
    const eq = table.milkCow;
    return (
      eq.base +
      eq.perKgDryMatter * day.dryMatterKg +
      eq.perKgMilk * day.milkKg +
      eq.perGSodium * eq.sodiumGPerKgDryMatter * day.dryMatterKg +
      eq.perC * day.minC
    );
  }
  if (of.water === 'growing') return growingL(table, day.airC, day.weightKg);
  return curveOf(table, of.water)(day.airC);
}

function growingL(table: CattleWaterTable, airC: number, weightKg: number): number {
  // Tables of growing cattle are printed for some weights, in rising order.
  const growing = Object.entries(table.growingKg).map(([id, kg]) => ({ id, kg }));
  const above = growing.findIndex((row) => weightKg < row.kg);
  const at = (k: number): number => curveOf(table, growing[k]!.id)(airC);
  if (above === 0) return at(0);
  if (above === -1) return at(growing.length - 1);
  const [low, high] = [growing[above - 1]!, growing[above]!];
  const part = (weightKg - low.kg) / (high.kg - low.kg);
  return at(above - 1) + part * (at(above) - at(above - 1));
}

function curveOf(table: CattleWaterTable, id: string): WaterCurve {
  let curves = cache.get(table);
  if (!curves) cache.set(table, (curves = new Map()));
  let curve = curves.get(id);
  if (!curve) {
    const rows = table.classes[id]!;
    curve = monotoneCubic(
      rows.map((row) => row.airC),
      rows.map((row) => row.liters),
    );
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
