import { addDays } from '../calendar/plain-date.js';
import {
  datedFact,
  from,
  fromFarm,
  givenOrTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
  type QuantityInput,
  weakestOf,
} from '../explain/quantity.js';
import type { Batch } from '../farm/batch.js';
import { processingFormulas } from '../poultry/processing.js';
import { weighingFormulas } from '../poultry/weighings.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { formatWeekday } from '../units/dates.js';
import type { Life } from './life.js';
import type { PlanContext } from './context.js';
import type { FeedPart } from './feed.js';
import { goneBefore } from './gone-before.js';
import { found, joined, type Findings, type Found } from './found.js';
import { planFreezer, type FreezerPart } from './leaving-freezer.js';
import {
  birdsToProcess,
  dressedWeights,
  liveWeights,
  type DressedWeights,
  type LiveWeights,
} from './leaving-weights.js';
import { planProcessingDay, type ProcessingDayWork } from './processing-day.js';
import { processingDays, type ProcessingDays } from './processing-days.js';
import { planSlot, type SlotPart } from './slot.js';
import { daysWaited } from './wait-for-hands.js';

export interface LeavingPart extends LiveWeights, DressedWeights, FreezerPart, ProcessingDayWork {
  readonly slot?: SlotPart;
  readonly on: Quantity;
  readonly age: NumberQuantity;
  /** The day on which they weigh what is wished, where they wait for hands after it. */
  readonly reached?: Quantity;
  /** The first and the last day on which the weight wished may be reached, once some were weighed. */
  readonly ready?: readonly [soonest: Quantity, latest: Quantity];
  readonly conversion: NumberQuantity;
}

/**
 * The day the birds leave: weights live, dressed and packed, the freezer room they take, feed
 * withdrawal, ice and chilling. Undefined for layers.
 */
export function planLeaving(context: PlanContext, feed: FeedPart): Found<LeavingPart | undefined> {
  const { batch, life } = context;
  if (batch.purpose !== 'meat') return found(undefined);
  const on = context.dateOf(life.days - 1);
  const reached = whenReached(context);
  const days = processingDays(context, birdsToProcess(life));
  const live = liveWeights(context, days.leaving);
  const dressed = dressedWeights(context, live);
  const freezer = planFreezer(context, dressed.packedAll);
  const day = planProcessingDay(context, dressed, days);
  const slot = planSlot(context, live.liveEach);
  // Birds that went before the others ate of the feed too.
  const gone = goneBefore(life);
  const part: LeavingPart = {
    ...whenTheyLeave(context, days),
    ...whenReady(context),
    ...(reached ? { reached } : {}),
    ...live,
    ...dressed,
    ...freezer.part,
    conversion: quantity(
      'Feed conversion',
      feed.total.value / (live.liveAll.value + gone.kg),
      'ratio',
      processingFormulas.conversion,
      [
        from(feed.total, 'F', 'Feed given'),
        from(live.liveAll),
        ...(gone.birds === 0
          ? []
          : [input('Live weight of those gone before', gone.kg, 'kg', 'W_gone')]),
      ],
    ),
    ...day.part,
    ...(slot.part ? { slot: slot.part } : {}),
  };
  return found(
    part,
    joined([
      { cautions: ['slaughter', 'chilling'] },
      hotDays(context),
      { issues: withdrawalShort(context, on) },
      freezer,
      day,
      slot,
    ]),
  );
}

/** The day on which the last of them are processed, which may be one before they are full grown. */
function whenTheyLeave(
  context: PlanContext,
  { leaving: days, left }: ProcessingDays,
): Pick<LeavingPart, 'on' | 'age'> {
  const { batch, life, dateOf, today } = context;
  const waited = daysWaited(context);
  const age = ageInput(batch, life);
  const last = days.at(-1)!;
  const before = life.days - 1 - last.index;
  return {
    // Of a day that is past nothing is left to be done.
    on: datedFact(
      dayLabel(days.length, last.date < today ? 0 : left),
      last.date,
      processingFormulas.leaveDate,
      [
        input('Hatch', addDays(batch.arrivalDate, -life.arrivalAgeDays), 'date'),
        age,
        ...(batch.targetLiveKg === undefined || batch.slotDate !== undefined
          ? []
          : [fromFarm('Target live weight', batch.targetLiveKg, 'kg', 'W_target')]),
        ...(waited === 0 ? [] : [input('Days waited for hands', waited, 'day')]),
        ...(batch.processingWeekday === undefined || batch.slotDate !== undefined
          ? []
          : [fromFarm('Weekday wished', formatWeekday(batch.processingWeekday), 'text')]),
        ...(before === 0 ? [] : [input('By that age', dateOf(life.days - 1), 'date')]),
      ],
    ),
    age: quantity(
      days.length === 1 ? 'Age at processing' : 'Age at processing, the last of them',
      life.lastAgeDays - before,
      'day',
      processingFormulas.leaveDate,
      before === 0 ? [age] : [age, input('Days before it', before, 'day')],
    ),
  };
}

const dayLabel = (days: number, left: number): string => {
  if (0 < left) return `Processing, the last: ${left} have nobody to do them yet`;
  return days === 1 ? 'Processing' : `Processing, the last of ${days} days`;
};

/** The day on which the weight wished is reached, where nobody has hands for all of it then. */
function whenReached(context: PlanContext): Quantity | undefined {
  const { batch, life, dateOf } = context;
  const waited = daysWaited(context);
  if (waited === 0) return undefined;
  return datedFact(
    'Weight wished, reached',
    dateOf(life.days - 1 - waited),
    processingFormulas.leaveDate,
    [
      input('Hatch', dateOf(-life.arrivalAgeDays), 'date'),
      fromFarm('Target live weight', batch.targetLiveKg!, 'kg', 'W_target'),
    ],
    { rows: life.weightRows },
  );
}

/** The days between which the weight wished is reached, as the weighings leave it open. */
function whenReady({ batch, life, dateOf }: PlanContext): Pick<LeavingPart, 'ready'> {
  const { targetReachedBetween: between, own } = life;
  if (!between) return {};
  const fact = (label: string, ageDays: number): Quantity =>
    datedFact(label, dateOf(ageDays - life.arrivalAgeDays), weighingFormulas.speed, [
      fromFarm('Target live weight', batch.targetLiveKg!, 'kg', 'W_target'),
      fromFarm('Growth by your weighings', own!.speed!.value, 'share', 's'),
      input('Age', ageDays, 'day', 't'),
    ]);
  return {
    ready: [fact('Ready, at the soonest', between[0]), fact('Ready, at the latest', between[1])],
  };
}

/** Age at leaving: reached with the target weight, chosen, or what is usual for the strain. */
function ageInput({ targetLiveKg, leaveAgeDays, slotDate }: Batch, life: Life): QuantityInput {
  const { lastAgeDays, strain } = life;
  const label = 'Age at leaving';
  if (slotDate !== undefined) return fromFarm('Age on the slot booked', lastAgeDays, 'day');
  if (targetLiveKg === undefined)
    return givenOrTable(leaveAgeDays !== undefined, strain.leave, label, lastAgeDays, 'day');
  const mark = weakestOf('computed', life.weightRows);
  return { ...input(label, lastAgeDays, 'day'), mark };
}

/** Warns of hot days in the last two weeks, when the birds are heavy. */
function hotDays({ life, tables, weather, say }: PlanContext): Partial<Findings> {
  const heat = tables.heatStress;
  const from = Math.max(0, life.days - tables.judgements.arrival.lastHotDays.value);
  const hottest = Math.max(...weather.hotMaxC.subarray(from));
  if (hottest < heat.beginsC) return {};
  const hot = issue(
    heat.seriousC <= hottest ? 'act' : 'note',
    'heat-stress',
    `In the last two weeks a hot day reaches about ${say(hottest, 'degC')}: heavy birds pant from ${say(heat.beginsC, 'degC')}. Plan shade, air and a second water round.`,
    [heat],
  );
  return { issues: [hot], cautions: ['heat-stress'] };
}

/** Warns when medicated feed would be given too close to the day of leaving. */
function withdrawalShort(context: PlanContext, on: string): PlanIssue[] {
  const { batch, life, phases, dateOf } = context;
  const days = batch.medicatedWithdrawalDays;
  if (days === undefined) return [];
  const lastPhase = phases.at(-1)!;
  const switchDay = lastPhase.fromAgeDays - life.arrivalAgeDays;
  if (days <= life.days - 1 - switchDay) return [];
  const day = (date: string): string => context.say(date, 'date');
  const lastOn = addDays(on, -days);
  // Once that day is past nothing but a later day of processing makes up for it, while they live.
  const advice =
    on < context.today
      ? `That day is past: ask a veterinarian, or the maker of the feed, before any of them is eaten or sold.`
      : lastOn < context.today
        ? `Its last day would be ${day(lastOn)}, which is past: stop medicated feed today and process on ${day(addDays(context.today, days))} or later.`
        : `Stop medicated feed by ${day(lastOn)}, or process later.`;
  return [
    issue(
      'stop',
      'withdrawal-short',
      `The last feed change (${day(dateOf(switchDay))}) is fewer than the ${days} withdrawal days of the label before ${day(on)}. ${advice}`,
    ),
  ];
}
