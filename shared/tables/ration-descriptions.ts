import { choice, list, nested, row } from '../farm/field.js';
import {
  ID,
  KCAL,
  KCAL_OF_INGREDIENT,
  maybe,
  NAME,
  PERCENT,
  rowOf,
  SOURCED,
  table,
  WORDS,
} from './figures.js';
import { STAGES_OF_LIFE } from './ration-tables.js';

const PERCENTS = {
  proteinPercent: PERCENT,
  lysinePercent: PERCENT,
  methioninePercent: PERCENT,
  methionineCystinePercent: PERCENT,
  tryptophanPercent: PERCENT,
  calciumPercent: PERCENT,
  phosphorusPercent: PERCENT,
  sodiumPercent: PERCENT,
} as const;

const STAGE = choice('Stage of life', STAGES_OF_LIFE);

export const ingredients = table('Ingredient', {
  id: ID,
  name: NAME,
  what: choice('What it is', ['grain', 'protein', 'fat', 'mineral', 'additive', 'premix']),
  holds: nested(
    'Composition',
    row('Composition', {
      ...PERCENTS,
      energyKcalPerKg: KCAL_OF_INGREDIENT,
      threoninePercent: PERCENT,
      fiberPercent: PERCENT,
    }),
  ),
  limits: table('IngredientLimit', {
    stages: list('Stages of life', STAGE, 4, 'stages', 1),
    percent: PERCENT,
    because: WORDS,
    ...SOURCED,
  }),
  ...SOURCED,
});

export const rationNeeds = table('BirdsToFeed', {
  id: ID,
  name: NAME,
  feedFor: choice('Fed for', ['meat', 'layers']),
  strainIds: list('Strains', rowOf('strains'), 20, 'ids'),
  stages: table('NeedStage', {
    id: ID,
    name: NAME,
    is: STAGE,
    phaseIds: list('Phases', ID, 10, 'ids'),
    needs: nested(
      'Needs',
      row('Needs', { ...PERCENTS, energyKcalPerKg: KCAL, threoninePercent: maybe(PERCENT) }),
    ),
    ...SOURCED,
  }),
});
