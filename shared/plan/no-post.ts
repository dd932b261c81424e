import { addDays, weekdayOf, type PlainDate } from '../calendar/plain-date.js';
import type { Sourced } from '../explain/formula.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { formatDate } from '../units/dates.js';
import type { PlanRequest } from './request.js';

type PostOfPlace = Pick<PlanRequest, 'farm' | 'publicHolidays' | 'today'>;

/** Where public holidays come from. */
const HOLIDAYS: Sourced = { sources: ['PUBLIC_HOLIDAYS'], mark: 'second-hand' };

/** Why no post comes on a date, in words: Sunday, a public holiday, a day of the farm's own list. */
export function noPostBecause(
  date: PlainDate,
  { farm, publicHolidays }: Pick<PostOfPlace, 'farm' | 'publicHolidays'>,
): string | undefined {
  if (weekdayOf(date) === SUNDAY) return 'a Sunday';
  const holiday = publicHolidays.find((each) => each.date === date);
  if (holiday) return holiday.name;
  return farm.noDeliveryDates.includes(date) ? 'a day without post on your list' : undefined;
}

const SUNDAY = 7;

/** Said of a box that would come on a day without post, or wait over the next one. */
export function noPost(request: PostOfPlace & Pick<PlanRequest, 'batch'>): PlanIssue[] {
  const { batch, farm, today } = request;
  const { arrivalDate, hatchToArrivalDays } = batch;
  // Chicks that are fetched on the day of hatch come by no post; what has come has come.
  if (hatchToArrivalDays === 0 || arrivalDate < today) return [];
  const say = (date: PlainDate): string => formatDate(date, { units: farm.units, today });
  const because = noPostBecause(arrivalDate, request);
  if (because !== undefined) {
    return [
      issue(
        'act',
        'no-post',
        `No post on ${say(arrivalDate)}: ${because}. The box would wait, and 72 hours from hatch is the limit. Have it come on ${say(postBefore(arrivalDate, request))}, or fetch the chicks.`,
        [HOLIDAYS],
      ),
    ];
  }
  const next = addDays(arrivalDate, 1);
  const late = weekdayOf(next) === SUNDAY ? undefined : noPostBecause(next, request);
  return late === undefined
    ? []
    : [
        issue(
          'note',
          'no-post-next-day',
          `The day after the arrival, ${say(next)}, has no post: ${late}. A late box would wait over it; a day sooner is safer.`,
          [HOLIDAYS],
        ),
      ];
}

/** The last day before a date on which post comes. */
function postBefore(date: PlainDate, request: PostOfPlace): PlainDate {
  let before = addDays(date, -1);
  while (noPostBecause(before, request) !== undefined) before = addDays(before, -1);
  return before;
}
