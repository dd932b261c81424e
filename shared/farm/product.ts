import { within } from './bounds.js';
import { choice, list, number, oneOf, optional, row, text, type SavedRowOf } from './field.js';
import { ingredientProductFields, type IngredientProduct } from './ingredient.js';
import { id, OWN, price } from './words.js';

/** A feed as it is bought: what it is fed as, how large one bag is, and what it costs. */
export const feedProductFields = row('FeedProduct', {
  ...OWN,
  name: text('Name'),
  kind: choice('Kind', ['feed']),
  /** Phases of the feeding programs that it is fed as, such as starter and grower. */
  phaseIds: list('Fed as', id('Feed phase'), 12, 'phases', 1),
  /** Left out, it is for both: one chick starter for meat birds and pullets. */
  feedFor: optional(choice('For', ['meat', 'layers'])),
  bagKg: number('One bag of feed', within(1, 1500, 'kg', 'Read the weight of one bag.')),
  price: price('A bag of feed'),
});
export type FeedProduct = SavedRowOf<typeof feedProductFields>;

export const chickProductFields = row('ChickProduct', {
  ...OWN,
  name: text('Name'),
  kind: choice('Kind', ['chicks']),
  /** Left out, any breed costs that. */
  strainId: optional(id('Breed or cross')),
  price: price('A chick'),
});
export type ChickProduct = SavedRowOf<typeof chickProductFields>;

export const beddingProductFields = row('BeddingProduct', {
  ...OWN,
  name: text('Name'),
  kind: choice('Kind', ['bedding']),
  /** What a bag opens to; left out, that of a usual bag of shavings. */
  opensToM3: optional(
    number('One bag opens to', within(0.01, 5, 'm3', 'Read on the bag what it opens to.')),
  ),
  price: price('A bag of bedding'),
});
export type BeddingProduct = SavedRowOf<typeof beddingProductFields>;

export const processingProductFields = row('ProcessingProduct', {
  ...OWN,
  name: text('Name'),
  kind: choice('Kind', ['processing']),
  price: price('Processing a bird'),
});
export type ProcessingProduct = SavedRowOf<typeof processingProductFields>;

export const iceProductFields = row('IceProduct', {
  ...OWN,
  name: text('Name'),
  kind: choice('Kind', ['ice']),
  price: price('A bag of ice'),
});
export type IceProduct = SavedRowOf<typeof iceProductFields>;

export const freezerBagProductFields = row('FreezerBagProduct', {
  ...OWN,
  name: text('Name'),
  kind: choice('Kind', ['freezer-bags']),
  price: price('A freezer bag'),
});
export type FreezerBagProduct = SavedRowOf<typeof freezerBagProductFields>;

/** What is described of each kind of product. */
export const productFields = {
  feed: feedProductFields,
  chicks: chickProductFields,
  bedding: beddingProductFields,
  processing: processingProductFields,
  ice: iceProductFields,
  'freezer-bags': freezerBagProductFields,
  ingredient: ingredientProductFields,
} as const;

/** What the place buys for its birds and at what price, told apart by its `kind`. */
export const anyProduct = oneOf('Product', 'kind', productFields);

export type Product =
  | FeedProduct
  | ChickProduct
  | BeddingProduct
  | ProcessingProduct
  | IceProduct
  | FreezerBagProduct
  | IngredientProduct;
export type ProductKind = Product['kind'];
