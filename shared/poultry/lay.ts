import type { Formula } from '../explain/formula.js';
import { monotoneCubic } from '../maths/monotone-cubic.js';
import type { LayCurve } from '../tables/bird-tables.js';

export const layFormulas = {
  henDay: {
    id: 'hen-day-lay',
    title: 'Eggs per hen and day',
    words:
      'A rise that slows toward a ceiling, times a slow fall. The three numbers are fitted to the published points of the strain.',
    symbols: 'y = M·(1 − e^(−z·(t − d)))·e^(−a·t)',
    sources: ['COMPARTMENTAL_LAY'],
    mark: 'computed',
  },
  eggs: {
    id: 'flock-eggs-day',
    title: 'Eggs of the flock in a day',
    words: 'Hens alive times eggs per hen and day.',
    symbols: 'E = N·y',
    sources: ['COMPARTMENTAL_LAY'],
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

/** Eggs per hen and day, as a share of 1. 0 before the first egg; at most 1. */
export function henDayShare(curve: LayCurve, ageWeeks: number): number {
  if (ageWeeks <= curve.firstEggWeek) return 0;
  const rise = 1 - Math.exp(-curve.risePerWeek * (ageWeeks - curve.firstEggWeek));
  return Math.min(
    1,
    (curve.scalePercent / 100) * rise * Math.exp(-curve.declinePerWeek * ageWeeks),
  );
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
  return weightKg ** 0.75 * (173 - 1.95 * airC) + 5.5 * gainGPerDay + 2.07 * eggMassGPerDay;
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
  return weightKg ** 0.75 * (165.74 - 2.37 * airC) + 6.68 * gainGPerDay + 2.4 * eggMassGPerDay;
}
