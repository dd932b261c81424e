import type { Composition, Nutrient } from '../tables/ration-tables.js';
import type { Unit } from '../units/unit.js';

/** How what feed holds is called, in the order in which it is shown. */
export const NUTRIENT_NAMES: Readonly<Record<Nutrient, string>> = {
  energyKcalPerKg: 'Energy',
  proteinPercent: 'Protein',
  lysinePercent: 'Lysine',
  methioninePercent: 'Methionine',
  methionineCystinePercent: 'Methionine and cystine',
  threoninePercent: 'Threonine',
  tryptophanPercent: 'Tryptophan',
  calciumPercent: 'Calcium',
  phosphorusPercent: 'Usable phosphorus',
  sodiumPercent: 'Sodium',
  fiberPercent: 'Fiber',
};

/** The unit of a nutrient's figures. */
export const unitOf = (nutrient: Nutrient): Unit =>
  nutrient === 'energyKcalPerKg' ? 'kcalPerKg' : 'percent';

/** What a mix holds of a nutrient, in the unit of the tables, by the shares of its parts. */
export const heldBy = (
  parts: readonly { readonly share: number; readonly holds: Composition }[],
  nutrient: Nutrient,
): number => parts.reduce((sum, { share, holds }) => sum + share * holds[nutrient], 0);
