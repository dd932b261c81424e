import { isStarted } from '../farm/batch-origin.js';
import type { Batch } from '../farm/batch.js';
import type { HatchSpecies } from '../tables/hatching-table.js';
import { rowById, type Tables } from '../tables/tables.js';

/** What the young of a kind of poultry are called, and the sexes of them. */
export type BirdWords = Pick<HatchSpecies, 'young' | 'youngOne' | 'male' | 'female'>;

/** The words for the birds of a batch: its young are what they are when they come. */
export const birdWordsOf = (
  { strains, hatching }: Pick<Tables, 'strains' | 'hatching'>,
  { strainId, origin }: Pick<Batch, 'strainId' | 'origin'>,
): BirdWords => {
  const { young, youngOne, male, female } = rowById(
    hatching.species,
    rowById(strains, strainId).species,
  );
  return isStarted({ origin })
    ? { young: `${female}s`, youngOne: female, male, female }
    : { young, youngOne, male, female };
};

const CHICKS = /\bchick(s?)\b/gi;

/** A text that is written of chicks, as it is said of birds of another kind. */
export const saidOf = (
  { young, youngOne }: Pick<BirdWords, 'young' | 'youngOne'>,
  text: string,
): string =>
  text.replace(CHICKS, (chick: string, many: string) => {
    const word = many === '' ? youngOne : young;
    return chick.startsWith('C') ? capital(word) : word;
  });

export const capital = (word: string): string => word.replace(/^./, (c) => c.toUpperCase());
