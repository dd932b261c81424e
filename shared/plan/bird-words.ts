import type { HatchSpecies } from '../tables/hatching-table.js';
import { rowById, type Tables } from '../tables/tables.js';

/** What the young of a kind of poultry are called. */
export type BirdWords = Pick<HatchSpecies, 'young' | 'youngOne'>;

/** The words for the birds of a batch. */
export const birdWordsOf = (
  { strains, hatching }: Pick<Tables, 'strains' | 'hatching'>,
  strainId: string,
): BirdWords => rowById(hatching.species, rowById(strains, strainId).species);

const CHICKS = /\bchick(s?)\b/gi;

/** A text that is written of chicks, as it is said of birds of another kind. */
export const saidOf = ({ young, youngOne }: BirdWords, text: string): string =>
  text.replace(CHICKS, (chick: string, many: string) => {
    const word = many === '' ? youngOne : young;
    return chick.startsWith('C') ? capital(word) : word;
  });

export const capital = (word: string): string => word.replace(/^./, (c) => c.toUpperCase());
