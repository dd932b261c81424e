import type { WorkDays } from '../../schedule/work-days.js';
import type { FittedWork } from '../../schedule/work-search.js';
import type { WorkProblem } from '../../schedule/work.js';
import type { DaysOfWork } from './days-of-work.js';
import type { DryEnough } from './work-ground.js';
import type { DoneNeed, StruckNeed } from './set-aside.js';
import type { WorkNeed } from './work-need.js';
import type { WorkRequest } from './work-request.js';

/** All that a plan was made from, for those who look further into it. */
export interface WholeWork {
  readonly request: WorkRequest;
  readonly days: DaysOfWork;
  readonly dryEnough: DryEnough;
  readonly needs: readonly WorkNeed[];
  readonly problem: WorkProblem;
  readonly fitted: FittedWork;
  /** Hours the plan leaves free. */
  readonly left: WorkDays;
  readonly done: readonly DoneNeed[];
  readonly struckOut: readonly StruckNeed[];
}
