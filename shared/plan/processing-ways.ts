import { addDays, weekdayOf, type PlainDate } from '../calendar/plain-date.js';
import type { Batch } from '../farm/batch.js';
import type { PlanContext } from './context.js';
import { growingOn, raisingFewer } from './processing-fitting.js';
import type { ProcessingWay } from './processing-way.js';
import { areHandsUnknown, handsOn } from './hands-of-day.js';
import { daysUpTo, processingDays, type ProcessingDays } from './processing-days.js';
import { longestMoreH } from './processing-longer.js';
import { sayDays } from './processing-words.js';

/**
 * The ways to process a batch that is too much for the hands of its planned day: by oneself on
 * several days, with helpers on one, or by a custom processor. Where the hours of the days do not hold
 * all of them, with as few helpers as make them do, by growing the last ones on over more weekends, or
 * by raising fewer. None where one day is long enough, or so nearly that nothing is said of it.
 */
export function processingWays(
  context: PlanContext,
  all: ProcessingDays,
  birds: number,
): ProcessingWay[] {
  const { batch } = context;
  if (batch.processing === 'hired' || areHandsUnknown(context)) return [];
  if (isOnPlannedDay(context, all) && longestMoreH(context, all.days) === 0) return [];
  const hired = hiredWay(context);
  const planned: ProcessingWay = {
    id: 'planned',
    words: `By yourselves: ${sayDays(context, all.days)}`,
  };
  // Where even long days do not hold all, a way need not spare them.
  const most = 0 < all.left ? 'left' : 'over';
  if (0 < all.over)
    return [
      ...(0 < all.left ? [] : [planned]),
      ...withFewHelpers(context, birds, most),
      ...growingOn(context, most),
      ...raisingFewer(context, birds - all[most], most),
      hired,
    ];
  const helped = helpersFor(context, birds);
  // Scalder and tables are set up once: that stands first.
  return [
    ...(helped && 0 < helped.helpers
      ? [helpersWay(batch, helped.helpers, `all on one day, ${context.say(helped.date, 'date')}`)]
      : []),
    planned,
    hired,
  ];
}

const helpersWay = (batch: Batch, helpers: number, when: string): ProcessingWay => ({
  id: 'helpers',
  words: `With ${sayHelpers(batch, helpers)}: ${when}`,
  chosenBy: { processingHelpers: (batch.processingHelpers ?? 0) + helpers },
});

/** The fewest helpers with whom the days hold all of them. */
function withFewHelpers(
  context: PlanContext,
  birds: number,
  most: 'left' | 'over',
): ProcessingWay[] {
  const { batch } = context;
  const there = batch.processingHelpers ?? 0;
  for (let more = 1; there + more <= MOST_HELPERS; more++) {
    const helped = { ...context, batch: { ...batch, processingHelpers: there + more } };
    const found = processingDays(helped, birds);
    if (found[most] === 0) return [helpersWay(batch, more, sayDays(context, found.days))];
  }
  return [];
}

/** A custom processor works on weekdays; the one nearest to the last day, not after it. */
function hiredWay({ life, dateOf, say }: PlanContext): ProcessingWay {
  const last = dateOf(life.days - 1);
  const on = addDays(last, -Math.max(0, weekdayOf(last) - 5));
  return {
    id: 'hired',
    words: `A custom processor: all on ${say(on, 'date')}; book now, they fill months ahead`,
    chosenBy: {
      processing: 'hired',
      ...(on === last ? {} : { processingWeekday: weekdayOf(on) }),
    },
  };
}

export const isOnPlannedDay = ({ life }: PlanContext, { days, left }: ProcessingDays): boolean =>
  left === 0 && days.length === 1 && days[0]!.index === life.days - 1;

/** As many as a batch may name. */
const MOST_HELPERS = 30;

/**
 * Helpers with whom one day is enough, and the day on which the fewest are needed; undefined where no
 * number of them is, because cones, scalder or plucker are too few.
 */
export function helpersFor(
  context: PlanContext,
  birds: number,
): { readonly helpers: number; readonly date: PlainDate } | undefined {
  const { batch } = context;
  const there = batch.processingHelpers ?? 0;
  const dates = daysUpTo(context).map(({ date }) => date);
  for (let more = 0; there + more <= MOST_HELPERS; more++) {
    const helped = { ...context, batch: { ...batch, processingHelpers: there + more } };
    const date = dates.find((each) => birds <= handsOn(helped, each).most);
    if (date !== undefined) return { helpers: more, date };
  }
  return undefined;
}

export const sayHelpers = ({ processingHelpers = 0 }: Batch, helpers: number): string =>
  `${helpers} ${processingHelpers === 0 ? '' : 'more '}${helpers === 1 ? 'helper' : 'helpers'}`;
