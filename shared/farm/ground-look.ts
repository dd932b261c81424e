import type { PlainDate } from '../calendar/plain-date.js';

/** What the household found when it went to look at the ground. */
export interface GroundLook {
  readonly date: PlainDate;
  readonly isWorkable: boolean;
}
