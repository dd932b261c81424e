import type { Formula } from '../explain/formula.js';
import type { Brooder } from '../farm/facility.js';
import type { HeatTable, Material } from '../tables/bird-tables.js';
import { conductionWPerK } from './brooder-heat.js';

export const brooderBoxFormulas = {
  openTop: {
    id: 'open-top-loss',
    title: 'Heat through an open top, per degree',
    words:
      'A box without a lid loses its heat as any warm surface that faces up: by air that rises from it and by radiation. No wind is counted, and the warmer the box, the more each degree costs.',
    symbols: 'UA_top = A·(1.52·ΔT^(1/3) + 5.8)',
    sources: ['PLATE_CONVECTION'],
    mark: 'from-memory',
  },
  air: {
    id: 'brooder-air-of-heaters',
    title: 'Air in the brooder with so many heaters on',
    words:
      'All heat of the heaters and of the birds ends up in the box; its air, the cool end included, rises above the air around it until as much leaves through walls, lid, floor and fresh air. Sun on the brooder, wind and drafts are left out.',
    symbols: 'T_air = T_out + (n·P + Q_birds) ÷ (UA + 0.335·ρ/ρ₀·V)',
    sources: ['CONDUCTION'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** A brooder as its air feels it: whole or a part of it, its top shut or open. */
export interface BrooderBox {
  /** Walls, lid and floor, W/K; an open top is not in it. */
  readonly shellWPerK: number;
  /** 0 with a lid on. */
  readonly openTopM2: number;
}

/** How a brooder is set up: the share of its length in use, and whether its lid is off. */
export interface SetUp {
  readonly share: number;
  readonly isOpen: boolean;
}

/**
 * Shell and opening of a brooder. A brooder without a lid is open whatever is asked. The board that
 * closes a part off counts as a wall like the others.
 */
export function brooderBox(
  brooder: Brooder,
  { share, isOpen }: SetUp,
  { heat, materials }: { heat: HeatTable; materials: readonly Material[] },
): BrooderBox {
  const lengthM = brooder.lengthM * share;
  const floorM2 = lengthM * brooder.widthM;
  const { roof, ...open } = brooder;
  const hasLid = roof !== undefined && !isOpen;
  const part = hasLid ? { ...open, roof, lengthM } : { ...open, lengthM };
  return {
    shellWPerK: conductionWPerK(part, materials, heat.films) + floorM2 * heat.floor.wPerM2K,
    openTopM2: hasLid ? 0 : floorM2,
  };
}

/**
 * Heat through an open top for each degree, W/K, in still air.
 * Source: natural convection over a warm plate facing up, 1.52·ΔT^(1/3) W/(m²·K), and radiation.
 */
export const openTopWPerK = (table: HeatTable['openTop'], m2: number, deltaK: number): number =>
  m2 === 0 ? 0 : m2 * (table.convection * Math.cbrt(Math.max(0, deltaK)) + table.radiationWPerM2K);

/** Heat a box loses to its surroundings when its air is so much warmer, W. */
export const boxLossW = (
  table: HeatTable['openTop'],
  box: BrooderBox,
  airWPerK: number,
  deltaK: number,
): number => deltaK * (box.shellWPerK + airWPerK + openTopWPerK(table, box.openTopM2, deltaK));

/**
 * How much warmer than its surroundings the air of a box gets, K: the inverse of `boxLossW`.
 *
 * @param watts of heaters and birds together, 0 or more
 */
export function airRiseK(
  table: HeatTable['openTop'],
  box: BrooderBox,
  airWPerK: number,
  watts: number,
): number {
  const fixed = box.shellWPerK + airWPerK;
  if (box.openTopM2 === 0) return watts / fixed;
  let rise = watts / (fixed + openTopWPerK(table, box.openTopM2, 15));
  // Newton's steps: the loss rises with the 4/3 power at most, so a few settle it.
  for (let step = 0; step < 4; step++) {
    const top = openTopWPerK(table, box.openTopM2, rise);
    const convection = top - box.openTopM2 * table.radiationWPerM2K;
    const slope = fixed + top + convection / 3;
    rise = Math.max(0, rise - (rise * (fixed + top) - watts) / slope);
  }
  return rise;
}
