import {
  from,
  fromFarm,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../../explain/quantity.js';
import type { Formula } from '../../explain/formula.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { found, type Found } from '../found.js';
import { planHayStore } from './hay-store.js';
import type { HayStorePart } from './hay-store-part.js';
import { hayToStore } from './hay-to-store.js';
import type { PastureContext } from './pasture-context.js';
import { closersOf, type Closer } from './short-of-grass.js';
import { besidePlainRule, ruleIsBetter } from './plain-rule.js';
import { needKg, seasonFeed, seasonFeedFormulas, sumFrom, type SeasonFeed } from './season-feed.js';
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
} satisfies Record<string, Formula>;

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
    closers: firstShort === undefined ? [] : closersOf(context, chosen, inSeason),
  };
  return found(part, {
    issues: [
      ...grassShort(context, part, madeBefore(context, chosen, firstShort, hayPerDryKg)),
      ...(store.issues ?? []),
      ...ruleIsBetter(context, beside, needKg(context)),
    ],
  });
}

/** Hay to buy in the weather of a context: until turn-out where the herds are not out, and in all. */
export function hayToBuy(
  context: PastureContext,
  chosen: Chosen,
  feed: SeasonFeed,
): {
  readonly untilOutKg: number | undefined;
  readonly allKg: number;
  readonly inStore: NumberQuantity | undefined;
} {
  const store = hayToStore(context, dryFeed(context, chosen, feed));
  const { toBuy, byWinter, inStore } = planHayStore(context, chosen, store).part;
  return { untilOutKg: byWinter?.untilOut.value, allKg: toBuy.value, inStore };
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
    inSeason: dry('Feed short on grass, dry matter', inSeasonKg, seasonFeedFormulas.short),
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
  const coming = herds.flatMap(({ groups }) =>
    groups.filter(({ arrivesOn }) => arrivesOn !== undefined),
  );
  const typed = [...new Set(coming.flatMap(({ apartDays }) => apartDays ?? []))];
  const own = typed.map((each) => fromFarm('Days in quarantine', each, 'day'));
  if (coming.every(({ apartDays }) => apartDays !== undefined)) return own;
  return [
    ...own,
    fromTable(days, 'Days in quarantine', days.value, 'day'),
    fromTable(days, `At least, as ${days.because ?? 'advice differs'}`, days.low, 'day'),
    fromTable(days, 'At most', days.high, 'day'),
  ];
}

/** Dry matter that cattle eat of hay mown before the grass is first short, kg. */
function madeBefore(
  { tables }: PastureContext,
  { books }: Chosen,
  firstShort = 0,
  hayPerDryKg: number,
): number {
  const { harvestShare, dryMatterShare } = tables.pasture.hay;
  return books.cuts
    .filter(({ openFrom }) => openFrom <= firstShort)
    .reduce((sum, { kg }) => sum + (kg * harvestShare) / dryMatterShare / hayPerDryKg, 0);
}

/** Some armfuls on the last day of grass are no shortage. */
export function isShortage(context: PastureContext, inSeasonKg: number): boolean {
  const { tables, span } = context;
  const dayKg = needKg(context) / (span.to - span.from);
  return tables.judgements.grazing.missedShare.value * dayKg <= inSeasonKg;
}

/** @param madeKg dry matter of own hay that cattle can eat by then */
function grassShort(context: PastureContext, part: HayPart, madeKg: number): PlanIssue[] {
  if (part.firstShort === undefined) return [];
  const { littleShare } = context.tables.judgements.grazing;
  if (!isShortage(context, part.inSeason.value)) return [];
  const days = part.shortDays === 1 ? '1 day is' : `${part.shortDays} days are`;
  const isOwn = part.inSeason.value <= madeKg;
  // Nobody sells a cow for days that own hay bridges.
  const ways = isOwn
    ? [
        'Feed some of the hay that you make before, which is enough.',
        ...part.closers.flatMap(({ kind, text }) => (kind === 'mow-less' ? [text] : [])),
      ]
    : part.closers.map(({ text }) => text);
  return [
    issue(
      // A day or two at turn-out are bridged with the hay that is fed then anyway.
      isOwn || part.inSeason.value < littleShare.value * needKg(context) ? 'note' : 'act',
      'grass-short',
      `The grass does not reach from ${context.say(part.firstShort, 'date')} on: ${days} short of ${context.say(part.inSeason.value, 'kg')} of dry matter. ${ways.join(' Or: ')}`,
    ),
  ];
}
