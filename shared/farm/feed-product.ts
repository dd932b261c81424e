import Big from 'big.js';
import { isPrice } from '../money/money.js';
import type { FieldProblem } from '../problems/field-problem.js';
import { whole, within, type Bounds } from './bounds.js';
import {
  choice,
  list,
  nested,
  number,
  optional,
  row,
  rows,
  text,
  type RowOf,
  type RowRule,
} from './field.js';
import { date, id, OWN, price } from './words.js';

/** From so many bags of one trip on, each of them costs that. */
export const priceBreakFields = row('PriceBreak', {
  fromBags: number('From', whole(2, 10_000, 'bags', 'Give the bags from which the price holds.')),
  price: price('Each'),
});
export type PriceBreak = RowOf<typeof priceBreakFields>;

/** A price that held until the day on which another took its place. */
export const earlierPriceFields = row('EarlierPrice', {
  price: price('It cost'),
  until: date('Until'),
});
export type EarlierPrice = RowOf<typeof earlierPriceFields>;

/** As far as its price may fall and rise before all of it is bought. */
export const mayCostFields = row('MayCost', {
  low: price('At least'),
  high: price('At most'),
});

const TAG: Omit<Bounds, 'max'> = {
  min: 0,
  unit: 'ratio',
  typedAs: 'percent',
  fix: 'Read the percentage on the tag of the bag.',
};

/** What the tag of a bag says is in it, as far as somebody typed it. */
export const nutrientTagFields = row('NutrientTag', {
  proteinPercent: optional(number('Protein', { ...TAG, max: 60 })),
  energyKcalPerKg: optional(
    number('Energy', within(500, 5000, 'kcal', 'Read the energy of a kilogram on the tag.')),
  ),
  lysinePercent: optional(number('Lysine', { ...TAG, max: 6 })),
  methioninePercent: optional(number('Methionine', { ...TAG, max: 3 })),
  calciumPercent: optional(number('Calcium', { ...TAG, max: 25 })),
  phosphorusPercent: optional(number('Phosphorus', { ...TAG, max: 10 })),
});
export type NutrientTag = RowOf<typeof nutrientTagFields>;

interface Priced {
  readonly price: string;
  readonly priceBreaks?: readonly PriceBreak[];
}

const BREAKS_FALL: RowRule<Priced> = {
  name: 'price-breaks-fall',
  of: ['priceBreaks', 'price'],
  find: ({ price: first, priceBreaks = [] }, at) =>
    priceBreaks.flatMap(({ fromBags, price: each }, k): FieldProblem[] => {
      const before = priceBreaks[k - 1];
      const field = `${at}priceBreaks.${k}`;
      if (before && fromBags <= before.fromBags)
        return [
          {
            field: `${field}.fromBags`,
            code: 'out-of-bounds',
            given: fromBags,
            min: before.fromBags + 1,
            unit: 'bags',
            fix: 'Put the smaller quantity first, and each only once.',
          },
        ];
      const dearer = before?.price ?? first;
      return !isPrice(each) || !isPrice(dearer) || new Big(each).lt(dearer)
        ? []
        : [
            {
              field: `${field}.price`,
              code: 'out-of-bounds',
              given: each,
              max: dearer,
              fix: 'From more bags on each must cost less than before: give the price of one bag, or leave this step out.',
            },
          ];
    }),
};

const MAY_COST: RowRule<Priced & { readonly mayCost?: RowOf<typeof mayCostFields> }> = {
  name: 'may-cost-holds-the-price',
  of: ['mayCost', 'price'],
  find: ({ price: now, mayCost }, at) => {
    if (!mayCost || ![now, mayCost.low, mayCost.high].every(isPrice)) return [];
    const { low, high } = mayCost;
    const fix = 'Give the lowest and the highest that you expect, with what it costs now between.';
    return [
      ...(new Big(now).lt(low)
        ? [{ field: `${at}mayCost.low`, code: 'out-of-bounds' as const, given: low, max: now, fix }]
        : []),
      ...(new Big(high).lt(now)
        ? [
            {
              field: `${at}mayCost.high`,
              code: 'out-of-bounds' as const,
              given: high,
              min: now,
              fix,
            },
          ]
        : []),
    ];
  },
};

const COUNTED_ON: RowRule<{ readonly storeBags?: number; readonly storeOn?: string }> = {
  name: 'bags-are-counted-on-a-day',
  of: ['storeBags', 'storeOn'],
  find: ({ storeBags, storeOn }, at) =>
    storeBags !== undefined && storeOn === undefined
      ? [
          {
            field: `${at}storeOn`,
            code: 'missing',
            given: undefined,
            fix: 'Give the day on which the bags were counted.',
          },
        ]
      : [],
};

/**
 * A feed as it is bought: what it is fed as, how large one bag is, and what it costs; where it is
 * known, from whom, for how long it keeps and what the tag says. Bulk feed is bags of what one
 * delivery is measured in.
 */
export const feedProductFields = row(
  'FeedProduct',
  {
    ...OWN,
    name: text('Name'),
    kind: choice('Kind', ['feed']),
    /** Phases of the feeding programs that it is fed as, such as starter and grower. */
    phaseIds: list('Fed as', id('Feed phase'), 12, 'phases', 1),
    /** Left out, it is for both: one chick starter for meat birds and pullets. */
    feedFor: optional(choice('For', ['meat', 'layers'])),
    bagKg: number('One bag of feed', within(1, 1500, 'kg', 'Read the weight of one bag.')),
    price: price('A bag of feed'),
    supplierId: optional(id('Bought from')),
    form: optional(choice('Form', ['crumble', 'mash', 'pellets', 'whole-grain'])),
    /** The price of all bags of a trip, once there are so many of them. */
    priceBreaks: optional(rows('Cheaper from', priceBreakFields, 6, 'step')),
    /** Prices it had before, the oldest first. They are kept when its price is changed. */
    earlierPrices: optional(rows('Earlier prices', earlierPriceFields, 200, 'price')),
    /** Left out, it may cost what it cost before. */
    mayCost: optional(nested('It may come to cost', mayCostFields)),
    keepsDays: optional(
      number('Keeps for', whole(3, 365, 'day', 'Give the days it keeps in your store.')),
    ),
    /** Where it is medicated: days without it before birds are processed. 0 is none. */
    withdrawalDays: optional(
      number(
        'Medicated: stop before processing',
        whole(
          0,
          120,
          'day',
          'Read the withdrawal period on the label; leave it empty where it is not medicated.',
        ),
      ),
    ),
    tag: optional(nested('On the tag', nutrientTagFields)),
    /** Bags in the store on a day, counted. */
    storeBags: optional(
      number('In store', within(0, 10_000, 'bags', 'Count the bags, with tenths of an open one.')),
    ),
    storeOn: optional(date('Counted on')),
  },
  [BREAKS_FALL, MAY_COST, COUNTED_ON],
);

/** What animals eat, as somebody types it. */
interface EdibleDraft {
  readonly kind: string;
  readonly price?: unknown;
  readonly priceBreaks?: readonly { readonly price?: unknown }[] | undefined;
  readonly earlierPrices?: readonly { readonly price?: unknown }[] | undefined;
}

const EDIBLE: ReadonlySet<string> = new Set(['feed', 'ingredient', 'hay', 'minerals']);

/**
 * What is wrong with feed, hay, minerals or an ingredient that is saved now. A price of nothing is
 * refused: bills would count it as free, and mixes would fill up with it. What was saved with it
 * before stays as it is.
 */
export function freePriceProblems(product: EdibleDraft): FieldProblem[] {
  if (!EDIBLE.has(product.kind)) return [];
  const { price, priceBreaks = [], earlierPrices = [] } = product;
  const prices: readonly (readonly [string, unknown])[] = [
    ['price', price],
    ...priceBreaks.map((each, k) => [`priceBreaks.${k}.price`, each.price] as const),
    ...earlierPrices.map((each, k) => [`earlierPrices.${k}.price`, each.price] as const),
  ];
  return prices.flatMap(([field, given]): FieldProblem[] =>
    isPrice(given) && new Big(given).eq(0)
      ? [
          {
            field,
            code: 'out-of-bounds',
            given,
            min: '0.01',
            fix: 'Give what one costs. For what you grow yourself, what it would sell for.',
          },
        ]
      : [],
  );
}

/** The price of one bag where so many are bought at once, decimal text. */
export const bagPrice = ({ price: one, priceBreaks = [] }: Priced, bags: number): string =>
  priceBreaks.findLast(({ fromBags }) => fromBags <= bags)?.price ?? one;

/** The prices it had before, with the one that no longer holds. */
export function withEarlierPrice<
  P extends Priced & { readonly earlierPrices?: readonly EarlierPrice[] },
>(now: P, before: Pick<P, 'price' | 'earlierPrices'>, today: string): P {
  const kept = now.earlierPrices ?? before.earlierPrices ?? [];
  const earlier = new Big(now.price).eq(before.price)
    ? kept
    : [...kept.filter(({ until }) => until !== today), { price: before.price, until: today }];
  return earlier.length === 0 ? now : { ...now, earlierPrices: earlier.slice(-MOST_EARLIER) };
}

const MOST_EARLIER = 200;
