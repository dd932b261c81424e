import type { WorkPlan, WorkWeek } from './planned-work.js';

/** Weeks near enough to be told even when only chores are done in them. */
const NEAR_WEEKS = 26;

/** Weeks of a plan one by one: those of the next half year with anything to do, later ones with work. */
export const weeksToTell = ({ weeks }: Pick<WorkPlan, 'weeks'>): WorkWeek[] =>
  weeks.filter(
    ({ choreHours, plannedHours, dueHours }, k) =>
      0 < (k < NEAR_WEEKS ? choreHours : 0) + plannedHours + dueHours,
  );
