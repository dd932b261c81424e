import type { IngredientProduct } from '../../shared/farm/mix-ingredient.js';
import type { Product } from '../../shared/farm/product.js';
import type { RationAsked } from '../../shared/ration/mix.js';
import { rationOf, type Ration } from '../../shared/ration/ration.js';
import { rowById, type Tables } from '../../shared/tables/tables.js';
import { loadSolver } from '../../src/rations/solver.js';
import { tables } from './factories.js';

export const solve = await loadSolver();

/** What a household can buy, at a price a kg. */
export const newIngredient = (
  ingredientId: string,
  price = '1.00',
  more: Partial<IngredientProduct> = {},
): IngredientProduct => ({
  kind: 'ingredient',
  id: ingredientId,
  name: rowById(tables.ingredients, ingredientId).name,
  ingredientId,
  bagKg: 1,
  price,
  ...more,
});

/** Prices a kg, invented, of what makes a whole feed of corn and soybeans. */
export const WHOLE: readonly IngredientProduct[] = Object.entries({
  corn: '0.60',
  'wheat-hard': '0.68',
  oats: '0.64',
  peas: '1.06',
  'soybean-meal-48': '1.19',
  'fish-meal': '2.73',
  'vegetable-oil': '2.40',
  limestone: '0.29',
  'dicalcium-phosphate': '1.68',
  salt: '0.35',
  methionine: '14.00',
  premix: '3.97',
}).map(([id, price]) => newIngredient(id, price));

const FEED: Product = {
  ...{ kind: 'feed', id: 'starter', name: 'Starter', phaseIds: ['starter'], feedFor: 'meat' },
  ...{ bagKg: 25, price: '27.00' },
};

export const newRationAsked = (more: Partial<RationAsked> = {}): RationAsked => ({
  birdsId: 'meat-chickens',
  stageId: 'starter',
  batchKg: 50,
  ingredients: WHOLE,
  products: [FEED],
  farm: { units: 'metric', currency: 'USD' },
  ...more,
});

export const newRation = (more: Partial<RationAsked> = {}, of: Tables = tables): Ration =>
  rationOf(newRationAsked(more), of, solve);
