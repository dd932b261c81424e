import { fold } from './fold.js';

/** A town that may be meant, as it was typed, and where it is to lie: folded, and maybe empty. */
export interface AskedPlace {
  readonly name: string;
  readonly where: string;
}

/**
 * Ways to read what somebody typed as a town and where it lies, the most likely first: what stands
 * behind a comma is where; without one, as few of the last words as make sense.
 *
 * "Walton, Delaware County, NY 13856" is Walton in "ny"; "Walton New York" is first a town of that
 * whole name, then Walton New in "york", then Walton in "new york".
 */
export function askedPlaces(given: string): AskedPlace[] {
  const [name = '', ...rest] = given.split(',').map((part) => withoutPostcode(part.trim()));
  const where = rest.map(fold).filter((part) => part !== '' && !COUNTY.test(part));
  if (where.length > 0) return [{ name, where: where.join(' ') }];
  const words = name.split(/\s+/);
  return words.map((_, k) => {
    const first = words.length - k;
    return { name: words.slice(0, first).join(' '), where: fold(words.slice(first).join(' ')) };
  });
}

/** A county is more than the list of towns knows; the state behind it says enough. */
const COUNTY = /(^| )(county|co|township|twp)$/;

const withoutPostcode = (text: string): string => text.replace(/ ?\b\d{4,}$/, '');

/** Ends of a name count from here on, so that "new y" finds New York and "in" is not Inverness. */
const LEAST_LETTERS = 3;

/** Whether one of the ways to say where a town lies is what was asked for, or begins with it. */
export const isSaid = (where: string, ways: readonly string[]): boolean =>
  where === '' ||
  ways.some((way) => way === where || (LEAST_LETTERS <= where.length && way.startsWith(where)));
