import { addDays, weekdayOf, type PlainDate } from '../calendar/plain-date.js';
import type { Batch } from '../farm/batch.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import {
  areHandsUnknown,
  daysUpTo,
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
  const { helpers, date } = helpersFor(context, birds);
  const own = 0 < all.left ? '' : sayDays(context, all.days);
  return [
    ...(own ? [{ id: 'planned', words: `By yourselves: ${own}` } as const] : []),
    ...(0 < helpers
      ? [
          {
            id: 'helpers',
            words: `With ${sayHelpers(batch, helpers)}: all on one day, ${say(date, 'date')}`,
            chosenBy: { processingHelpers: (batch.processingHelpers ?? 0) + helpers },
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

/** Helpers with whom one day is enough, and the day on which the fewest are needed. */
function helpersFor(
  context: PlanContext,
  birds: number,
): { readonly helpers: number; readonly date: PlainDate } {
  const { handHours } = context.tables.judgements.birds;
  const { fixedH, birdH } = workOfDay(context);
  const needed = fixedH + birds * birdH;
  return daysUpTo(context)
    .map(({ date, hours }) => ({
      helpers: Math.max(0, Math.ceil((needed - hours) / handHours.value - 1e-9)),
      date,
    }))
    .reduce((best, each) => (each.helpers < best.helpers ? each : best));
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
  if (isOnPlannedDay(context, all)) return [];
  const { helpers, date } = helpersFor(context, birds);
  const help = `With ${sayHelpers(batch, helpers)} it is one day, ${say(date, 'date')}`;
  if (0 < left) {
    return [
      issue(
        'act',
        'processing-too-much',
        `${work}, and the days up to ${say(planned.date, 'date')} have hands and daylight for ${birds - left}. ${help}; or hire a custom processor, or raise fewer.`,
        rows,
      ),
    ];
  }
  const list = sayDays(context, days);
  if (days.length === 1 || planned.most < Math.min(birds, leastADay.value)) {
    return [
      issue(
        'act',
        'processing-weekday',
        `By their age processing would be on ${say(planned.date, 'date')}, when ${planned.hands === 0 ? 'nobody has hours' : `there are only ${say(planned.hours, 'h')} for it`}. Planned instead: ${list}.${lighter(context, days)} Choose the weekday you want, get helpers, or hire a custom processor.`,
        rows,
      ),
    ];
  }
  return [
    issue(
      'act',
      'processing-split',
      `${work}, too much for the hands and daylight of one day. Planned: ${list}.${lighter(context, days)} ${help}; a custom processor takes all on one.`,
      rows,
    ),
  ];
}

/** What birds of an early day weigh, where that is some days before the last. */
function lighter({ life, say }: PlanContext, days: readonly ProcessingDay[]): string {
  const [first] = days;
  const lastKg = life.meanWeightKg[life.days - 1]!;
  if (!first || life.days - 1 - first.index < 3) return '';
  return ` The first are ${say(life.arrivalAgeDays + first.index, 'day')} old and about ${say(life.meanWeightKg[first.index]!, 'kg')} live; on the last day planned they would be ${say(lastKg, 'kg')}. Take the largest first.`;
}

function handsUnknown({ tables }: PlanContext, work: string, hours: number): PlanIssue[] {
  const { handHours, handsUnknown: hands } = tables.judgements.birds;
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
