import type { NumberQuantity, Quantity } from '../explain/quantity.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';
import { birdsToProcess } from './leaving-weights.js';
import { arrivalsFor, overWanted, rightAges, slotsFor, type DaySpan } from './slot-weight.js';

/** A slot booked with a custom processor, held against what the birds weigh on it. */
export interface SlotPart {
  readonly wanted: NumberQuantity;
  /** Live weight on the slot over the one wanted; below 0 they are lighter. */
  readonly over: NumberQuantity;
  /** Arrivals that would make them right for this slot. */
  readonly arrivals: DaySpan;
  /** Slots that would be right for this arrival. */
  readonly slots: DaySpan;
}

/** Undefined without a slot. */
export function planSlot(
  context: PlanContext,
  liveEach: NumberQuantity,
): Found<SlotPart | undefined> {
  const { batch, tables, weighings = [] } = context;
  const { slotDate } = batch;
  if (slotDate === undefined) return found(undefined);
  const ages = rightAges(batch, tables, { weighings });
  const part: SlotPart = {
    wanted: ages.wanted,
    over: overWanted(liveEach, ages.wanted),
    arrivals: arrivalsFor(slotDate, ages, tables),
    slots: slotsFor(batch.arrivalDate, ages, tables),
  };
  return found(part, { issues: [...weightIssue(context, liveEach, part), ...birdsIssue(context)] });
}

/** Said where they are lighter or heavier than is still taken for right. */
function weightIssue(
  { batch, life, tables, say }: PlanContext,
  liveEach: NumberQuantity,
  { wanted, arrivals, slots }: SlotPart,
): PlanIssue[] {
  const share = tables.judgements.birds.slotWeightShare;
  const off = liveEach.value / wanted.value - 1;
  if (Math.abs(off) <= share.value) return [];
  const date = (of: Quantity): string => say(String(of.value), 'date');
  return [
    issue(
      'act',
      off < 0 ? 'slot-under' : 'slot-over',
      `On the slot, ${say(batch.slotDate!, 'date')}, they are ${say(life.lastAgeDays, 'day')} old and about ${say(liveEach.value, 'kg')} live: ${off < 0 ? 'under' : 'over'} the ${say(wanted.value, 'kg')} wanted. For this slot they should arrive about ${date(arrivals.best)} (${date(arrivals.from)} to ${date(arrivals.to)}); for this arrival a slot about ${date(slots.best)} (${date(slots.from)} to ${date(slots.to)}) is right.`,
      [share],
    ),
  ];
}

function birdsIssue({ batch, life }: PlanContext): PlanIssue[] {
  const { slotBirds } = batch;
  const birds = birdsToProcess(life);
  if (slotBirds === undefined || slotBirds === birds) return [];
  return slotBirds < birds
    ? [
        issue(
          'act',
          'slot-too-small',
          `The slot is for ${slotBirds} birds, and about ${birds} come to it. Book ${birds - slotBirds} more, or plan a day at home for them.`,
          [life.losses],
        ),
      ]
    : [
        issue(
          'note',
          'slot-not-filled',
          `The slot is for ${slotBirds} birds, and about ${birds} come to it. Tell the processor; some charge for what was booked.`,
          [life.losses],
        ),
      ];
}
