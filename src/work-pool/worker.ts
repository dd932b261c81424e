import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { TASKS, type TaskName } from './tasks.js';

export interface Asked {
  readonly task: TaskName;
  readonly input: unknown;
}
export type Answered =
  | { readonly output: unknown }
  | { readonly problems: readonly FieldProblem[] };

/** Does one task in a thread of the pool. Problems go back as data: a copied error loses them. */
export default async function work({ task, input }: Asked): Promise<Answered> {
  try {
    return { output: await (TASKS[task] as (input: unknown) => unknown)(input) };
  } catch (error) {
    if (error instanceof FieldError) return { problems: error.problems };
    throw error;
  }
}
