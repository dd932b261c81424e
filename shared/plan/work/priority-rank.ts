import type { WorkNeed } from './work-need.js';

/** What comes first where not all is read or done. */
export const PRIORITY_RANK: Readonly<Record<WorkNeed['priority'], number>> = {
  must: 0,
  should: 1,
  could: 2,
};
