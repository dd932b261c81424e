import type { PlainDate } from '../../calendar/plain-date.js';
import type { FeedBought } from '../../farm/feed-bought.js';
import type { FeedProduct } from '../../farm/product.js';
import type { BatchPlan } from '../batch-plan.js';
import type { Looked } from './looked-at.js';

/** Feed that can take each other's place, and what was bought of it. */
export interface FeedKind {
  /** What it was last bought as; left out where purchases do not say what they are of. */
  readonly name?: string;
  /** The oldest first; there is always one. */
  readonly bought: readonly FeedBought[];
  readonly isFedTo: (plan: BatchPlan, on: PlainDate) => boolean;
  /** Whether a feed that is to be fetched can be it; so is one of which nobody knows who eats it. */
  readonly isBroughtAs: (name: string) => boolean;
}

type Eats = Pick<BatchPlan, 'purpose' | 'feed'>;
type Phase = BatchPlan['feed']['phases'][number];

/** What a batch is fed as on a day: its first phase before it comes. */
export const phaseOn = ({ feed }: Eats, on: PlainDate): Phase =>
  feed.phases.findLast(({ starts }) => String(starts.value) <= on) ?? feed.phases[0]!;

const keyOf = (purpose: BatchPlan['purpose'], phaseId: string): string => `${purpose} ${phaseId}`;

/**
 * Kinds of feed that were bought, each by itself: a purchase is of the feed of the place whose name
 * it has, or of the phase of that name. Where one names neither, nobody knows who eats it, and all
 * feed is one kind.
 */
export function kindsOfFeed({ picture, batches }: Looked): FeedKind[] {
  const { feedBought = [], products } = picture;
  if (feedBought.length === 0) return [];
  const feeds = products.filter((each): each is FeedProduct => each.kind === 'feed');
  const plans = batches.map(({ plan }) => plan);
  const groups = joinedByFeeds(feeds);
  const served = feedBought.map((bought) => ({ bought, keys: keysOf(bought, feeds, plans) }));
  if (served.some(({ keys }) => keys.length === 0))
    return [{ bought: feedBought, isFedTo: () => true, isBroughtAs: () => true }];
  const kinds = new Map<string, { keys: Set<string>; bought: FeedBought[] }>();
  for (const { bought, keys } of served) {
    const all = keys.flatMap((key) => [key, ...(groups.get(key) ?? [])]);
    const known = [...kinds.values()].find((kind) => all.some((key) => kind.keys.has(key)));
    const kind = known ?? { keys: new Set<string>(), bought: [] };
    for (const key of all) kind.keys.add(key);
    kind.bought.push(bought);
    if (!known) kinds.set(all[0]!, kind);
  }
  return [...kinds.values()].map(({ keys, bought }) => ({
    name: bought.at(-1)!.name!,
    bought,
    isFedTo: (plan, on) => keys.has(keyOf(plan.purpose, phaseOn(plan, on).phaseId)),
    isBroughtAs: (name) => {
      const brought = keysOf({ name }, feeds, plans);
      return brought.length === 0 || brought.some((key) => keys.has(key));
    },
  }));
}

/** Who can be fed what was bought, by phase; none where its name says nothing. */
function keysOf(
  { name }: Pick<FeedBought, 'name'>,
  feeds: readonly FeedProduct[],
  plans: readonly Eats[],
): string[] {
  if (name === undefined) return [];
  const feed = feeds.find((each) => isSameName(each.name, name));
  if (feed) return servedBy(feed);
  return plans.flatMap(({ purpose, feed: { phases } }) =>
    phases.flatMap((phase) =>
      isSameName(phase.name, name) ? [keyOf(purpose, phase.phaseId)] : [],
    ),
  );
}

const isSameName = (one: string, other: string): boolean =>
  one.trim().toLowerCase() === other.trim().toLowerCase();

const PURPOSES = ['meat', 'layers'] as const;

const servedBy = ({ phaseIds, feedFor }: FeedProduct): string[] =>
  PURPOSES.filter((purpose) => (feedFor ?? purpose) === purpose).flatMap((purpose) =>
    phaseIds.map((id) => keyOf(purpose, id)),
  );

/** For each phase those that one of the feeds of the place serves as well, however far it goes on. */
function joinedByFeeds(feeds: readonly FeedProduct[]): ReadonlyMap<string, ReadonlySet<string>> {
  const groups = new Map<string, Set<string>>();
  for (const keys of feeds.map(servedBy)) {
    const all = new Set(keys.flatMap((key) => [key, ...(groups.get(key) ?? [])]));
    for (const key of all) groups.set(key, all);
  }
  return groups;
}
