import type { Formula } from '../explain/formula.js';
import { input, quantity, type NumberQuantity } from '../explain/quantity.js';
import { spaceRowAt } from '../poultry/space.js';
import { issue } from '../problems/plan-issue.js';
import type { BrooderSpaceStandard } from '../tables/bird-tables.js';
import { floorHad, floorHadM2 } from './floor-had.js';
import type { Brooder } from '../farm/facility.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';
import type { Life } from './life.js';

export const spareFormulas = {
  spare: {
    id: 'brooder-days-to-spare',
    title: 'Days to spare in the brooder',
    words:
      'Days after the move on which the birds would still have room in the brooder, should nights stay cold: until the floor that birds of their age need is more than there is.',
    symbols: 'n = min{t ≥ t_out: N(t)·a(age) > A} − t_out',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Floor that the birds alive on a day need in the brooder, m². */
export const brooderFloorM2 = (
  { aliveAll, arrivalAgeDays }: Life,
  { rows }: BrooderSpaceStandard,
  day: number,
): number => aliveAll[day]! * (spaceRowAt(rows, arrivalAgeDays + day).floorM2 ?? 0);

/** How much longer than planned the brooder could hold the birds; nothing where it cannot even so. */
export function daysToSpare(
  context: PlanContext,
  standard: BrooderSpaceStandard,
  brooder: Brooder,
): Found<NumberQuantity | undefined> {
  const { life, moveOutDay, tables, say, dateOf } = context;
  if (moveOutDay === undefined) return found(undefined);
  const haveM2 = floorHadM2(brooder);
  let day = moveOutDay;
  while (day < life.days && brooderFloorM2(life, standard, day) <= haveM2 + 1e-9) day++;
  const spare = day - moveOutDay;
  const isKnown = day < life.days;
  const part = quantity(
    'Days to spare in the brooder',
    spare,
    'day',
    spareFormulas.spare,
    [
      input('Out of the brooder', dateOf(moveOutDay), 'date'),
      floorHad(brooder, 'Floor', 'A'),
      input('Standard', standard.name, 'text'),
    ],
    { rows: [standard, life.losses] },
  );
  const { brooderSpareDays } = tables.judgements.birds;
  if (!isKnown || spare === 0 || brooderSpareDays.value <= spare) return found(part);
  return found(part, {
    issues: [
      issue(
        'note',
        'brooder-few-to-spare',
        `The brooder floor is outgrown on ${say(dateOf(day), 'date')}, ${spare === 1 ? 'the day' : `${say(spare, 'day')}`} after the move: ${spare === 1 ? 'one day' : `${spare} days`} to spare if nights stay cold or the ground is wet. Plan a second room for some of them, or have the shelter ready early.`,
        [standard],
      ),
    ],
  });
}
