import {
  from,
  fromFarm,
  fromTable,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../explain/quantity.js';
import { NUTRIENT_KEYS, type Nutrient } from '../tables/ration-tables.js';
import { NONE, type LeastCost } from './least-cost.js';
import type { MixFeed } from './mix-feed.js';
import { atEnergy, type NutrientLimit } from './nutrient-limits.js';
import { heldBy, NUTRIENT_NAMES, unitOf } from './nutrients.js';
import { rationFormulas } from './ration-formulas.js';

/** A part of a mix as it is weighed. */
export interface Weighed {
  readonly feed: MixFeed;
  readonly kg: number;
  readonly share: number;
}

/** A nutrient of the mix as it is weighed, beside what is asked of it. */
export interface NutrientLine {
  readonly nutrient: Nutrient;
  readonly name: string;
  readonly has: NumberQuantity;
  readonly need?: NumberQuantity;
  readonly most?: NumberQuantity;
  /** The mix would be cheaper if less, or more, of it were allowed. */
  readonly holdsMix: boolean;
  readonly isMissed: boolean;
}

/** No scale tells less than this part of what is asked. */
const NOT_MISSED = 0.01;

/** Nutrient by nutrient: what the mix holds as it is weighed, and what is asked of it. */
export function nutrientLines(
  parts: readonly Weighed[],
  limits: readonly NutrientLimit[],
  { worths }: LeastCost,
): NutrientLine[] {
  const mix = parts.map(({ feed, share }) => ({ share, holds: feed.holds }));
  const energy = holdsOf(parts, 'energyKcalPerKg');
  return NUTRIENT_KEYS.flatMap((nutrient): NutrientLine[] => {
    const own = limits.flatMap((limit, k) => (limit.nutrient === nutrient ? [{ limit, k }] : []));
    if (own.length === 0) return [];
    const held = heldBy(mix, nutrient);
    const asked = (side: 'least' | 'most') => own.find(({ limit }) => limit.side === side)?.limit;
    const [least, most] = [asked('least'), asked('most')];
    const need = least && atEnergy(least, least.need, energy.value);
    return [
      {
        nutrient,
        name: NUTRIENT_NAMES[nutrient],
        has: nutrient === 'energyKcalPerKg' ? energy : holdsOf(parts, nutrient),
        ...(least ? { need: askedOf(least, need!, energy) } : {}),
        ...(most ? { most: askedOf(most, most.need, energy) } : {}),
        holdsMix: own.some(({ k }) => NONE < Math.abs(worths[k]!)),
        isMissed:
          (need !== undefined && held < need * (1 - NOT_MISSED)) ||
          (most !== undefined && most.need * (1 + NOT_MISSED) < held),
      },
    ];
  });
}

function holdsOf(parts: readonly Weighed[], nutrient: Nutrient): NumberQuantity {
  const unit = unitOf(nutrient);
  const value = heldBy(
    parts.map(({ feed, share }) => ({ share, holds: feed.holds })),
    nutrient,
  );
  const inputs = parts.flatMap(({ feed, share }): QuantityInput[] => {
    const held = feed.holds[nutrient];
    if (held === 0) return [];
    const holds = `${feed.name} holds`;
    return [
      fromFarm(`${feed.name}, of the mix`, share, 'share', 'xᵢ'),
      feed.own.includes(nutrient)
        ? fromFarm(holds, held, unit, 'nᵢ')
        : fromTable(feed.row, holds, held, unit, 'nᵢ'),
    ];
  });
  return quantity(NUTRIENT_NAMES[nutrient], value, unit, rationFormulas.holds, inputs);
}

function askedOf(limit: NutrientLimit, asked: number, energy: NumberQuantity): NumberQuantity {
  const { nutrient, side, need, atKcalPerKg, row } = limit;
  const unit = unitOf(nutrient);
  const label = `${NUTRIENT_NAMES[nutrient]}, at ${side}`;
  return quantity(label, asked, unit, rationFormulas.need, [
    fromTable(row, 'Of the table', need, unit, 'b₀'),
    ...(atKcalPerKg === undefined
      ? []
      : [from(energy, 'E'), fromTable(row, 'In a feed of', atKcalPerKg, 'kcalPerKg', 'E₀')]),
  ]);
}
