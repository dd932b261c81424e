import { dayOfYear, weekdayOf, type PlainDate } from '../calendar/plain-date.js';
import { dayLengthH } from '../calendar/day-length.js';
import type { Sourced } from '../explain/formula.js';
import type { TaskTemplate } from '../tables/task-template.js';
import type { PlanContext } from './context.js';

/** What people can do at home on one day. */
export interface DayOfHands {
  readonly date: PlainDate;
  readonly hands: number;
  /** Hours of all of them, in daylight. */
  readonly hours: number;
  /** Birds they can process in those hours. */
  readonly most: number;
}

export interface ProcessingDay extends DayOfHands {
  /** Days after the arrival. */
  readonly index: number;
  readonly birds: number;
}

export interface ProcessingDays {
  /** From the first to the last; every bird is on one of them. */
  readonly days: readonly ProcessingDay[];
  /** Birds of them that are too much for the hands there are. */
  readonly left: number;
  /** The planned day as it is, whether birds are processed on it or not. */
  readonly planned: DayOfHands;
}

/** Hours of a day of processing at home: to set up and clean down, and for a bird. */
export interface DayWork {
  readonly fixedH: number;
  readonly birdH: number;
  readonly rows: readonly Sourced[];
}

/** The task in which birds are killed, plucked and opened. */
const KILLING = 'processing.kill-scald-pluck-eviscerate';

export const killingOf = (templates: readonly TaskTemplate[]): TaskTemplate =>
  templates.find(({ id }) => id === KILLING)!;

/** Work of the day itself: all that hangs on it without days before or after. */
export function workOfDay(templates: readonly TaskTemplate[]): DayWork {
  const rows = templates.filter(
    (t) =>
      t.event === 'processing' &&
      t.processing === 'home' &&
      t.offsetDays === 0 &&
      !t.isDaily &&
      !t.onDemand,
  );
  return {
    fixedH: rows.reduce((sum, t) => sum + t.hoursBase, 0),
    birdH: rows.reduce((sum, t) => sum + t.hoursPerUnit / 100, 0),
    rows,
  };
}

/**
 * The days on which a batch is processed. Where the hands and the daylight of the planned day are
 * too few for all of it, the first birds go on the days before, so that none is kept past its age.
 * A day on which hardly any could be done is left out. A hired processor takes all on one day, and
 * where no people are named nothing is split: who could come is not known.
 *
 * @param birds whole birds to process, 1 or more
 */
export function processingDays(context: PlanContext, birds: number): ProcessingDays {
  const { life, batch, tables, dateOf } = context;
  const last = life.days - 1;
  const planned = handsOn(context, dateOf(last));
  if (batch.processing === 'hired' || areHandsUnknown(context)) {
    return { days: [{ ...planned, index: last, birds }], left: 0, planned };
  }
  const { splitDays, leastADay } = tables.judgements.birds;
  const least = leastADay.value;
  const days: ProcessingDay[] = [];
  let left = birds;
  for (let index = last; 0 <= index && last - index < splitDays.value; index--) {
    if (left < (days.length === 0 ? 1 : least)) break;
    const day = index === last ? planned : handsOn(context, dateOf(index));
    if (day.most < Math.min(birds, least)) continue;
    const now = Math.min(left, day.most);
    days.push({ ...day, index, birds: now });
    left -= now;
  }
  if (days.length === 0)
    return { days: [{ ...planned, index: last, birds }], left: birds, planned };
  // A day is not set up for a handful: they are done on the longest one, an hour later. More than
  // that stays with the planned day, where it is said to be too much.
  const isHandful = left < least;
  const longest = days.reduce((best, day) => (best.most < day.most ? day : best));
  const takesRest = isHandful ? longest : days[0]!;
  return {
    days: days
      .map((day) => (day === takesRest ? { ...day, birds: day.birds + left } : day))
      .reverse(),
    left: isHandful ? 0 : left,
    planned,
  };
}

/** Whether the household has said nothing of who processes. */
export const areHandsUnknown = ({
  people,
  batch,
}: Pick<PlanContext, 'people' | 'batch'>): boolean =>
  people.length === 0 && batch.processingHelpers === undefined;

/** Hours that hands have for birds on the days among which a batch is split, setting up taken off. */
export function handHoursUpTo(context: PlanContext): number {
  const { tables, life, dateOf } = context;
  const { splitDays, leastADay } = tables.judgements.birds;
  const { fixedH } = workOfDay(tables.taskTemplates);
  const last = life.days - 1;
  let hours = 0;
  for (let index = last; 0 <= index && last - index < splitDays.value; index--) {
    const day = handsOn(context, dateOf(index));
    if (leastADay.value <= day.most) hours += day.hours - fixedH;
  }
  return hours;
}

/** Who has hours on a day, by their weekdays, days away and the daylight; helpers are added. */
export function handsOn(
  { batch, people, farm, tables }: Pick<PlanContext, 'batch' | 'people' | 'farm' | 'tables'>,
  date: PlainDate,
): DayOfHands {
  const { handHours, handsUnknown } = tables.judgements.birds;
  const daylight = dayLengthH({ latitudeDeg: farm.latitudeDeg, dayOfYear: dayOfYear(date) });
  const ofEach =
    people.length === 0
      ? Array.from({ length: handsUnknown.value }, () => handHours.value)
      : people.map(({ away, hoursByWeekday }) =>
          away.some(({ from, to }) => from <= date && date <= to)
            ? 0
            : (hoursByWeekday?.[weekdayOf(date) - 1] ?? handHours.value),
        );
  const helpers = Array.from({ length: batch.processingHelpers ?? 0 }, () => handHours.value);
  const hours = [...ofEach, ...helpers].map((h) => Math.min(h, daylight)).filter((h) => 0 < h);
  const sum = hours.reduce((all, h) => all + h, 0);
  const { fixedH, birdH } = workOfDay(tables.taskTemplates);
  return {
    date,
    hands: hours.length,
    hours: sum,
    most: Math.max(0, Math.floor((sum - fixedH) / birdH + 1e-9)),
  };
}
