import type { PlainDate } from '../../calendar/plain-date.js';
import type { Calved } from '../../farm/season-facts.js';

/** Whose calves are asked after. */
export interface CalvingAsked {
  readonly herdId: string;
  /** The one cow; left out of a group. */
  readonly cowId?: string;
  /** The group: a herd may have several that calve on days of their own. */
  readonly classId: string;
  readonly dueOn: PlainDate;
  /** Cows of which nothing is told. */
  readonly head: number;
}

/** A birth of them as it most likely was: of a group no cow is named, whichever is due about now. */
export const bornOf = (asked: CalvingAsked): Readonly<Record<string, unknown>> => ({
  ...{ calves: 1, cowId: undefined },
  ...which(asked),
});

/** So many of them have no calf in them; all, where not said. */
export const notInCalfOf = (asked: CalvingAsked, head = asked.head): Calved => ({
  ...{ calves: 0, notInCalf: head },
  ...which(asked),
});

const which = ({ cowId, classId, dueOn }: CalvingAsked) =>
  cowId === undefined ? { classId, dueOn } : { cowId };
