import type { Farm } from '../../farm/farm.js';
import type { Tables } from '../../tables/tables.js';
import { inOwnUnits } from '../../units/own-units.js';
import type { Mishap } from './way-on.js';

/** Cautions by their keys, in the units of a farm, and who says so. */
export const cautionsSaid = (
  { cautions, sources: all }: Tables,
  { units }: Pick<Farm, 'units'>,
  keys: readonly string[],
): Mishap['cautions'] =>
  keys.map((key) => {
    const { title, text, sources = [] } = cautions[key]!;
    const from = sources.map((id) => `${all[id]!.publisher}: ${all[id]!.title}`);
    return { title, text: inOwnUnits(text, units), from };
  });
