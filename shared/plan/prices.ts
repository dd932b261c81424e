import Big from 'big.js';
import { fromFarm, fromRow, givenOrTable, input, type QuantityInput } from '../explain/quantity.js';
import { isStarted } from '../farm/batch-origin.js';
import type { Batch } from '../farm/batch.js';
import type { Farm } from '../farm/farm.js';
import type { FeedProduct, Product, ProductKind } from '../farm/product.js';
import type { Tables } from '../tables/tables.js';
import { usualBagKg } from '../tables/usual-bag.js';
import { formatPrice, minorDigits } from '../units/format.js';

/** A price of one, and whose it is: typed for the batch, or of a product of the place. */
export interface PriceOfOne {
  readonly price: string;
  /** The product of the place; left out when the batch has a price of its own. */
  readonly product?: string;
}

/** One bag of a feed: how large, and for how much where a price is known. */
export interface BagOfFeed {
  readonly bagKg: number;
  readonly bagInput: QuantityInput;
  readonly price?: PriceOfOne;
}

type Asked = {
  readonly batch: Pick<
    Batch,
    'purpose' | 'strainId' | 'origin' | 'processing' | 'bagKg' | 'prices'
  >;
  readonly products: readonly Product[];
  readonly tables: Pick<Tables, 'feedKeeping'>;
};

/**
 * The bag that a phase is bought in. A price typed for the batch is that of a bag of the size typed
 * for it, else of a usual bag, whatever the place buys by now: a saved batch keeps its numbers. A
 * size typed without a price keeps the place's price only where that is for a bag of this size.
 */
export function bagOf(
  { farm, batch, products, tables }: Asked & { readonly farm: Pick<Farm, 'units'> },
  phaseId: string,
): BagOfFeed {
  const typedPrice = batch.prices?.feedPerBag?.[phaseId];
  const product = feedOf(products, batch.purpose, phaseId);
  const isOwn = batch.bagKg !== undefined || typedPrice !== undefined;
  if (!isOwn && product)
    return {
      bagKg: product.bagKg,
      bagInput: fromFarm(`One bag of ${product.name}`, product.bagKg, 'kg'),
      price: { price: product.price, product: product.name },
    };
  const { usualBag } = tables.feedKeeping;
  const bagKg = batch.bagKg ?? usualBagKg(tables, farm);
  const bagInput = givenOrTable(batch.bagKg !== undefined, usualBag, 'One bag', bagKg, 'kg');
  if (typedPrice !== undefined) return { bagKg, bagInput, price: { price: typedPrice } };
  return product && Math.abs(product.bagKg - bagKg) < SAME_KG
    ? { bagKg, bagInput, price: { price: product.price, product: product.name } }
    : { bagKg, bagInput };
}

/** The feed made for a phase and purpose, before one that serves several; of equals the cheaper. */
export function feedOf(
  products: readonly Product[],
  purpose: Batch['purpose'],
  phaseId: string,
): FeedProduct | undefined {
  const fitting = ofKind(products, 'feed').filter(
    ({ phaseIds, feedFor = purpose }) => feedFor === purpose && phaseIds.includes(phaseId),
  );
  const width = ({ phaseIds, feedFor }: FeedProduct): number =>
    phaseIds.length + (feedFor === undefined ? 0.5 : 0);
  const narrowest = Math.min(...fitting.map(width));
  return cheapest(
    fitting.filter((feed) => width(feed) === narrowest),
    ({ price, bagKg }) => new Big(price).div(bagKg),
  );
}

/** Bags that are sold as one size differ by rounding between pounds and kilograms. */
const SAME_KG = 0.1;

/**
 * What a bird costs that comes: typed for the batch, else the place's price of a chick of its
 * breed, else of any. A grown pullet costs several times a chick, and more with each week.
 */
export function chickPrice({ batch, products }: Omit<Asked, 'tables'>): PriceOfOne | undefined {
  if (isStarted(batch)) return typedOr(batch.prices?.perBird, undefined);
  const all = ofKind(products, 'chicks');
  const ofBreed = all.filter(({ strainId }) => strainId === batch.strainId);
  const ofAny = all.filter(({ strainId }) => strainId === undefined);
  return typedOr(batch.prices?.perBird, cheapest(0 < ofBreed.length ? ofBreed : ofAny));
}

/** What an egg to set costs: typed with the batch, as the place buys none. */
export const settingEggPrice = ({ batch }: Pick<Asked, 'batch'>): PriceOfOne | undefined =>
  typedOr(batch.prices?.perEgg, undefined);

/** What a bag of bedding costs, and what it opens to where the place's own bag is known. */
export function beddingBag({ batch, products }: Omit<Asked, 'tables'>): {
  readonly opensTo?: QuantityInput;
  readonly price?: PriceOfOne;
} {
  const typed = batch.prices?.beddingPerBag;
  if (typed !== undefined) return { price: { price: typed } };
  const product = cheapest(ofKind(products, 'bedding'));
  if (!product) return {};
  return {
    price: { price: product.price, product: product.name },
    ...(product.opensToM3 === undefined
      ? {}
      : { opensTo: fromFarm(`One bag of ${product.name} opens to`, product.opensToM3, 'm3') }),
  };
}

/** What a bag of ice or a freezer bag costs: typed for the batch, else the place's price. */
export const goodPrice = (
  { batch, products }: Omit<Asked, 'tables'>,
  kind: 'ice' | 'freezer-bags',
): PriceOfOne | undefined =>
  typedOr(
    kind === 'ice' ? batch.prices?.iceBag : batch.prices?.freezerBag,
    cheapest(ofKind(products, kind)),
  );

/**
 * What processing a bird costs: typed for the batch, else what the place pays where it is hired. At
 * home nobody is paid, unless the household says for the batch what it reckons.
 */
export const processingPrice = ({
  batch,
  products,
}: Omit<Asked, 'tables'>): PriceOfOne | undefined =>
  typedOr(
    batch.prices?.processingPerBird,
    batch.processing === 'hired' ? cheapest(ofKind(products, 'processing')) : undefined,
  );

const typedOr = (
  typed: string | undefined,
  product: { readonly name: string; readonly price: string } | undefined,
): PriceOfOne | undefined =>
  typed !== undefined
    ? { price: typed }
    : product && { price: product.price, product: product.name };

const ofKind = <K extends ProductKind>(products: readonly Product[], kind: K) =>
  products.filter((p): p is Extract<Product, { kind: K }> => p.kind === kind);

/** The one that costs least, of several that would do; the first of equals. */
function cheapest<P extends { readonly price: string }>(
  products: readonly P[],
  worth: (product: P) => Big = ({ price }) => new Big(price),
): P | undefined {
  return products.reduce<P | undefined>(
    (best, each) => (best && worth(best).lte(worth(each)) ? best : each),
    undefined,
  );
}

/** The farm's price of a liter of gas as an input of a sum: stored in minor units, shown by what the farm reads. */
export const literPriceInput = (farm: Farm): QuantityInput => {
  const minor = new Big(farm.gasPricePerL).times(10 ** minorDigits(farm.currency)).toNumber();
  return fromRow(farm, 'gasPricePerL', 'Price of gas', minor, 'moneyPerL');
};

/** A price as an input of a sum, with the product it is of. */
export const priceInput = ({ price, product }: PriceOfOne, currency: string): QuantityInput =>
  product === undefined
    ? input('Price of one', formatPrice(price, currency), 'text')
    : fromFarm(`Price of ${product}`, formatPrice(price, currency), 'text');
