import type { Brooder } from '../farm/facility.js';
import { brooderBox, type BrooderBox } from '../poultry/brooder-box.js';
import { riseBelowLampK } from '../poultry/lamp-zone.js';
import type { BroodingSchedule } from '../tables/bird-tables.js';
import type { HeatTable } from '../tables/heat-tables.js';
import type { Tables } from '../tables/tables.js';

/** A brooder with its heaters, ready to be reckoned with. */
export interface HeatRig {
  readonly table: HeatTable;
  readonly heat: Brooder['heat'];
  /** Whether the schedule speaks of air everywhere, not of the warmth under a heater. */
  readonly isAirSchedule: boolean;
  /** Least distance from lamp to bedding. */
  readonly clearanceM: number;
  /** Whole or a part of its length, lid on or off. */
  readonly box: (share: number, isOpen: boolean) => BrooderBox;
  readonly hasLid: boolean;
  /** Its top is a ceiling: it stays, and doors and windows open instead. */
  readonly isRoom: boolean;
  /** Counts of heaters that can be on: none to all. */
  readonly counts: readonly number[];
}

export function heatRig(
  brooder: Brooder,
  schedule: BroodingSchedule,
  { heat, materials }: Pick<Tables, 'heat' | 'materials'>,
): HeatRig {
  const boxes = new Map<number, BrooderBox>();
  return {
    table: heat,
    heat: brooder.heat,
    isAirSchedule: schedule.measures === 'air',
    clearanceM:
      brooder.lampClearanceCm === undefined
        ? heat.clearance.valueM
        : Math.max(heat.clearance.valueM, brooder.lampClearanceCm / 100),
    hasLid: brooder.roof !== undefined,
    isRoom: brooder.roof !== undefined && heat.ceiling.fromM <= brooder.heightM,
    counts: Array.from({ length: brooder.heat.count + 1 }, (_, on) => on),
    box: (share, isOpen) => {
      const key = isOpen ? -share : share;
      let box = boxes.get(key);
      if (!box) {
        box = brooderBox(brooder, { share, isOpen }, { heat, materials });
        boxes.set(key, box);
      }
      return box;
    },
  };
}

/**
 * How much warmer than the air birds are below a heater, K. A gas heater that warms the whole room
 * and a schedule of its air know little or nothing of that; a plate warms by touch and counts for none.
 */
export function riseUnderHeatK(
  { table, heat, isAirSchedule }: HeatRig,
  heightM: number,
  radiantShare = table.radiant.share,
): number {
  if (isAirSchedule || heat.kind === 'plate') return 0;
  if (warmsRoom(heat)) return table.zone.roomBelowHeaterK;
  if (heat.kind === 'gas') return table.radiant.riseKPerWPerM2 * table.gasBrooder.fluxWPerM2;
  return riseBelowLampK({ ...table.radiant, share: radiantShare }, heat.wattsEach, heightM);
}

/** Whether birds can get away from the heat: not where the whole room is kept warm. */
export const hasCoolEnd = ({ heat, isAirSchedule }: HeatRig): boolean =>
  !warmsRoom(heat) && !isAirSchedule;

/** Whether its heaters warm the air of a room, not the floor below them. */
export const warmsRoom = ({ kind, warms }: Brooder['heat']): boolean =>
  kind === 'gas' && warms === 'room';
