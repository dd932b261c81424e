import Big from 'big.js';
import { addDays } from '../../calendar/plain-date.js';
import { withBatch, type FarmPicture, type NamedBatch } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { formatValue, type Reader } from '../../units/format.js';
import type { BatchPlan } from '../batch-plan.js';
import { usualOrder } from '../usual-order.js';

/** What happens in a batch's life that tells more of its numbers. */
export type Teller =
  | 'weighing'
  | 'bags'
  | 'count'
  | 'forecast'
  | 'feed-price'
  | 'heat-price'
  | 'eggs'
  | 'candle';

/** One input as it could well turn out otherwise, and the farm with it. */
export interface PlausibleChange {
  /** What would be otherwise: "If the birds stay a tenth lighter". */
  readonly what: string;
  /** What happens to a household, or what it chooses. */
  readonly kind: 'happens' | 'chosen';
  /** What tells of it; left out of what is chosen. */
  readonly toldBy?: Teller;
  readonly picture: () => FarmPicture;
}

/** Kelvin by which a season is easily colder than is expected of it: 3 °C, or 5 °F. */
const COLDER_K = { metric: 3, us: 5 / 1.8 } as const;
/** Share by which birds and prices easily differ. */
const TENTH = 0.1;
/** Percent of birds or feed lost beyond what is usual. */
const MORE_PERCENT = 5;

/** What could well be otherwise with a batch, one thing at a time, the worse way. */
export function plausibleChanges(
  picture: FarmPicture,
  tables: Tables,
  batch: NamedBatch,
  plan: BatchPlan,
  reader: Reader,
): readonly PlausibleChange[] {
  const usual = usualOrder(batch, tables);
  const byK = COLDER_K[reader.units];
  const weight = batch.weightFactor ?? usual.weightFactor;
  const change = (what: string, toldBy: Teller, more: Partial<NamedBatch>): PlausibleChange => ({
    ...{ what, toldBy },
    kind: 'happens',
    picture: () => withBatch(picture, { ...batch, ...more }),
  });
  const chosen = (what: string, more: Partial<NamedBatch>): PlausibleChange => ({
    what,
    kind: 'chosen',
    picture: () => withBatch(picture, { ...batch, ...more }),
  });
  const more = Math.max(1, Math.round(TENTH * batch.wantedBirds));
  return [
    change('If the birds stay a tenth lighter', 'weighing', { weightFactor: weight * (1 - TENTH) }),
    change('If they eat a tenth more', 'bags', {
      feedFactor: (batch.feedFactor ?? usual.feedFactor) * (1 + TENTH),
    }),
    change('If five more in a hundred die', 'count', {
      laterLossPercent: (batch.laterLossPercent ?? usual.laterPercent) + MORE_PERCENT,
    }),
    change('If a twentieth more feed is spilled', 'bags', {
      wastePercent: (batch.wastePercent ?? usual.wastePercent) + MORE_PERCENT,
    }),
    {
      what: `If it stays ${formatValue(byK, 'K', reader)} colder than expected`,
      kind: 'happens',
      toldBy: 'forecast',
      picture: () => colder(picture, byK),
    },
    {
      what: 'If feed costs a tenth more',
      kind: 'happens',
      toldBy: 'feed-price',
      picture: () => dearerFeed(picture, batch),
    },
    {
      what: 'If power and gas cost a tenth more',
      kind: 'happens',
      toldBy: 'heat-price',
      picture: () => dearerHeat(picture),
    },
    ...(plan.laying
      ? [
          change('If the hens lay a tenth less', 'eggs', {
            ownEggsPerHen: plan.laying.eggsPerHen.value * (1 - TENTH),
          }),
        ]
      : []),
    ...(plan.hatching
      ? [
          change('If a tenth fewer eggs hatch', 'candle', {
            hatchPercent: plan.hatching.share.value * 100 * (1 - TENTH),
          }),
        ]
      : []),
    chosen(`If you want ${more} more ${more === 1 ? 'bird' : 'birds'}`, {
      wantedBirds: batch.wantedBirds + more,
      ...(batch.orderedBirds === undefined ? {} : { orderedBirds: batch.orderedBirds + more }),
    }),
    chosen('If they come a week later', { arrivalDate: addDays(batch.arrivalDate, 7) }),
  ];
}

function colder(picture: FarmPicture, byK: number): FarmPicture {
  const { climate } = picture;
  const less = (of: readonly number[]) => of.map((c) => c - byK);
  return {
    ...picture,
    climate: {
      ...climate,
      meanMinC: less(climate.meanMinC),
      meanMaxC: less(climate.meanMaxC),
      coldMinC: less(climate.coldMinC),
      hotMaxC: less(climate.hotMaxC),
    },
  };
}

/** Prices are decimal text of four digits at most. */
const dearer = (price: string): string =>
  new Big(price)
    .times(1 + TENTH)
    .round(4)
    .toString();

function dearerFeed(picture: FarmPicture, batch: NamedBatch): FarmPicture {
  const { prices } = batch;
  const feedPerBag =
    prices?.feedPerBag &&
    Object.fromEntries(Object.entries(prices.feedPerBag).map(([id, p]) => [id, dearer(p)]));
  const products = picture.products.map((each) =>
    each.kind === 'feed' ? { ...each, price: dearer(each.price) } : each,
  );
  return withBatch(
    { ...picture, products },
    feedPerBag ? { ...batch, prices: { ...prices, feedPerBag } } : batch,
  );
}

const dearerHeat = (picture: FarmPicture): FarmPicture => ({
  ...picture,
  farm: {
    ...picture.farm,
    electricityPricePerKWh: dearer(picture.farm.electricityPricePerKWh),
    gasPricePerL: dearer(picture.farm.gasPricePerL),
  },
});
