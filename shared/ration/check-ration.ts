import type { IngredientProduct } from '../farm/mix-ingredient.js';
import type { RationAskedOfFarm } from '../farm/ration-asked.js';
import type { Product } from '../farm/product.js';
import { FieldError, type FieldProblem } from '../problems/field-problem.js';
import type { Tables } from '../tables/tables.js';
import type { BirdsOfAge } from './birds-for.js';
import type { RationAsked } from './mix.js';

type Named = Pick<Tables, 'rationNeeds' | 'ingredients'>;

/**
 * What is asked of a farm, with the farm's own ingredients where none are sent.
 *
 * @throws FieldError when it names birds, an age or an ingredient that no table has, or nothing to mix
 */
export function checkedRation(
  asked: RationAskedOfFarm,
  { products, farm }: { readonly products: readonly Product[]; readonly farm: RationAsked['farm'] },
  tables: Named,
): RationAsked {
  const ingredients = ingredientsOf(asked, products);
  const problems = [
    ...problemsOfBirds(asked, tables),
    ...(asked.alsoFor ?? []).flatMap((each, i) => problemsOfBirds(each, tables, `alsoFor.${i}.`)),
    ...problemsOfIngredients(asked, ingredients, tables),
  ];
  if (0 < problems.length) throw new FieldError(problems);
  const { birdsId, stageId, alsoFor, batchKg, by } = asked;
  return { birdsId, stageId, alsoFor, batchKg, by, ingredients, products, farm };
}

function ingredientsOf(
  { ingredients, leaveOutIds = [] }: RationAskedOfFarm,
  products: readonly Product[],
): readonly IngredientProduct[] {
  const all =
    ingredients?.map((each, i) => ({ ...each, id: each.id ?? `ingredient-${i + 1}` })) ??
    products.filter((product) => product.kind === 'ingredient');
  return all.filter(({ id }) => !leaveOutIds.includes(id));
}

function problemsOfBirds(
  { birdsId, stageId }: BirdsOfAge,
  { rationNeeds }: Named,
  at = '',
): FieldProblem[] {
  const birds = rationNeeds.find(({ id }) => id === birdsId);
  if (!birds) return [notOf(`${at}birdsId`, birdsId, rationNeeds)];
  return birds.stages.some(({ id }) => id === stageId)
    ? []
    : [notOf(`${at}stageId`, stageId, birds.stages)];
}

function problemsOfIngredients(
  { ingredients }: RationAskedOfFarm,
  used: readonly IngredientProduct[],
  tables: Named,
): FieldProblem[] {
  if (used.length === 0) {
    return [
      {
        field: 'ingredients',
        code: 'missing',
        given: ingredients ?? [],
        fix: 'Add what you can mix of, with its price: a grain, a meal, limestone, salt, a premix.',
      },
    ];
  }
  return (ingredients ?? []).flatMap(({ ingredientId }, i) =>
    tables.ingredients.some(({ id }) => id === ingredientId)
      ? []
      : [notOf(`ingredients.${i}.ingredientId`, ingredientId, tables.ingredients)],
  );
}

const notOf = (
  field: string,
  given: string,
  rows: readonly { readonly id: string }[],
): FieldProblem => ({
  field,
  code: 'not-allowed',
  given,
  allowed: rows.map(({ id }) => id),
  fix: 'Choose one of the table.',
});
