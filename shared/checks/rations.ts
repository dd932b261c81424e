import { squareShare, wantedBeside } from '../ration/square.js';
import { heldBy } from '../ration/nutrients.js';
import { rowById } from '../tables/tables.js';
import { NUTRIENT_KEYS, type Nutrient } from '../tables/ration-tables.js';
import type { Given, Topic } from './given.js';

/** The square, what printed diets hold by the table of ingredients, and the tables themselves. */
export const rationChecks: Topic = {
  title: 'Feed you mix',
  by: {
    'square-share': ({ number, numberOr }) => {
      const setShare = numberOr('setShare', 0);
      const set = { share: setShare, percent: numberOr('setPercent', 0) };
      const wanted = wantedBeside(number('wanted'), set);
      return (1 - setShare) * (squareShare(number('first'), number('second'), wanted) ?? NaN);
    },
    'mix-holds': (given) =>
      heldBy(
        given.tables.ingredients.map(({ id, holds }) => ({
          share: given.numberOr(id, 0) / 1000,
          holds,
        })),
        nutrientOf(given),
      ),
    'ingredient-holds': (given) =>
      rowById(given.tables.ingredients, given.text('ingredient')).holds[nutrientOf(given)],
    need: (given) => {
      const { stages } = rowById(given.tables.rationNeeds, given.text('birds'));
      const { needs } = rowById(stages, given.text('stage'));
      return needs[nutrientOf(given) as keyof typeof needs] ?? NaN;
    },
  },
};

function nutrientOf({ text }: Given): Nutrient {
  const nutrient = NUTRIENT_KEYS.find((key) => key === text('nutrient'));
  if (!nutrient) throw new Error(`There is no nutrient "${text('nutrient')}".`);
  return nutrient;
}
