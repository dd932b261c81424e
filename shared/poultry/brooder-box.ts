import type { Formula } from '../explain/formula.js';
import type { Brooder } from '../farm/facility.js';
import type { HeatTable, Material } from '../tables/heat-tables.js';
import { conductionWPerK } from './brooder-heat.js';

export const brooderBoxFormulas = {
  openTop: {
    id: 'open-top-loss',
    title: 'Heat through an open top, per degree',
    words:
      'A box without a lid loses its heat as any warm surface that faces up: by air that rises from it and by radiation. Where nothing but the birds warms it all of its air is warm, and is exchanged through the top. No wind is counted, and the warmer the box, the more each degree costs.',
    symbols:
      'UA_top = A·(1.52·ΔT^(1/3) + 5.8), or 0.055·√(g·ΔT/T)·A^1.25·1206 in place of the first',
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

/** Whether a heater warms a part of the floor, or all air of the box is warm, as by its birds. */
export type Warmed = 'a-part' | 'all-air';

/**
 * Heat through an open top for each degree, W/K, in still air.
 *
 * Over a floor of which a part is warm: natural convection from a warm plate that faces up,
 * 1.52·ΔT^(1/3) W/(m²·K). Where all air is warm it is exchanged through the opening if that is
 * more: 0.055·√(g·ΔT/T)·D^2.5 m³/s for an opening of side D. Radiation comes to both.
 */
export function openTopWPerK(
  table: HeatTable['openTop'],
  m2: number,
  deltaK: number,
  warmed: Warmed = 'a-part',
): number {
  if (m2 === 0) return 0;
  const difference = Math.max(0, deltaK);
  const convection = m2 * table.convection * Math.cbrt(difference);
  const exchange =
    warmed === 'a-part'
      ? 0
      : AIR_J_PER_M3_K * table.exchange * Math.sqrt((GRAVITY * difference) / ROOM_K) * m2 ** 1.25;
  return m2 * table.radiationWPerM2K + Math.max(convection, exchange);
}

/** J/(m³·K) at sea level: 1.2 kg/m³ × 1005 J/(kg·K). */
const AIR_J_PER_M3_K = 1.2 * 1005;
/** m/s². */
const GRAVITY = 9.81;
/** Air of 20 °C, K. */
const ROOM_K = 293;

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
  { watts, warmed }: { watts: number; warmed: Warmed },
): number {
  const fixed = box.shellWPerK + airWPerK;
  if (box.openTopM2 === 0) return watts / fixed;
  const radiation = box.openTopM2 * table.radiationWPerM2K;
  let rise = watts / (fixed + openTopWPerK(table, box.openTopM2, 15, warmed));
  // Newton's steps: the loss rises with a power between 1 and 1.5, so a few settle it.
  for (let step = 0; step < 4; step++) {
    const top = openTopWPerK(table, box.openTopM2, rise, warmed);
    const slope = fixed + top + 0.4 * (top - radiation);
    rise = Math.max(0, rise - (rise * (fixed + top) - watts) / slope);
  }
  return rise;
}
