import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import { isGoneBy } from './gone-by.js';
import type { PlannedJob, WorkPlan } from './planned-work.js';

/** Work for which the hours do not reach: on its day, in part, or at all. */
export interface UnfitJob {
  readonly key: string;
  /** What is missing of which work, in a few words. */
  readonly words: string;
  /** The day in whose week it is told: where it stands, else where it is due, at the earliest today. */
  readonly on: PlainDate;
}

/**
 * Work that finds no place by its days, finds it in part, or lacks hours on its day. What can be done no
 * more is no want of time now.
 */
export const unfitJobs = ({
  jobs,
  shortDays,
  today,
}: Pick<WorkPlan, 'jobs' | 'shortDays' | 'today'>): UnfitJob[] => [
  ...jobs.flatMap((job) => {
    const words = isGoneBy(job) ? undefined : wordsOf(job);
    if (words === undefined) return [];
    const due = job.latest < today ? today : job.latest;
    const on = job.lostHours === 0 ? (job.pieces[0]?.date ?? due) : due;
    return [{ key: job.key, words, on }];
  }),
  ...shortDays.map(({ date, keys, words }) => ({ key: keys[0]!, words, on: date })),
];

function wordsOf({ name, belongsTo, ...job }: PlannedJob): string | undefined {
  const said = `“${name}”${belongsTo ? ` (${belongsTo.name})` : ''}`;
  if (job.pieces.length === 0) return `no time for ${said}`;
  return 0 < job.lostHours ? `no time for all of ${said}` : undefined;
}

/** What a week asks for beyond what can be done in it. */
export interface OverWeek {
  /** More hours are wanted than there are. */
  readonly isShort: boolean;
  readonly unfitJobs: readonly UnfitJob[];
  /** Days on which chores take hours that nobody has on them. */
  readonly unfitChoreDays: number;
}

/** Whether a week asks for more than can be done in it, the same wherever weeks are told. */
export const isOver = ({ isShort, unfitJobs: unfit, unfitChoreDays }: OverWeek): boolean =>
  isShort || 0 < unfit.length + unfitChoreDays;

/** To the tenth of an hour that weeks are counted in. */
export const tenth = (hours: number): number => Math.round(hours * 10) / 10;

/** The first days of the weeks of a plan that ask for more than can be done in them. */
export function overWeeks({ today, weeks, jobs, chores, shortDays }: WorkPlan): PlainDate[] {
  const unfit = unfitJobs({ jobs, shortDays, today });
  // Work without a place counts in the week in which it is due.
  const homeless = jobs.flatMap((job) => {
    const { pieces, hours, lostHours, peopleNeeded, latest } = job;
    const left = isGoneBy(job) ? 0 : peopleNeeded * (pieces.length === 0 ? hours : lostHours);
    return 0 < left ? [{ left, on: latest < today ? today : latest }] : [];
  });
  const short = chores.flatMap((list, day) =>
    list.some(({ shortHours }) => 0 < shortHours) ? [addDays(today, day)] : [],
  );
  return weeks
    .filter(({ from, hours, choreHours, plannedHours }) => {
      const isIn = (date: PlainDate): boolean => from <= date && date < addDays(from, 7);
      const left = homeless.reduce((sum, each) => (isIn(each.on) ? sum + each.left : sum), 0);
      return isOver({
        isShort: tenth(hours) < tenth(tenth(choreHours) + tenth(plannedHours + left)),
        unfitJobs: unfit.filter(({ on }) => isIn(on)),
        unfitChoreDays: short.filter(isIn).length,
      });
    })
    .map(({ from }) => from);
}

/** Weeks that ask for more than can be done in them, in a line. */
export function overWeeksInWords(
  weeks: readonly PlainDate[],
  sayDate: (date: PlainDate) => string,
): string {
  const [first] = weeks;
  if (first === undefined) return 'No week asks for more than fits';
  return weeks.length === 1
    ? `The week from ${sayDate(first)} asks for more than fits`
    : `${weeks.length} weeks ask for more than fits, the first from ${sayDate(first)}`;
}
