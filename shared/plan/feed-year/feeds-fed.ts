import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Batch } from '../../farm/batch.js';
import type { FeedProduct, Product } from '../../farm/product.js';
import { fedOn } from '../fed-on.js';
import type { PlannedBatch } from '../work/dated-work.js';

/** Feed of one batch on one day, and what it is fed as. */
interface FedDay {
  readonly phaseId: string;
  readonly phase: string;
  readonly date: PlainDate;
  readonly kg: number;
  /** Days until birds are eaten or the first egg is; undefined where eggs are eaten already. */
  readonly clearDays: number | undefined;
}

/** What a batch is fed, day by day, from one day to before another; hens as `fedOn` says. */
export function* fedDays(
  { plan }: PlannedBatch,
  { from, until }: { readonly from: PlainDate; readonly until: PlainDate },
): Generator<FedDay> {
  const { arrivalDate, feed, purpose, laying } = plan;
  const { phases } = feed;
  const firstEgg = laying && String(laying.firstEgg.value);
  const begin = from < arrivalDate ? arrivalDate : from;
  for (let date = begin; date < until; date = addDays(date, 1)) {
    const kg = fedOn(plan, date);
    if (kg <= 0) continue;
    const phase = phases.findLast(({ starts }) => String(starts.value) <= date) ?? phases[0]!;
    const clearOn = purpose === 'meat' ? plan.lastDate : (firstEgg ?? plan.lastDate);
    const days = daysBetween(date, clearOn);
    yield {
      ...{ phaseId: phase.phaseId, phase: phase.name, date, kg },
      clearDays: 0 <= days ? days : undefined,
    };
  }
}

/**
 * The feeds that can be fed on a day: those made for the phase before those that serve several. What
 * is medicated is left out where it would have to be withdrawn by then.
 */
export function feedsFor(
  products: readonly Product[],
  purpose: Batch['purpose'],
  { phaseId, clearDays }: Pick<FedDay, 'phaseId' | 'clearDays'>,
): FeedProduct[] {
  const fitting = products.filter(
    (product): product is FeedProduct =>
      product.kind === 'feed' &&
      (product.feedFor ?? purpose) === purpose &&
      product.phaseIds.includes(phaseId) &&
      (product.withdrawalDays === undefined ||
        (clearDays !== undefined && product.withdrawalDays <= clearDays - 1)),
  );
  const width = ({ phaseIds, feedFor }: FeedProduct): number =>
    phaseIds.length + (feedFor === undefined ? 0.5 : 0);
  const narrowest = Math.min(...fitting.map(width));
  return fitting.filter((feed) => width(feed) === narrowest);
}
