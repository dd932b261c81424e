import type { Sourced } from '../explain/formula.js';

/** What feed holds and birds need, as tables print it: kcal a kg, and percent of the feed as fed. */
export const NUTRIENT_KEYS = [
  'energyKcalPerKg',
  'proteinPercent',
  'lysinePercent',
  'methioninePercent',
  'methionineCystinePercent',
  'threoninePercent',
  'tryptophanPercent',
  'calciumPercent',
  'phosphorusPercent',
  'sodiumPercent',
  'fiberPercent',
] as const;
export type Nutrient = (typeof NUTRIENT_KEYS)[number];

/** Phosphorus is what birds can use of it. */
export type Composition = Readonly<Record<Nutrient, number>>;

/** How old birds are, as far as limits of ingredients go by it. */
export const STAGES_OF_LIFE = ['chick', 'grower', 'finisher', 'layer'] as const;
export type StageOfLife = (typeof STAGES_OF_LIFE)[number];

/** No more of an ingredient than this, and why. */
export interface IngredientLimit extends Sourced {
  readonly stages: readonly StageOfLife[];
  readonly percent: number;
  readonly because: string;
}

export interface Ingredient extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly what: 'grain' | 'protein' | 'fat' | 'mineral' | 'additive' | 'premix';
  readonly holds: Composition;
  readonly limits: readonly IngredientLimit[];
}

/** What birds of one age need in a feed of the energy that stands with it. */
export interface NeedStage extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly is: StageOfLife;
  /** Phases of the feeding programs that it stands for. */
  readonly phaseIds: readonly string[];
  readonly needs: Readonly<Record<NeededAlways, number>> & {
    /** Left out where no table prints it. */
    readonly threoninePercent?: number;
  };
}
type NeededAlways = Exclude<Nutrient, 'fiberPercent' | 'threoninePercent'>;

export interface BirdsToFeed {
  readonly id: string;
  readonly name: string;
  readonly feedFor: 'meat' | 'layers';
  readonly strainIds: readonly string[];
  readonly stages: readonly NeedStage[];
}
