import { addDays, weekdayOf, type PlainDate } from '../calendar/plain-date.js';
import type { Batch } from '../farm/batch.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import {
  areHandsUnknown,
  daysUpTo,
  handsOn,
  type ProcessingDay,
  type ProcessingDays,
} from './processing-days.js';
import { paceOf, workOfDay } from './processing-work.js';

/** A way to get all of them processed, and what choosing it writes into the batch. */
export interface ProcessingWay {
  readonly id: 'planned' | 'helpers' | 'hired';
  readonly words: string;
  /** Left out of the planned one. */
  readonly chosenBy?: Pick<Batch, 'processing' | 'processingHelpers' | 'processingWeekday'>;
}

/**
 * The ways to process a batch that is too much for the hands of its planned day: by oneself on
 * several days, with helpers on one, or by a custom processor. None where one day is long enough.
 */
export function processingWays(
  context: PlanContext,
  all: ProcessingDays,
  birds: number,
): ProcessingWay[] {
  const { batch, say } = context;
  if (batch.processing === 'hired' || areHandsUnknown(context) || isOnPlannedDay(context, all))
    return [];
  const helped = helpersFor(context, birds);
  const own = 0 < all.left ? '' : sayDays(context, all.days);
  return [
    ...(own ? [{ id: 'planned', words: `By yourselves: ${own}` } as const] : []),
    ...(helped && 0 < helped.helpers
      ? [
          {
            id: 'helpers',
            words: `With ${sayHelpers(batch, helped.helpers)}: all on one day, ${say(helped.date, 'date')}`,
            chosenBy: { processingHelpers: (batch.processingHelpers ?? 0) + helped.helpers },
          } as const,
        ]
      : []),
    hiredWay(context),
  ];
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

const isOnPlannedDay = ({ life }: PlanContext, { days, left }: ProcessingDays): boolean =>
  left === 0 && days.length === 1 && days[0]!.index === life.days - 1;

/** As many as a batch may name. */
const MOST_HELPERS = 30;

/**
 * Helpers with whom one day is enough, and the day on which the fewest are needed; undefined where no
 * number of them is, because cones, scalder or plucker are too few.
 */
function helpersFor(
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

const sayHelpers = ({ processingHelpers = 0 }: Batch, helpers: number): string =>
  `${helpers} ${processingHelpers === 0 ? '' : 'more '}${helpers === 1 ? 'helper' : 'helpers'}`;

const sayDays = ({ say }: PlanContext, days: readonly ProcessingDay[]): string =>
  days.map(({ date, birds }) => `${birds} on ${say(date, 'date')}`).join('; ');

/** Said when the planned day is too short for all of it, or nobody is there. */
export function processingIssues(
  context: PlanContext,
  all: ProcessingDays,
  birds: number,
): PlanIssue[] {
  const { days, left, planned } = all;
  const { say, tables, batch } = context;
  const { leastADay } = tables.judgements.birds;
  const { fixedH, birdH, rows } = workOfDay(context);
  const work = `${birds} birds are about ${say(fixedH + birds * birdH, 'h')} of killing and cleaning`;
  if (areHandsUnknown(context)) return handsUnknown(context, work, fixedH + birds * birdH);
  const station = stationIssue(context, all);
  if (isOnPlannedDay(context, all)) return station;
  const helped = helpersFor(context, birds);
  const help = helped
    ? `With ${sayHelpers(batch, helped.helpers)} it is one day, ${say(helped.date, 'date')}`
    : 'No number of helpers makes it one day with the equipment there is';
  if (0 < left) {
    return [
      ...station,
      issue(
        'act',
        'processing-too-much',
        `${work}, and the days up to ${say(planned.date, 'date')} have hands and daylight for ${birds - left}. Planned all the same: ${sayDays(context, days)}.${longer(context, days)} ${help}; or hire a custom processor, or raise fewer.`,
        rows,
      ),
    ];
  }
  const list = sayDays(context, days);
  if (days.length === 1 || planned.most < Math.min(birds, leastADay.value)) {
    return [
      ...station,
      issue(
        'act',
        'processing-weekday',
        `By their age processing would be on ${say(planned.date, 'date')}, when ${planned.hands === 0 ? 'nobody has hours' : `there are only ${say(planned.hours, 'h')} for it`}. Planned instead: ${list}.${longer(context, days)}${lighter(context, days)} Choose the weekday you want, get helpers, or hire a custom processor.`,
        rows,
      ),
    ];
  }
  return [
    ...station,
    issue(
      'act',
      'processing-split',
      `${work}, too much for the hands and daylight of one day. Planned: ${list}.${longer(context, days)}${lighter(context, days)} ${help}; a custom processor takes all on one.`,
      rows,
    ),
  ];
}

/** Said where hands wait for cones, scalder or plucker. */
function stationIssue(context: PlanContext, { days }: ProcessingDays): PlanIssue[] {
  const hands = Math.max(...days.map((day) => day.hands));
  const { perHour, slowest } = paceOf(context, hands);
  if (!slowest) return [];
  const byHands = Math.floor(hands / workOfDay(context).killH);
  return [
    issue(
      'note',
      'processing-station',
      `At most about ${Math.floor(perHour)} birds an hour go through ${slowest.name}, and ${hands} people could do ${byHands}: that is what decides how long the day is. Have more room there, or fewer people.`,
      [slowest.row],
    ),
  ];
}

/** Less than this past the hours there are is not worth a word. */
const SHORT_H = 0.2;

/** How much longer the longest day is than people have hours, for a handful that is not worth another. */
function longer(context: PlanContext, days: readonly ProcessingDay[]): string {
  const { birdH } = workOfDay(context);
  const over = Math.max(
    ...days.map(
      ({ birds, most, hands }) => (Math.max(0, birds - most) * birdH) / Math.max(1, hands),
    ),
  );
  return over < SHORT_H
    ? ''
    : ` That is up to ${context.say(over, 'h')} more for each than the hours you gave, chores done first.`;
}

/** What birds of an early day weigh, where that is some days before the last. */
function lighter({ life, say }: PlanContext, days: readonly ProcessingDay[]): string {
  const [first] = days;
  const lastKg = life.meanWeightKg[life.days - 1]!;
  if (!first || life.days - 1 - first.index < 3) return '';
  return ` The first are ${say(life.arrivalAgeDays + first.index, 'day')} old and about ${say(life.meanWeightKg[first.index]!, 'kg')} live; on the last day planned they would be ${say(lastKg, 'kg')}. Take the largest first.`;
}

function handsUnknown(context: PlanContext, work: string, hours: number): PlanIssue[] {
  const { handHours, handsUnknown: hands } = context.tables.judgements.birds;
  const { rows } = workOfDay(context);
  const needed = Math.ceil(hours / (hands.value * handHours.value));
  if (needed <= 1) return [];
  return [
    issue(
      'act',
      'processing-hours',
      `${work}: ${needed} days for ${hands.value} people. Name the people of the farm and their hours, or helpers, and the days are planned; or hire a custom processor.`,
      rows,
    ),
  ];
}
