import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { TaskTemplate } from '../tables/task-template.js';
import type { PlanContext } from './context.js';
import { hatchDatesOf } from './hatch-dates.js';
import type { PlanEvent } from './tasks/event.js';
import type { DatedSpan, TasksFor } from './tasks/hang-tasks.js';

/**
 * Which work of a batch is past whatever became of it: that of the order once the birds are ordered,
 * that of the eggs once chicks are there, and what lies so far back that it is taken as done.
 */
export function pastTasks(context: PlanContext): NonNullable<TasksFor['isPast']> {
  const { batch, life, today, tables } = context;
  const isOrdered = isOrderMade(context);
  const isHatched = batch.arrivalDate < today;
  // With the last hen gone there is nothing to do for them; what follows processing is another's.
  const isAllGone =
    batch.purpose === 'layers' &&
    (life.told?.overOn ?? Infinity) < daysBetween(batch.arrivalDate, today);
  const longPast = addDays(today, -tables.judgements.work.longPastDays.value);
  return (template, event, dates) =>
    (isOrdered && template.doneByOrder === true) ||
    (isHatched && HATCHING.has(event.kind)) ||
    isAllGone ||
    (event.date < longPast && lastDayOf(template, event, dates) < longPast && !template.goesOn);
}

/**
 * Which work of a batch there is nothing left of by what was told, not by the calendar: a box that is
 * only due may still be on its way. What the last plan has of it goes as well.
 */
export function settledTasks(context: PlanContext): NonNullable<TasksFor['isSettled']> {
  const { batch, today } = context;
  const isOrdered = orderOf(context) === 'told';
  const isHere = hasCome(context);
  // Birds that outlive the days of such work have what it was for, in whatever way.
  const isOutlived = ({ onceHere: here }: TaskTemplate, { date }: PlanEvent): boolean =>
    here !== undefined && addDays(date, (here.offsetDays ?? 0) + here.days) < today;
  return (template, event) =>
    (isOrdered && template.doneByOrder === true) ||
    (isHere && (template.doneByArrival === true || isOutlived(template, event))) ||
    (batch.slotDate !== undefined && template.id === BOOKING) ||
    // Birds that were told to be processed were caught, killed and chilled, ticked off or not.
    (event.kind === 'processing' &&
      template.offsetDays <= 0 &&
      event.date < today &&
      wereProcessedOn(context, event.date));
}

/** Whether birds were told to have been processed on a day; those sold alive were not. */
const wereProcessedOn = ({ headChanges = [] }: PlanContext, on: PlainDate): boolean =>
  headChanges.some(({ change, date }) => change === 'processed' && date === on);

/** Whether the birds were told to have come. */
const hasCome = ({ life }: PlanContext): boolean => life.told?.came !== undefined;

/**
 * Work that had to be done before birds that were told to have come: what they cannot do without is
 * asked for on that day and the next ones, in words of somebody who has them already.
 */
export const onceHere = (context: PlanContext): ((template: TaskTemplate) => TaskTemplate) =>
  hasCome(context)
    ? ({ latestOffsetDays: _latest, leadNote: _lead, waitDays: _wait, ...template }) => {
        const { onceHere: here } = template;
        if (template.doneByArrival) return { ...template, waitsFor: [] };
        if (!here) return template;
        const { earliestOffsetDays: _earliest, beforeEvent: _before, ...rest } = template;
        const { name, days, ifLate, offsetDays = 0, hoursBase = rest.hoursBase } = here;
        return {
          ...rest,
          ...{ offsetDays, hoursBase, name, ifLate },
          ...(0 < offsetDays ? { lengthDays: 1, earliestOffsetDays: 0 } : { lengthDays: days }),
          ...{ waitsFor: here.waitsFor ?? [], lapses: true, latestOffsetDays: offsetDays + days },
        };
      }
    : (template) => template;

/** The work of ordering birds. */
export const ORDERS: ReadonlySet<string> = new Set([
  'meat.order-chicks-for-a-named-arrival',
  'layers.choose-number-from-eggs-wanted-and',
  'started.order-pullets',
]);

/** Finding out which rule covers selling: before birds are ordered, and still due once they are. */
export const CONFIRMING_RULE = 'processing.confirm-rule-that-covers-you-and';

/** Booking the slot, which is past once there is one. */
export const BOOKING = 'meat.book-processor-or-fix-own-processing';
/** Booking or finding hands for the birds that nobody of the household can process. */
export const ARRANGING = 'processing.arrange-the-rest';

const HATCHING: ReadonlySet<PlanEvent['kind']> = new Set(['eggs-set', 'candle', 'lockdown']);

/** The last day on which work may be done without loss; of what comes with each animal, that of the last. */
export function lastDayOf(
  { mayFollowDays = 0, spreadOver }: TaskTemplate,
  { date }: Pick<PlanEvent, 'date'>,
  { end, spareDays }: DatedSpan,
): PlainDate {
  const last = addDays(end, spareDays + mayFollowDays);
  if (!spreadOver) return last;
  const spread = addDays(date, spreadOver.fromOffsetDays + spreadOver.days - 1);
  return last < spread ? spread : last;
}

/** Whether the birds are ordered, as told or as it is taken. */
export const isOrderMade = (context: PlanContext): boolean => orderOf(context) !== 'open';

/** How the order stands: as told, or taken as made where it is too late for another. */
function orderOf(context: PlanContext): 'open' | 'told' | 'taken' {
  const { batch, life, today, tables } = context;
  if (life.eggs) {
    if (batch.eggsSet !== undefined) return 'told';
    return hatchDatesOf(context, life.eggs).set < today ? 'taken' : 'open';
  }
  if (batch.orderDate !== undefined) return batch.orderDate <= today ? 'told' : 'open';
  if (batch.orderedBirds !== undefined) return 'told';
  const days = daysBetween(today, batch.arrivalDate);
  return days < tables.judgements.arrival.usualLeadDays.value ? 'taken' : 'open';
}

/** Code of what says so. */
export const TAKEN_AS_ORDERED = 'taken-as-ordered';

/** Says that chicks are taken as ordered where nobody said so and they come soon. */
export function takenAsOrdered(context: PlanContext): PlanIssue[] {
  const { batch, life, today, tables, words } = context;
  const days = daysBetween(today, batch.arrivalDate);
  if (life.eggs || days < 1 || orderOf(context) !== 'taken') return [];
  const { usualLeadDays } = tables.judgements.arrival;
  return [
    issue(
      'note',
      TAKEN_AS_ORDERED,
      `The ${words.young} come in ${days} ${days === 1 ? 'day' : 'days'}, and ${usualLeadDays.value} are usual between order and arrival, so they are taken as ordered. If they are not, ask ${life.isStarted ? 'the seller' : 'the hatchery'} what is left before anything else.`,
      [usualLeadDays],
    ),
  ];
}
