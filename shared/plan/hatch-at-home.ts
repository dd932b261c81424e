import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { Handover } from '../farm/handover.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import type { HatchDates } from './hatch-dates.js';

/** Days of a hatch on which somebody should be there. */
interface Watch {
  readonly what: string;
  readonly from: PlainDate;
  readonly to: PlainDate;
}

/** Says when lockdown or the hatch falls on days on which everybody is away, or a sitter is in charge. */
export function homeForHatch(context: PlanContext, { set, lockdown }: HatchDates): PlanIssue[] {
  const { batch, tables } = context;
  const early = tables.hatching.hatchWindow.days;
  const watches: readonly Watch[] = [
    { what: 'Setting the eggs', from: set, to: set },
    ...(lockdown === undefined ? [] : [{ what: 'Lockdown', from: lockdown, to: lockdown }]),
    {
      what: 'The hatch',
      from: addDays(batch.arrivalDate, -early),
      to: addDays(batch.arrivalDate, early),
    },
  ];
  return watches.flatMap((watch) => watched(context, watch));
}

function watched(context: PlanContext, watch: Watch): PlanIssue[] {
  const { people, handovers = [], say } = context;
  const when =
    watch.from === watch.to
      ? `is on ${say(watch.from, 'date')}`
      : `is due from ${say(watch.from, 'date')} to ${say(watch.to, 'date')}`;
  const handover = handovers.find(({ from, to }) => from <= watch.to && watch.from <= to);
  if (handover) {
    return [
      issue(
        'note',
        'hatch-with-sitter',
        `${watch.what} ${when}, when ${sitterOf(handover, context)} is in charge. Show them what to do, or set the eggs in another week.`,
      ),
    ];
  }
  const isAway = (date: PlainDate): boolean =>
    0 < people.length &&
    people.every(({ away }) => away.some(({ from, to }) => from <= date && date <= to));
  return daysOf(watch).some(isAway)
    ? [
        issue(
          'act',
          'hatch-away',
          `${watch.what} ${when}, and everybody is away then. Set the eggs in another week, or have somebody there.`,
        ),
      ]
    : [];
}

function daysOf({ from, to }: Watch): PlainDate[] {
  const days: PlainDate[] = [];
  for (let date = from; date <= to; date = addDays(date, 1)) days.push(date);
  return days;
}

const sitterOf = ({ sitter, personId }: Handover, { people }: PlanContext): string =>
  sitter ?? people.find(({ id }) => id === personId)?.name ?? 'somebody else';
