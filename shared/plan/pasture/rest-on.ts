import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import type { Mowing } from '../../farm/mowing.js';
import type { Paddock } from '../../farm/paddock.js';
import { moveFormulas } from './move-quantities.js';
import type { PasturePlan } from './pasture-plan.js';

/** How long a paddock has rested on a day of the plan. */
export type RestOn = { readonly is: 'grazed' } | { readonly is: 'resting'; of: NumberQuantity };

/**
 * Days since a paddock was last grazed or mown; undefined where it is not known when that was.
 *
 * @param day of the plan, 0 or more
 * @param mowings what was told: the plan itself only knows cuts from its first day on
 */
export function restOn(
  plan: PasturePlan,
  { id, name, lastGrazedOn }: Pick<Paddock, 'id' | 'name' | 'lastGrazedOn'>,
  day: number,
  mowings: readonly Mowing[] = [],
): RestOn | undefined {
  const date = addDays(plan.from, day);
  const stays = plan.moves.filter((move) => move.paddockId === id && move.from <= date);
  if (stays.some(({ to }) => date <= to)) return { is: 'grazed' };
  const isPast = (on: PlainDate): boolean => on <= date;
  const left = [
    ...stays.map(({ to }) => addDays(to, 1)),
    ...[
      ...plan.surplus.map((cut) => ({ ...cut, on: cut.cutOn })),
      ...plan.toppings,
      ...mowings.map((told) => ({ ...told, on: told.date })),
    ]
      .filter(({ paddockId, on }) => paddockId === id && isPast(on))
      .map(({ on }) => on),
    ...(lastGrazedOn !== undefined && isPast(lastGrazedOn) ? [addDays(lastGrazedOn, 1)] : []),
  ]
    .sort()
    .at(-1);
  if (left === undefined) return undefined;
  const of = quantity(
    `Rest of ${name}`,
    Math.max(0, daysBetween(left, date)),
    'day',
    moveFormulas.rest,
    [input('Left or mown on', left, 'date'), input('On', date, 'date')],
    { rows: [plan.order] },
  );
  return { is: 'resting', of };
}
