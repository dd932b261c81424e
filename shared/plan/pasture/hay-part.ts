import {
  from,
  fromJudgement,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../../explain/quantity.js';
import type { Formula } from '../../explain/formula.js';
import { graze } from '../../pasture/grazier.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { found, type Found } from '../found.js';
import { planHayStore, type HayStorePart } from './hay-store.js';
import { hayToStore } from './hay-to-store.js';
import { grazingProblem, type PastureContext } from './pasture-context.js';
import { besidePlainRule, ruleIsBetter } from './plain-rule.js';
import { seasonFeed, type SeasonFeed } from './season-feed.js';
import type { SeasonSward } from './season-swards.js';
import { balesOf, type Chosen } from './surplus.js';

export const hayPartFormulas = {
  headToday: {
    id: 'head-today',
    title: 'Head on that day',
    words: 'Animals that have arrived and not left.',
    symbols: 'n = Σ head',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  fedToday: {
    id: 'hay-today',
    title: 'Feed by hand on that day',
    words: 'What the herd needs on the day, less what it eats of the grass.',
    symbols: 'F = max(0, need − eaten)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  short: {
    id: 'grass-short',
    title: 'Feed the grass does not give',
    words:
      'What the herds need between their first and last day on grass, less what they eat of it, summed over those days.',
    symbols: 'F = Σ max(0, need − eaten)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  winter: {
    id: 'winter-feed',
    title: 'Feed before turn-out and after the last grazing',
    words: 'What the herds need on the days of the plan when they are not on grass.',
    symbols: 'F = Σ need',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  all: {
    id: 'feed-besides-grass',
    title: 'Feed besides grass',
    words: 'What is short while grazing and what is fed before and after it.',
    symbols: 'F = F₁ + F₂',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
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
  readonly kind: 'fewer-head' | 'hay' | 'more-land' | 'slower';
  readonly text: string;
  readonly amount: NumberQuantity;
}

export interface HayPart extends HayStorePart {
  readonly inSeason: NumberQuantity;
  readonly outside: NumberQuantity;
  /** Both together, to compare with other orders. */
  readonly all: NumberQuantity;
  readonly toStore: NumberQuantity;
  /** What these moves feed by hand less than a plain rule. */
  readonly saved: NumberQuantity;
  readonly bales: NumberQuantity;
  readonly firstShort?: string;
  readonly shortDays: number;
  readonly closers: readonly Closer[];
}

/** Hay in and out of the grazing season, how good the order is, and what closes a shortage. */
export function planHay(context: PastureContext, chosen: Chosen): Found<HayPart> {
  const feed = seasonFeed(context, chosen.books);
  const { allKg, firstShort, shortDays } = feed;
  const { inSeason, outside } = dryFeed(context, chosen, feed);
  const { toStore, hayPerDryKg } = hayToStore(context, { inSeason, outside });
  const store = planHayStore(context, chosen, { toStore, hayPerDryKg });
  const beside = besidePlainRule(context, chosen, {
    toBuyKg: store.part.toBuy.value,
    hayPerDryKg,
  });
  const part: HayPart = {
    ...store.part,
    inSeason,
    outside,
    all: quantity('All feed besides grass, dry matter', allKg, 'kg', hayPartFormulas.all, [
      from(inSeason, 'F₁'),
      from(outside, 'F₂'),
    ]),
    toStore,
    saved: beside.saved,
    bales: balesOf(context, toStore, 'Bales for the days of the plan'),
    ...(firstShort === undefined ? {} : { firstShort: context.dateOf(firstShort) }),
    shortDays,
    closers: firstShort === undefined ? [] : closersOf(context, inSeason),
  };
  return found(part, {
    issues: [
      ...grassShort(context, part),
      ...(store.issues ?? []),
      ...ruleIsBetter(context, beside, needKg(context)),
    ],
  });
}

/** Hay to buy in the weather of a context, until there is grass again after the next winter. */
export function hayToBuy(
  context: PastureContext,
  chosen: Chosen,
  feed: SeasonFeed,
): NumberQuantity {
  const store = hayToStore(context, dryFeed(context, chosen, feed));
  return planHayStore(context, chosen, store).part.toBuy;
}

/** Feed besides grass while grazing, and before and after it. */
function dryFeed(
  context: PastureContext,
  { books }: Chosen,
  { inSeasonKg, outsideKg }: SeasonFeed,
): { readonly inSeason: NumberQuantity; readonly outside: NumberQuantity } {
  const { span } = context;
  const dry = (
    label: string,
    kg: number,
    formula: Formula,
    more: QuantityInput[] = [],
  ): NumberQuantity =>
    quantity(
      label,
      kg,
      'kg',
      formula,
      [
        input('Need of the plan', needKg(context), 'kg'),
        input('Eaten of grass', sumFrom(books.eatenKg, span.from, span.to), 'kg'),
        input('Days of the plan', span.to - span.from, 'day'),
        ...more,
      ],
      { rows: [context.order] },
    );
  return {
    inSeason: dry('Feed short on grass, dry matter', inSeasonKg, hayPartFormulas.short),
    outside: dry(
      'Feed before and after grazing, dry matter',
      outsideKg,
      hayPartFormulas.winter,
      quarantineInputs(context),
    ),
  };
}

/** Days in which cattle that join a herd are fed in a pen of their own. */
function quarantineInputs({ herds, tables }: PastureContext): QuantityInput[] {
  const { quarantineDays: days } = tables.pasture;
  if (!herds.some(({ groups }) => groups.some(({ arrivesOn }) => arrivesOn !== undefined)))
    return [];
  return [
    fromTable(days, 'Days in quarantine', days.value, 'day'),
    fromTable(days, `At least, as ${days.because ?? 'advice differs'}`, days.low, 'day'),
    fromTable(days, 'At most', days.high, 'day'),
  ];
}

function needKg({ herdDays, span }: PastureContext): number {
  return sumFrom(
    herdDays.map((days) => days.demandKg),
    span.from,
    span.to,
  );
}

function sumFrom(series: readonly Float64Array[], from: number, to: number): number {
  let sum = 0;
  for (const values of series) for (let i = from; i < to; i++) sum += values[i]!;
  return sum;
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

function closersOf(context: PastureContext, inSeason: NumberQuantity): Closer[] {
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
        hayPartFormulas.headShare,
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
        hayPartFormulas.areaShare,
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
  const saved = inSeason.value - seasonFeed(context, graze(longer, 'never')).inSeasonKg;
  if (least < saved) {
    closers.push({
      kind: 'slower',
      text: `Rest every paddock a week longer and feed hay meanwhile: saves ${context.say(saved, 'kg')} of dry matter.`,
      amount: quantity(
        'Dry matter saved',
        saved,
        'kg',
        hayPartFormulas.short,
        [fromJudgement(longerRestDays)],
        { rows },
      ),
    });
  }
  return closers;
}

function grassShort(context: PastureContext, part: HayPart): PlanIssue[] {
  if (part.firstShort === undefined) return [];
  const { littleShare, missedShare } = context.tables.judgements.grazing;
  const dayKg = needKg(context) / (context.span.to - context.span.from);
  // Some armfuls on the last day of grass are no shortage.
  if (part.inSeason.value < missedShare.value * dayKg) return [];
  const days = part.shortDays === 1 ? '1 day is' : `${part.shortDays} days are`;
  return [
    issue(
      // A day or two at turn-out are bridged with the hay that is fed then anyway.
      part.inSeason.value < littleShare.value * needKg(context) ? 'note' : 'act',
      'grass-short',
      `The grass does not reach from ${context.say(part.firstShort, 'date')} on: ${days} short of ${context.say(part.inSeason.value, 'kg')} of dry matter. ${part.closers.map((c) => c.text).join(' Or: ')}`,
    ),
  ];
}
