import type { Formula } from '../../explain/formula.js';
import { fromJudgement, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { graze } from '../../pasture/grazier.js';
import { grazingProblem, type PastureContext } from './pasture-context.js';
import { needKg, seasonFeed, seasonFeedFormulas } from './season-feed.js';
import type { SeasonSward } from './season-swards.js';
import type { Chosen } from './surplus.js';

export const closerFormulas = {
  headShare: {
    id: 'head-that-fits',
    title: 'Head for which the grass lasts',
    words:
      'Head is lowered step by step, each time with the season walked anew, until no more feed is needed than in the winter days.',
    symbols: 'max{s: F(s) ≈ 0}',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  areaShare: {
    id: 'land-that-fits',
    title: 'Land for which the grass lasts',
    words:
      'One more paddock like the average of the others is made larger step by step until the grass lasts.',
    symbols: 'min{A: F(A) ≈ 0}',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** One way to close a shortage. */
export interface Closer {
  readonly kind: 'fewer-head' | 'hay' | 'more-land' | 'slower' | 'mow-less';
  readonly text: string;
  readonly amount: NumberQuantity;
}

const HALVINGS = 4;

/** Largest share between 0 and 1 for which something holds, found by halving; 0 when none does. */
function largestThat(holds: (share: number) => boolean): number {
  let low = 0;
  let high = 1;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Ways to do with the grass where it is short, the season walked anew for each. */
export function closersOf(
  context: PastureContext,
  { books }: Chosen,
  inSeason: NumberQuantity,
): Closer[] {
  const { littleShare, leastHeadShare, mostAdded, longerRestDays } =
    context.tables.judgements.grazing;
  const rows = [context.order];
  const least = littleShare.value * needKg(context);
  const shortWith = (change: Parameters<typeof grazingProblem>[1], headShare = 1): number =>
    seasonFeed(context, graze(grazingProblem(context, change), 'never'), headShare).inSeasonKg;
  const closers: Closer[] = [
    {
      kind: 'hay',
      text: `Feed hay for ${context.say(inSeason.value, 'kg')} of dry matter on the days that are short.`,
      amount: inSeason,
    },
  ];
  // A day or two are bridged with hay; nobody sells a cow for them.
  if (inSeason.value <= least) return closers;
  // What is mown for hay would feed the herd too: the other ways are held against grazing it.
  const unmownKg = 0 < books.cuts.length ? shortWith({}) : inSeason.value;
  if (least < inSeason.value - unmownKg)
    closers.push({
      kind: 'mow-less',
      text: `Graze what this plan mows: ${unmownKg <= least ? 'the grass then reaches' : `the grass is then short of ${context.say(unmownKg, 'kg')}`}, and that hay is not made.`,
      amount: quantity(
        'Feed short on grass with no hay made, dry matter',
        unmownKg,
        'kg',
        seasonFeedFormulas.short,
        [fromJudgement(littleShare)],
        { rows },
      ),
    });
  if (unmownKg <= least) return closers;
  const headShare = largestThat((share) => shortWith({ headShare: share }, share) <= least * share);
  const head = Math.max(...context.herdDays.map((d) => Math.max(...d.head)));
  const kept = Math.floor(head * headShare);
  if (leastHeadShare.value <= headShare && 0 < kept) {
    const where =
      context.herds.length === 1 ? '' : ' of the largest herd, and of the others alike,';
    closers.push({
      kind: 'fewer-head',
      text: `Keep ${kept} of the ${head} head${where} from the first day.`,
      amount: quantity(
        'Share of the head',
        headShare,
        'share',
        closerFormulas.headShare,
        [
          input('Need of the plan', needKg(context), 'kg'),
          fromJudgement(leastHeadShare),
          fromJudgement(littleShare),
        ],
        { rows },
      ),
    });
  }
  const mean = context.areaM2 / Math.max(1, context.paddocks.length);
  const own = context.grass.swards;
  const withLand = (share: number): readonly SeasonSward[] => [
    ...own,
    {
      ...own[0]!,
      sward: { ...own[0]!.sward, areaHa: ((1 - share) * mostAdded.value * mean) / 10_000 },
    },
  ];
  // The least land is the largest share of the most land that can be left out.
  const landShare = largestThat((share) => shortWith({ land: withLand(share) }) <= least);
  if (0 < landShare) {
    const moreM2 = (1 - landShare) * mostAdded.value * mean;
    closers.push({
      kind: 'more-land',
      text: `Add a paddock of about ${context.say(moreM2, 'ha')} like ${context.paddocks[0]!.name}.`,
      amount: quantity(
        'Paddock to add',
        moreM2,
        'ha',
        closerFormulas.areaShare,
        [
          input('Average paddock', mean, 'ha'),
          fromJudgement(mostAdded),
          fromJudgement(littleShare),
        ],
        { rows },
      ),
    });
  }
  const slower = grazingProblem(context);
  const longer = {
    ...slower,
    swards: slower.swards.map((s) => ({
      ...s,
      leastRestDays: s.leastRestDays + longerRestDays.value,
    })),
  };
  const saved = unmownKg - seasonFeed(context, graze(longer, 'never')).inSeasonKg;
  if (least < saved) {
    closers.push({
      kind: 'slower',
      text: `Rest every paddock a week longer and feed hay meanwhile: saves ${context.say(saved, 'kg')} of dry matter.`,
      amount: quantity(
        'Dry matter saved',
        saved,
        'kg',
        seasonFeedFormulas.short,
        [fromJudgement(longerRestDays)],
        { rows },
      ),
    });
  }
  return closers;
}
