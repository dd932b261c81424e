import type { PlainDate } from '../calendar/plain-date.js';

/** What a task allows and asks for when it is fitted into a household's hours. */
export interface TaskHabits {
  /** First day it is of use, where that is before its start. */
  readonly earliestStart?: PlainDate;
  /** Days it may be done after its day without loss. */
  readonly mayFollowDays?: number;
  /** Not spread over days. */
  readonly inOneGo?: boolean;
  /** Days to wait after some of what it waits for, by id. */
  readonly waitDays?: Readonly<Record<string, number>>;
  /** Only done when weather or grass asks for it. */
  readonly ifNeeded?: boolean;
  /** Days over which its hours come, a part with each animal. */
  readonly comesOver?: { readonly from: PlainDate; readonly to: PlainDate };
}
