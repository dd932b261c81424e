import { inOwnUnits } from '../units/own-units.js';
import type { UnitSystem } from '../units/unit.js';
import type { Tables } from './tables.js';

const known = new WeakMap<Tables, Map<UnitSystem, Tables>>();

/**
 * The tables with names, words and cautions in the units of a farm. Titles of sources stay as they
 * are; rows without such words are the same ones.
 */
export function tablesIn(units: UnitSystem, tables: Tables): Tables {
  let bySystem = known.get(tables);
  if (!bySystem) known.set(tables, (bySystem = new Map()));
  let own = bySystem.get(units);
  if (!own) {
    const { sources, ...rest } = tables;
    own = { ...(inUnits(rest, units) as Omit<Tables, 'sources'>), sources };
    bySystem.set(units, own);
    // Handed on from plan to plan, they stay what they are.
    known.set(own, new Map([[units, own]]));
  }
  return own;
}

function inUnits(value: unknown, units: UnitSystem): unknown {
  if (typeof value === 'string') return inOwnUnits(value, units);
  if (Array.isArray(value)) return ofList(value, units);
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value;
  const entries = Object.entries(value);
  const own = entries.map(([key, each]) => [key, inUnits(each, units)] as const);
  return own.every(([, each], k) => each === entries[k]![1]) ? value : Object.fromEntries(own);
}

function ofList(list: readonly unknown[], units: UnitSystem): readonly unknown[] {
  if (typeof list[0] === 'number') return list;
  const own = list.map((each) => inUnits(each, units));
  return own.every((each, k) => each === list[k]) ? list : own;
}
