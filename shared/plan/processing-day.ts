import { fromTable, quantity, type NumberQuantity } from '../explain/quantity.js';
import { addDays, type PlainDate } from '../calendar/plain-date.js';
import { formatHour } from '../units/dates.js';
import { processingFormulas } from '../poultry/processing.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';
import { birdsToProcess, type DressedWeights } from './leaving-weights.js';
import { planAtHome, type AtHome } from './processing-at-home.js';
import { planChilling, type Chilling } from './processing-chilling.js';
import { areHandsUnknown } from './hands-of-day.js';
import type { LeavingDay, ProcessingDay, ProcessingDays } from './processing-days.js';
import { processingIssues } from './processing-issues.js';
import type { ProcessingWay } from './processing-way.js';
import { processingWays } from './processing-ways.js';
import { hoursOfDay, workOfDay } from './processing-work.js';

/** One day on which birds are processed. */
export interface ProcessingDayPart {
  readonly on: PlainDate;
  readonly birds: number;
  /** At home only: hours of the day from the first bird caught to the last thing clean, and by whom. */
  readonly fromH?: number;
  readonly untilH?: number;
  readonly who?: string;
}

export interface ProcessingDayWork extends Chilling, Partial<AtHome> {
  readonly feedOff: NumberQuantity;
  readonly feedOffAt: string;
  /** Other ways than the planned one, where that day is too short for all of it. */
  readonly processingWays: readonly ProcessingWay[];
  /** From the first to the last; one, where the day is long enough, none where nobody has hours. */
  readonly processingDays: readonly ProcessingDayPart[];
  /** Birds that no day has hands for; left out where each has a day. */
  readonly birdsWithoutHands?: number;
  /** Hours that these take, on a day of their own. */
  readonly hoursWithoutHands?: number;
}

/** Feed withdrawal, hands and hours, chilling and ice; more than a day of it, where one is short. */
export function planProcessingDay(
  context: PlanContext,
  weights: DressedWeights,
  days: ProcessingDays,
): Found<ProcessingDayWork> {
  const isHired = context.batch.processing === 'hired';
  const birds = birdsToProcess(context.life);
  const ways = processingWays(context, days, birds);
  const chilling = planChilling(context, weights, days);
  const part: ProcessingDayWork = {
    ...feedOffOf(context, days.leaving[0]!),
    ...chilling,
    processingWays: ways,
    processingDays: days.days.map((day) => ({
      on: day.date,
      birds: day.birds,
      ...(isHired ? {} : hoursOfThat(context, day)),
    })),
    ...(days.left === 0 ? {} : withoutHands(context, days.left)),
    ...(isHired || days.days.length === 0
      ? {}
      : planAtHome(context, days, birds - days.left, chilling.chillTime)),
  };
  return found(part, { issues: isHired ? [] : processingIssues(context, days, ways) });
}

function withoutHands(
  context: PlanContext,
  left: number,
): Pick<ProcessingDayWork, 'birdsWithoutHands' | 'hoursWithoutHands'> {
  const { fixedH, birdH } = workOfDay(context);
  return { birdsWithoutHands: left, hoursWithoutHands: fixedH + left * birdH };
}

const LAST_HOUR = 24;

/** When it begins and ends, and who does it; nothing where nobody is there or no day is long enough. */
function hoursOfThat(
  context: PlanContext,
  { beginsH, hands, names, helpers, birds }: ProcessingDay,
): Pick<ProcessingDayPart, 'fromH' | 'untilH' | 'who'> {
  const endH = beginsH + hoursOfDay(context, hands, birds);
  if (hands === 0 || LAST_HOUR <= endH) return {};
  const own =
    areHandsUnknown(context) || names.length === 0 ? [`${hands - helpers} people`] : names;
  const others = helpers === 0 ? [] : [helpers === 1 ? 'a helper' : `${helpers} helpers`];
  return {
    fromH: beginsH,
    untilH: Math.ceil(2 * endH) / 2,
    who: [...own, ...others].join(', '),
  };
}

function feedOffOf(
  { batch, tables, farm }: PlanContext,
  { date: on, beginsH }: LeavingDay,
): Pick<ProcessingDayWork, 'feedOff' | 'feedOffAt'> {
  const { withdrawalH } = tables.processing;
  // They are brought to a hired processor in the morning.
  const startH =
    batch.processing === 'hired' ? tables.judgements.birds.processingStartH.value : beginsH;
  const offHour = (24 + startH - withdrawalH.value) % 24;
  return {
    feedOff: quantity(
      'Hours without feed',
      withdrawalH.value,
      'h',
      processingFormulas.withdrawal,
      [fromTable(withdrawalH, 'Planned', withdrawalH.value, 'h', 'h')],
      {
        spread: {
          low: withdrawalH.low,
          high: withdrawalH.high,
          because: 'published advice runs from 8 to 12 hours',
        },
      },
    ),
    feedOffAt: `${addDays(on, withdrawalH.value > startH ? -1 : 0)} ${formatHour(offHour, farm.units)}`,
  };
}
