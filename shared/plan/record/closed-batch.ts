import type { PlainDate } from '../../calendar/plain-date.js';
import { lastLeft } from '../../farm/head-count.js';
import { changesHeads, headChangesOf, type ToldFact } from '../../farm/told-fact.js';
import { sumsOf, type BatchSums } from './batch-sums.js';
import { openedFeed, type OpenedFeed } from './feed-paid.js';
import type { PlannedOfBatch } from './planned-of-batch.js';

/** A batch to be looked back at. */
export interface LookedBackAt {
  readonly batchId: string;
  /** Its plan without anything told of it. */
  readonly plan: PlannedOfBatch;
  /** What the farm was told: of the batch, and what was bought. */
  readonly facts: readonly ToldFact[];
  readonly today: PlainDate;
}

/** Everything of a batch that the lines are made from. */
export interface Closed extends LookedBackAt {
  readonly sums: BatchSums;
  readonly placed: number;
  readonly arrivedOn: PlainDate;
  readonly upTo: PlainDate;
  readonly isOver: boolean;
  readonly feed: OpenedFeed | undefined;
}

/** Adds up what was told of a batch, and says whether it is over and up to when it is compared. */
export function closedOf(asked: LookedBackAt): Closed {
  const { batchId, plan, facts, today } = asked;
  const sums = sumsOf(batchId, facts);
  const placed = sums.arrived?.alive ?? plan.birds.chicksPlaced.value;
  const heads = facts.filter(changesHeads).filter(({ about }) => about === batchId);
  const lastOn = lastLeft(headChangesOf(heads), placed);
  const upTo = lastOn ?? today;
  return {
    ...asked,
    sums,
    placed,
    arrivedOn: sums.arrived?.on ?? plan.arrivalDate,
    upTo,
    isOver: lastOn !== undefined,
    feed: openedFeed(sums.opened, facts, { plan, until: upTo }),
  };
}

export const NO_LIVE = 'no live weight was told with the processing';
export const NO_DRESSED = 'no dressed weight was told with the processing';

/** Live weight of all that were processed: those not weighed are taken to weigh as the others. */
export const liveOfAll = (sums: BatchSums): number | undefined => scaled(sums.live, sums.processed);

/** The same of the dressed weight. */
export const dressedOfAll = (sums: BatchSums): number | undefined =>
  scaled(sums.dressed, sums.processed);

const scaled = (weight: BatchSums['live'], birds: number): number | undefined =>
  weight && (weight.kg / weight.birds) * birds;

/** Birds that left alive ate too, and nobody weighed them. */
export const without = ({ sold, given }: BatchSums): string | undefined =>
  sold + given === 0 ? undefined : `without the weight of ${sold + given} that left alive`;

/** Said of what is not known before the last bird is gone. */
export const notYet = (isOver: boolean): string | undefined =>
  isOver ? undefined : 'known when the last bird is gone';
