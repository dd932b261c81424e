import type { Farm } from '../../farm/farm.js';
import type { Tables } from '../../tables/tables.js';
import { inOwnUnits } from '../../units/own-units.js';
import type { Mishap } from './way-on.js';

/** Cautions by their keys, in the units of a farm. */
export const cautionsSaid = (
  { cautions }: Tables,
  { units }: Pick<Farm, 'units'>,
  keys: readonly string[],
): Mishap['cautions'] =>
  keys.map((key) => {
    const { title, text } = cautions[key]!;
    return { title, text: inOwnUnits(text, units) };
  });
