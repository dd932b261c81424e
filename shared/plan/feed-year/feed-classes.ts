import { daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { FeedProduct } from '../../farm/product.js';
import type { PlannedBatch } from '../work/dated-work.js';
import { fedDays, feedsFor } from './feeds-fed.js';

/** What is fed from the same feeds, whichever batch eats it: feed left of one is eaten by the next. */
export interface FeedClass {
  readonly key: string;
  /** Any of these will do; none where the place buys no feed for it. */
  readonly feeds: readonly FeedProduct[];
  /** Names of the phases. */
  readonly phases: readonly string[];
  readonly purpose: 'meat' | 'layers';
  /** A price typed with a batch, where the place has none. */
  readonly typed?: { readonly bagKg: number; readonly price?: string };
  /** By day from the first one asked for. */
  readonly kg: Float64Array;
  /** The same of each batch that eats it, by its id. */
  readonly kgOf: Map<string, Float64Array>;
}

/** Every feed that the batches of a farm eat from one day to before another. */
export function feedClasses(
  { products, batches }: Pick<FarmPicture, 'products' | 'batches'>,
  planned: readonly PlannedBatch[],
  span: { readonly from: PlainDate; readonly until: PlainDate },
): FeedClass[] {
  const days = daysBetween(span.from, span.until);
  const classes = new Map<string, { -readonly [K in keyof FeedClass]: FeedClass[K] }>();
  for (const each of planned) {
    const { purpose } = each.plan;
    const batch = batches.find(({ id }) => id === each.id);
    for (const day of fedDays(each, span)) {
      const feeds = feedsFor(products, purpose, day);
      const key =
        0 < feeds.length ? feeds.map(({ id }) => id).join(' ') : `${purpose} ${day.phaseId}`;
      let of = classes.get(key);
      if (!of) {
        const phase = each.plan.feed.phases.find(({ phaseId }) => phaseId === day.phaseId)!;
        const price = batch?.prices?.feedPerBag?.[day.phaseId];
        of = {
          ...{ key, feeds, purpose, phases: [], kg: new Float64Array(days) },
          kgOf: new Map(),
          ...(0 < feeds.length
            ? {}
            : { typed: { bagKg: phase.bagKg, ...(price === undefined ? {} : { price }) } }),
        };
        classes.set(key, of);
      }
      if (!of.phases.includes(day.phase)) of.phases = [...of.phases, day.phase];
      const at = daysBetween(span.from, day.date);
      of.kg[at]! += day.kg;
      let own = of.kgOf.get(each.id);
      if (!own) of.kgOf.set(each.id, (own = new Float64Array(days)));
      own[at]! += day.kg;
    }
  }
  return [...classes.values()];
}
