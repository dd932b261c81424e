import { holding, type WorkProgress } from './told-fact.js';

/**
 * Facts that are taken back when the last of what was said of a piece of work is: that one, and where
 * it was hours told after the work was done, the tick that it was told after. The newest first.
 *
 * @param facts all that was said of one piece of work
 */
export function undoneFacts(facts: readonly WorkProgress[]): readonly WorkProgress[] {
  const undone: WorkProgress[] = [];
  let rest = facts;
  for (let last = holding(rest).at(-1); last;) {
    undone.push(last);
    const { id } = last;
    rest = rest.filter((fact) => fact.id !== id);
    const before = holding(rest).at(-1);
    const isSameTick = last.details.doneOn !== undefined && before?.details.doneOn !== undefined;
    last = isSameTick ? before : undefined;
  }
  return undone;
}
