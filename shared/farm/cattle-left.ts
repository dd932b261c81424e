import type { FieldProblem } from '../problems/field-problem.js';
import { whole, within } from './bounds.js';
import { choice, number, optional, row, text, type RowOf } from './field.js';
import { id, price } from './words.js';

/** Cattle of a herd that died or went to somebody else. */
export const cattleLeftFields = row('CattleLeft', {
  how: choice('What became of them', ['died', 'put-down', 'sold', 'slaughtered', 'given']),
  head: number('How many', whole(1, 2000, 'count', 'Count the animals that died or went.')),
  /** Left out where the herd has one class, or the cow says it. */
  classId: optional(id('Of which class')),
  cowId: optional(id('Which cow')),
  weightKg: optional(
    number(
      'Live weight, all together',
      within(10, 1_000_000, 'kg', 'Give the weight of all of them alive.'),
    ),
  ),
  /** For all of them together. */
  money: optional(price('What they brought, all together')),
  to: optional(text('To whom', 80)),
});
export type CattleLeft = RowOf<typeof cattleLeftFields>;

/** What one animal may weigh, kg: a calf just born to the heaviest bull. Judgement, no source. */
const ONE_KG = { min: 10, max: 1500 };

/** What is wrong with what is told of them by itself. */
export function leftProblems(said: Partial<CattleLeft>): FieldProblem[] {
  const { how, head, weightKg, money, cowId } = said;
  const problems: FieldProblem[] = [];
  if (cowId !== undefined && head !== undefined && head !== 1)
    problems.push({
      ...{ field: 'details.head', code: 'out-of-bounds', given: head, min: 1, max: 1 },
      fix: 'One cow was named: tell the others by themselves.',
    });
  if (weightKg !== undefined && head !== undefined) {
    const [min, max] = [ONE_KG.min * head, ONE_KG.max * head];
    if (weightKg < min || max < weightKg)
      problems.push({
        ...{ field: 'details.weightKg', code: 'out-of-bounds', given: weightKg, min, max },
        fix: 'That is no weight of so many cattle: check the unit and the number of head.',
      });
  }
  if (money !== undefined && how !== 'sold')
    problems.push({
      ...{ field: 'details.money', code: 'conflict', given: money },
      fix: 'Money comes for what is sold: say that they were sold, or leave it out.',
    });
  return problems;
}
