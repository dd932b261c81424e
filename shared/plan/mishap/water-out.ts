import type { Quantity } from '../../explain/quantity.js';
import type { Farm } from '../../farm/farm.js';
import type { Tables } from '../../tables/tables.js';
import { formatAbout } from '../../units/format.js';
import { cautionsSaid } from './cautions-said.js';
import type { Mishap } from './way-on.js';

/** A batch or herd, as the day has it. */
interface Drinkers {
  readonly kind: 'batch' | 'herd';
  readonly name: string;
  readonly water?: Quantity;
}

/**
 * No water where it should be: what each drinks today, to be carried. Nothing is planned anew: it is
 * what the day says of them.
 *
 * @param asked low of tonight, °C, and whether the freezer stands as well as the pump
 */
export function waterOut(
  animals: readonly Drinkers[],
  tables: Tables,
  farm: Farm,
  { lowC, isPowerOut = false }: { readonly lowC: number; readonly isPowerOut?: boolean },
): Mishap {
  const waters = animals.flatMap(({ name, water }) =>
    water && typeof water.value === 'number' ? [{ ...water, value: water.value, label: name }] : [],
  );
  const liters = waters.reduce((sum, { value }) => sum + value, 0);
  const has = (kind: Drinkers['kind']): boolean => animals.some((each) => each.kind === kind);
  return {
    name: 'Water for today',
    follows:
      waters.length === 0
        ? ['No animals here drink today.']
        : [
            ...(isPowerOut ? ['A pump stands still without power.'] : []),
            `They drink about ${formatAbout(liters, 'L', farm)} today. Carry it${has('batch') && has('herd') ? ', birds first' : ''}.`,
          ],
    numbers: waters,
    ways: [],
    cautions: cautionsSaid(tables, farm, [
      ...(isPowerOut ? ['freezer-power'] : []),
      ...(lowC < 0 && has('batch') && 0 < waters.length ? ['frozen-drinkers'] : []),
      ...(lowC < 0 && has('herd') ? ['cattle-ice'] : []),
    ]),
  };
}
