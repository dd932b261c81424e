import type { Formula } from '../explain/formula.js';
import { monotoneCubic } from '../maths/monotone-cubic.js';
import type { LayCurve } from '../tables/lay-tables.js';

export const layFormulas = {
  henDay: {
    id: 'hen-day-lay',
    title: 'Eggs per hen and day',
    words:
      'What hens of that age lay in good light and air, times what the light, the air of the coop and your own counts leave of it.',
    symbols: 'y = y_age·f_light·f_air·f_own',
    sources: [],
    mark: 'estimate',
  },
  eggs: {
    id: 'flock-eggs-day',
    title: 'Eggs of the flock in a day',
    words: 'Hens alive times eggs per hen and day.',
    symbols: 'E = N·y',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  layerEnergy: {
    id: 'layer-energy',
    title: 'Feed of a laying hen, from her energy needs',
    words:
      'Energy to keep up her metabolic weight at that air temperature, to grow and to make the egg mass, divided by the energy of the feed.',
    symbols: 'ME = W^0.75·(173 − 1.95·T) + 5.5·ΔW + 2.07·EE; feed = ME ÷ ME_feed',
    sources: ['NRC1994', 'SAKOMURA2005'],
    mark: 'from-memory',
  },
  feedPerDozen: {
    id: 'feed-per-dozen',
    title: 'Feed per dozen eggs',
    words: 'Feed eaten by the laying hens over a period, divided by the dozens laid in it.',
    symbols: 'F ÷ (E ÷ 12)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

const layCache = new WeakMap<LayCurve, (ageWeeks: number) => number>();

/**
 * Eggs per hen and day of her first cycle in good light and air, as a share of 1: by a smooth curve
 * through the points of the strain, times what flocks lay of them. 0 before the first egg, at most
 * 1; past the last point it falls on as between the last two.
 */
export function henDayShare(curve: LayCurve, ageWeeks: number): number {
  if (ageWeeks < curve.firstEggWeek) return 0;
  let read = layCache.get(curve);
  if (!read) layCache.set(curve, (read = percentByAge(curve)));
  return Math.max(0, Math.min(1, (curve.flock.value * read(ageWeeks)) / 100));
}

function percentByAge({ points }: LayCurve): (ageWeeks: number) => number {
  const within = monotoneCubic(
    points.map((p) => p.ageWeeks),
    points.map((p) => p.henDayPercent),
  );
  const [before, last] = [points.at(-2)!, points.at(-1)!];
  const perWeek = (last.henDayPercent - before.henDayPercent) / (last.ageWeeks - before.ageWeeks);
  return (ageWeeks) =>
    ageWeeks <= last.ageWeeks
      ? within(ageWeeks)
      : last.henDayPercent + perWeek * (ageWeeks - last.ageWeeks);
}

const eggCache = new WeakMap<LayCurve, (ageWeeks: number) => number>();

/** Mean egg weight at an age, g. Held at the ends of the table. */
export function eggWeightG(curve: LayCurve, ageWeeks: number): number {
  let read = eggCache.get(curve);
  if (!read) {
    read = monotoneCubic(
      curve.eggWeight.map((p) => p.ageWeeks),
      curve.eggWeight.map((p) => p.eggG),
    );
    eggCache.set(curve, read);
  }
  return read(ageWeeks);
}

export interface HenDay {
  readonly weightKg: number;
  readonly gainGPerDay: number;
  readonly eggMassGPerDay: number;
  readonly airC: number;
}

/**
 * Metabolisable energy of a laying hen, kcal a day:
 * W^0.75·(173 − 1.95·T) + 5.5·ΔW + 2.07·EE.
 *
 * Source: National Research Council, Nutrient Requirements of Poultry, 1994 (from memory).
 * Meant for 10 to 34 °C; below, keepers see less than it says because hens feather up.
 */
export function layerEnergyKcalNrc1994({
  weightKg,
  gainGPerDay,
  eggMassGPerDay,
  airC,
}: HenDay): number {
  const root = Math.sqrt(weightKg);
  return root * Math.sqrt(root) * (173 - 1.95 * airC) + 5.5 * gainGPerDay + 2.07 * eggMassGPerDay;
}

/**
 * The same by an independent equation: W^0.75·(165.74 − 2.37·T) + 6.68·ΔW + 2.4·E.
 * Source: Acta Scientiarum Animal Sciences 27(3), 2005, abstract.
 */
export function layerEnergyKcal2005({
  weightKg,
  gainGPerDay,
  eggMassGPerDay,
  airC,
}: HenDay): number {
  const root = Math.sqrt(weightKg);
  return (
    root * Math.sqrt(root) * (165.74 - 2.37 * airC) + 6.68 * gainGPerDay + 2.4 * eggMassGPerDay
  );
}
