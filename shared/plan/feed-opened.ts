import { daysBetween } from '../calendar/plain-date.js';
import type { Formula } from '../explain/formula.js';
import type { FeedOpening } from '../farm/feed-opening.js';
import { bagOf } from './prices.js';
import type { PlanRequest } from './request.js';

export const feedOpenedFormulas = {
  eaten: {
    id: 'feed-eaten-by-bags',
    title: 'Feed used, by the bags opened',
    words:
      'When a bag is opened those before it are empty. From the first to the last opening all bags but the last were used up.',
    symbols: 'F = Σ bags·kg, but those of the last opening',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  factor: {
    id: 'own-feed-factor',
    title: 'Your birds’ feed over the plan’s',
    words:
      'What was used over what was planned for the same days, held against the plan: the more bags were emptied, the more it counts. A bag may be opened before the last is empty, so that the ends are in doubt; flocks usually differ from the table by the other figure. What they eat and what they spill cannot be told apart.',
    symbols:
      'f = 1 + w·(F_used ÷ F_planned − 1), w = u² ÷ (u² + (0.41·F_used ÷ F_planned ÷ n_bags)²)',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  wasted: {
    id: 'feed-wasted-by-bags',
    title: 'Feed gone beyond what they eat',
    words:
      'Feed used over what birds of that number and weight eat by the plan with nothing spilled. Spilled feed is in it, feed that others ate, and appetite that differs from the table’s.',
    symbols: 'w_own = F_used ÷ (F_planned ÷ (1 + waste)) − 1',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
} satisfies Record<string, Formula>;

/** What the bags opened for a batch say of how much feed it uses. */
export interface OwnFeed {
  /** Used up between the first and the last opening, kg. */
  readonly usedKg: number;
  /** Planned for the same days, kg. */
  readonly plannedKg: number;
  /** Days after arrival of the first and the last opening. */
  readonly from: number;
  readonly to: number;
  /** Emptied, the last opening left out. */
  readonly bags: number;
  /** So far from the plan that it is a slip, or feed of other animals. */
  readonly isFarOff: boolean;
  /** Feed to come over the plan's. */
  readonly factor: number;
  /** One standard deviation of it. */
  readonly error: number;
  /** One standard deviation of what was used over what was planned, by the bags that are open. */
  readonly openError: number;
}

/**
 * At both ends a bag may be anywhere between full and empty: one standard deviation of the two
 * together, in bags (each evenly spread over one: √(1/12 + 1/12)).
 */
const BAG_OPEN = Math.sqrt(1 / 6);

/** Fewer emptied bags say nothing: the first may have been half empty, the last opened early. */
const FEWEST_EMPTIED = 2;

/** Birds and what they are planned to be fed. */
interface Fed extends Pick<PlanRequest, 'farm' | 'batch' | 'tables' | 'products'> {
  readonly life: {
    readonly arrivalAgeDays: number;
    readonly lastAgeDays: number;
    readonly firstEggAgeDays?: number | undefined;
    /** By day after arrival, waste included. */
    readonly flockFeedKg: Float64Array;
  };
  readonly phases: readonly {
    readonly fromAgeDays: number;
    readonly phase: { readonly id: string };
  }[];
}

/**
 * How much more or less feed growing birds use than planned, by the bags that were opened for them
 * up to the first egg.
 *
 * @returns undefined while fewer than two bags were emptied
 */
export function ownFeedOf(fed: Fed, openings: readonly FeedOpening[]): OwnFeed | undefined {
  const { firstEggAgeDays, lastAgeDays, arrivalAgeDays, flockFeedKg } = fed.life;
  const to = (firstEggAgeDays ?? lastAgeDays) - arrivalAgeDays;
  return usedBy(fed, openedFor(fed, openings, { from: 0, to }), (day) => flockFeedKg[day] ?? 0);
}

/**
 * The same of hens, by the bags that were opened from the first egg on. Where far less was opened
 * between two days than they must have eaten, some bags were not told: it begins anew from there.
 *
 * @param plannedKg of the flock by day from the first egg on, waste included
 * @returns undefined while fewer than two bags were emptied
 */
export function ownFeedOfHens(
  fed: Fed,
  openings: readonly FeedOpening[],
  plannedKg: Float64Array,
): OwnFeed | undefined {
  const firstDay = fed.life.firstEggAgeDays! - fed.life.arrivalAgeDays;
  const to = firstDay + plannedKg.length - 1;
  const planned = (day: number): number => plannedKg[day - firstDay] ?? 0;
  const opened = openedFor(fed, openings, { from: firstDay, to });
  const gap = opened.findLastIndex(({ day, bags, kg }, k) => {
    const next = opened[k + 1];
    // The bag before may have been full, so that it is one bag more at the most.
    const most = fed.tables.judgements.birds.feedFarOff.value * (kg + kg / bags);
    return next !== undefined && most < sumOf(planned, day, next.day);
  });
  return usedBy(fed, opened.slice(gap + 1), planned);
}

/** Bags that were opened between two days after arrival, both included; the earliest first. */
function openedFor(
  { farm, batch, life, phases, tables, products }: Fed,
  openings: readonly FeedOpening[],
  { from, to }: { readonly from: number; readonly to: number },
): Opened[] {
  const phaseOn = (day: number): string =>
    (phases.findLast(({ fromAgeDays }) => fromAgeDays - life.arrivalAgeDays <= day) ?? phases[0]!)
      .phase.id;
  return openings
    .map(({ date, bags, bagKg }) => {
      const day = daysBetween(batch.arrivalDate, date);
      const each = bagKg ?? bagOf({ farm, batch, products, tables }, phaseOn(day)).bagKg;
      return { day, bags, kg: bags * each };
    })
    .filter(({ day }) => from <= day && day <= to)
    .sort((a, b) => a.day - b.day);
}

interface Opened {
  readonly day: number;
  readonly bags: number;
  readonly kg: number;
}

function sumOf(planned: (day: number) => number, from: number, to: number): number {
  let kg = 0;
  for (let day = from; day < to; day++) kg += planned(day);
  return kg;
}

function usedBy(
  { tables }: Fed,
  opened: readonly Opened[],
  planned: (day: number) => number,
): OwnFeed | undefined {
  const days = opened.map(({ day }) => day);
  const [from, to] = [Math.min(...days), Math.max(...days)];
  const emptied = opened.filter(({ day }) => day < to);
  const bags = emptied.reduce((sum, each) => sum + each.bags, 0);
  if (bags < FEWEST_EMPTIED) return undefined;
  const usedKg = emptied.reduce((sum, { kg }) => sum + kg, 0);
  const plannedKg = sumOf(planned, from, to);
  if (plannedKg <= 0) return undefined;
  const { feedApart, feedFarOff } = tables.judgements.birds;
  const ratio = usedKg / plannedKg;
  const open = (BAG_OPEN * ratio) / bags;
  const weight = feedApart.value ** 2 / (feedApart.value ** 2 + open ** 2);
  const isFarOff = ratio < 1 / feedFarOff.value || feedFarOff.value < ratio;
  return {
    ...{ usedKg, plannedKg, from, to, bags, isFarOff },
    // What no flock eats is not planned with; it is said.
    factor: isFarOff ? 1 : 1 + weight * (ratio - 1),
    error: Math.sqrt(weight) * open,
    openError: open,
  };
}
