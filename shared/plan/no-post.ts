import { addDays, weekdayOf, type PlainDate } from '../calendar/plain-date.js';
import type { Sourced } from '../explain/formula.js';
import { comesByPost } from '../farm/batch-origin.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { formatDate } from '../units/dates.js';
import type { PlanContext } from './context.js';
import type { PlanRequest } from './request.js';

type PostOfPlace = Pick<PlanRequest, 'farm' | 'publicHolidays' | 'today'>;

/** Where public holidays come from. */
const HOLIDAYS: Sourced = { sources: ['PUBLIC_HOLIDAYS'], mark: 'second-hand' };

export interface NoPost {
  /** Why none comes, in words. */
  readonly because: string;
  readonly rows: readonly Sourced[];
}

/** Whether no post comes on a date: a Sunday, a public holiday, a day of the farm’s own list. */
export function noPostOn(
  date: PlainDate,
  { farm, publicHolidays }: Pick<PostOfPlace, 'farm' | 'publicHolidays'>,
): NoPost | undefined {
  if (weekdayOf(date) === SUNDAY) return { because: 'a Sunday', rows: [] };
  const holiday = publicHolidays?.find((each) => each.date === date);
  if (holiday) return { because: holiday.name, rows: [HOLIDAYS] };
  return farm.noDeliveryDates.includes(date)
    ? { because: 'a day without post on your list', rows: [] }
    : undefined;
}

const SUNDAY = 7;

/** Said of a box that would come on a day without post, or wait over the next one. */
export function noPost(
  request: PostOfPlace & Pick<PlanRequest, 'batch'> & Pick<PlanContext, 'words'>,
): PlanIssue[] {
  const { batch, farm, today, words } = request;
  const { arrivalDate } = batch;
  // What has come has come.
  if (!comesByPost(batch) || arrivalDate < today) return [];
  const say = (date: PlainDate): string => formatDate(date, { units: farm.units, today });
  const none = noPostOn(arrivalDate, request);
  if (none) {
    return [
      issue(
        'act',
        'no-post',
        `No post on ${say(arrivalDate)}: ${none.because}. The box would wait, and 72 hours from hatch is the limit. Have it come on ${say(postBefore(arrivalDate, request))}, or fetch the ${words.young}.`,
        none.rows,
      ),
    ];
  }
  const next = addDays(arrivalDate, 1);
  const late = weekdayOf(next) === SUNDAY ? undefined : noPostOn(next, request);
  return late === undefined
    ? []
    : [
        issue(
          'note',
          'no-post-next-day',
          `The day after the arrival, ${say(next)}, has no post: ${late.because}. A late box would wait over it; a day sooner is safer.`,
          late.rows,
        ),
      ];
}

/** The last day before a date on which post comes. */
function postBefore(date: PlainDate, request: PostOfPlace): PlainDate {
  let before = addDays(date, -1);
  while (noPostOn(before, request) !== undefined) before = addDays(before, -1);
  return before;
}
