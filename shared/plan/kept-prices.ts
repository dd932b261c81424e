import { isStarted } from '../farm/batch-origin.js';
import type { Batch } from '../farm/batch.js';
import type { Farm } from '../farm/farm.js';
import type { Product } from '../farm/product.js';
import { rowById, type Tables } from '../tables/tables.js';
import { birdWordsOf, capital } from './bird-words.js';
import { bagOf } from './prices.js';

type Unsaved<P> = P extends Product ? Omit<P, 'id'> & { readonly id?: string } : never;
/** A product as it is saved: with the id of the one it takes the place of, if there is one. */
export type KeptProduct = Unsaved<Product>;

interface Place {
  readonly farm: Pick<Farm, 'units'>;
  readonly products: readonly Product[];
}
type Prices = NonNullable<Batch['prices']>;
type Priced = Pick<Batch, 'purpose' | 'strainId' | 'origin' | 'feedProgramId' | 'bagKg' | 'prices'>;

/**
 * The prices typed for a batch as products of its place, so that the next batch begins with them.
 * A feed is for birds of the batch's purpose, a chick for its breed; a grown pullet's price stays
 * with the batch, as it goes by her age; a product there is for just
 * that gets the new price.
 */
export function productsOfPrices(
  batch: Priced,
  { farm, products }: Place,
  tables: Pick<Tables, 'strains' | 'hatching' | 'feedPrograms' | 'feedKeeping'>,
): KeptProduct[] {
  const { perBird, beddingPerBag, processingPerBird, iceBag, freezerBag } = batch.prices ?? {};
  const strain = rowById(tables.strains, batch.strainId);
  const there = <K extends Product['kind']>(
    kind: K,
    isIt: (product: Extract<Product, { kind: K }>) => boolean = () => true,
  ) =>
    products.find(
      (product): product is Extract<Product, { kind: K }> =>
        product.kind === kind && isIt(product as Extract<Product, { kind: K }>),
    );
  const chicks = there('chicks', ({ strainId }) => strainId === strain.id) ?? {
    kind: 'chicks' as const,
    name: `${capital(birdWordsOf(tables, { strainId: strain.id }).young)}: ${strain.name}`,
    strainId: strain.id,
  };
  const bedding = there('bedding') ?? { kind: 'bedding' as const, name: 'Bedding' };
  const processing = there('processing') ?? { kind: 'processing' as const, name: 'Processing' };
  const ice = there('ice') ?? { kind: 'ice' as const, name: 'Ice' };
  const bags = there('freezer-bags') ?? { kind: 'freezer-bags' as const, name: 'Freezer bags' };
  return [
    ...(perBird === undefined || isStarted(batch) ? [] : [{ ...chicks, price: perBird }]),
    ...(beddingPerBag === undefined ? [] : [{ ...bedding, price: beddingPerBag }]),
    ...feedsOf(batch, { farm, products }, tables),
    ...(processingPerBird === undefined ? [] : [{ ...processing, price: processingPerBird }]),
    ...(iceBag === undefined ? [] : [{ ...ice, price: iceBag }]),
    ...(freezerBag === undefined ? [] : [{ ...bags, price: freezerBag }]),
  ];
}

function feedsOf(
  batch: Priced,
  { farm, products }: Place,
  tables: Pick<Tables, 'strains' | 'feedPrograms' | 'feedKeeping'>,
): KeptProduct[] {
  const { feedProgram } = rowById(tables.strains, batch.strainId);
  const programId = batch.feedProgramId ?? feedProgram[batch.purpose]!;
  const { phases } = rowById(tables.feedPrograms, programId);
  return phases.flatMap(({ id, name }) => {
    const price = batch.prices?.feedPerBag?.[id];
    if (price === undefined) return [];
    const isIt = (product: Product): boolean =>
      product.kind === 'feed' &&
      product.feedFor === batch.purpose &&
      product.phaseIds.length === 1 &&
      product.phaseIds[0] === id;
    const { bagKg } = bagOf({ farm, batch, products: [], tables }, id);
    const birds = batch.purpose === 'meat' ? 'meat birds' : 'layers';
    const start = { name: `${name}, ${birds}`, ...products.find(isIt) };
    return [
      { ...start, kind: 'feed' as const, phaseIds: [id], feedFor: batch.purpose, bagKg, price },
    ];
  });
}

/** Prices of a batch without the one that became a product. */
export function withoutPrice(prices: Prices, product: KeptProduct): Prices {
  const {
    perBird,
    beddingPerBag,
    processingPerBird,
    iceBag,
    freezerBag,
    feedPerBag = {},
    ...rest
  } = prices;
  const { kind } = product;
  const isFed = (id: string): boolean => product.kind === 'feed' && product.phaseIds.includes(id);
  const feeds = Object.entries(feedPerBag).filter(([id]) => !isFed(id));
  return {
    ...rest,
    ...(perBird === undefined || kind === 'chicks' ? {} : { perBird }),
    ...(beddingPerBag === undefined || kind === 'bedding' ? {} : { beddingPerBag }),
    ...(processingPerBird === undefined || kind === 'processing' ? {} : { processingPerBird }),
    ...(iceBag === undefined || kind === 'ice' ? {} : { iceBag }),
    ...(freezerBag === undefined || kind === 'freezer-bags' ? {} : { freezerBag }),
    ...(feeds.length === 0 ? {} : { feedPerBag: Object.fromEntries(feeds) }),
  };
}
