import type { WorkDays } from '../../schedule/work-days.js';
import type { FittedWork } from '../../schedule/work-search.js';
import type { WorkProblem } from '../../schedule/work.js';
import type { SeasonDays } from './season-days.js';
import type { DoneNeed, SeasonNeed } from './season-needs.js';
import type { SeasonRequest } from './season-request.js';

/** All that a plan was made from, for those who look further into it. */
export interface SeasonWork {
  readonly request: SeasonRequest;
  readonly days: SeasonDays;
  readonly needs: readonly SeasonNeed[];
  readonly problem: WorkProblem;
  readonly fitted: FittedWork;
  /** Hours the plan leaves free. */
  readonly left: WorkDays;
  readonly done: readonly DoneNeed[];
}
