import { whole, within } from './bounds.js';
import { feedProductFields } from './feed-product.js';
import { choice, number, oneOf, optional, row, text, type SavedRowOf } from './field.js';
import { ingredientProductFields, type IngredientProduct } from './mix-ingredient.js';
import { id, OWN, price } from './words.js';

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

/** What an hour of the household's own work is reckoned at; nothing where it is left out. */
export const ownHourProductFields = row('OwnHourProduct', {
  ...OWN,
  name: text('Name'),
  kind: choice('Kind', ['own-hour']),
  price: price('An hour of your own work'),
});
export type OwnHourProduct = SavedRowOf<typeof ownHourProductFields>;

/** A drive for feed, or to the processor: its fuel. */
export const tripProductFields = row('TripProduct', {
  ...OWN,
  name: text('Name'),
  kind: choice('Kind', ['trip']),
  price: price('A trip'),
});
export type TripProduct = SavedRowOf<typeof tripProductFields>;

/** Pens, a freezer, a plucker: bought once, and used by many batches. */
export const gearProductFields = row('GearProduct', {
  ...OWN,
  name: text('Name'),
  kind: choice('Kind', ['gear']),
  /** Left out, batches of either kind use it. */
  usedFor: optional(choice('Used for', ['meat', 'layers'])),
  years: number('Years it lasts', within(1, 60, 'ratio', 'Give the years it is used, 1 to 60.')),
  batchesAYear: number(
    'Batches a year that use it',
    whole(1, 50, 'count', 'Count the batches of a year that share it.'),
  ),
  price: price('Its price new'),
});
export type GearProduct = SavedRowOf<typeof gearProductFields>;

/** What a kilogram of dressed birds brings, or would cost in the shop; of one size, or of any. */
export const meatProductFields = row('MeatProduct', {
  ...OWN,
  name: text('Name'),
  kind: choice('Kind', ['meat']),
  /** Left out, birds of any breed bring that. */
  strainId: optional(id('Breed or cross')),
  /** Left out, from the lightest on: a price by size is one row a size. */
  fromDressedKg: optional(
    number(
      'For birds dressed from',
      within(0.1, 20, 'kg', 'Give the dressed weight from which a bird brings this.'),
    ),
  ),
  price: price('A kilogram, dressed'),
});
export type MeatProduct = SavedRowOf<typeof meatProductFields>;
/** Hay that is bought; how heavy a bale is stands with the choices of the pasture. */
export const hayProductFields = row('HayProduct', {
  ...OWN,
  name: text('Name'),
  kind: choice('Kind', ['hay']),
  price: price('A bale of hay'),
});
export type HayProduct = SavedRowOf<typeof hayProductFields>;

/** Loose minerals, a block, or salt: what cattle eat of it is given, or that of loose minerals. */
export const mineralsProductFields = row('MineralsProduct', {
  ...OWN,
  name: text('Name'),
  kind: choice('Kind', ['minerals']),
  bagKg: number('One bag or block', within(0.5, 1500, 'kg', 'Read the weight of one.')),
  eatenGPerDay: optional(
    number(
      'One animal eats a day',
      within(1, 500, 'g', 'Read on the bag what one animal eats a day.'),
    ),
  ),
  price: price('A bag or block'),
});
export type MineralsProduct = SavedRowOf<typeof mineralsProductFields>;

/** What is described of each kind of product. */
export const productFields = {
  feed: feedProductFields,
  chicks: chickProductFields,
  bedding: beddingProductFields,
  processing: processingProductFields,
  ice: iceProductFields,
  'freezer-bags': freezerBagProductFields,
  'own-hour': ownHourProductFields,
  trip: tripProductFields,
  gear: gearProductFields,
  meat: meatProductFields,
  ingredient: ingredientProductFields,
  hay: hayProductFields,
  minerals: mineralsProductFields,
} as const;

/** What the place buys for its animals and at what price, told apart by its `kind`. */
export const anyProduct = oneOf('Product', 'kind', productFields);

export type Product =
  | FeedProduct
  | ChickProduct
  | BeddingProduct
  | ProcessingProduct
  | IceProduct
  | FreezerBagProduct
  | OwnHourProduct
  | TripProduct
  | GearProduct
  | MeatProduct
  | IngredientProduct
  | HayProduct
  | MineralsProduct;
export type ProductKind = Product['kind'];
