import type { Formula } from '../explain/formula.js';
import type { Spread } from '../explain/quantity.js';
import type { Paddock } from '../farm/paddock.js';
import type { Forage } from '../tables/pasture-tables.js';

export const forageMassFormulas = {
  mass: {
    id: 'forage-mass',
    title: 'Forage on hand',
    words:
      'Height times the dry matter in a centimeter of it, by kind and density of the stand. Measured with the hand flat on the sward, not the tallest leaf.',
    symbols: 'W = h·m',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  area: {
    id: 'paddock-area-given',
    title: 'Area of the paddock',
    words: 'As you gave it, or from its outline on the ellipsoid.',
    symbols: 'A = as given, or from the outline',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  legumes: {
    id: 'legumes-in-stand',
    title: 'Legumes in the stand',
    words:
      'The usual share of clover and alfalfa in a stand of that kind; yours may differ, and it rises in summer. The more of it, the greater the danger of bloat.',
    symbols: 's = as usual for the kind',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  grownHeight: {
    id: 'height-grown-on',
    title: 'Height on the first day of the plan',
    words: 'The last reading, or the residual at the last grazing, grown on day by day.',
    symbols: 'h = W(t) ÷ m',
    sources: ['JOUVEN_2006'],
    mark: 'computed',
  },
  height: {
    id: 'height-of-standing',
    title: 'Height of the grass',
    words:
      'Forage on hand over the dry matter in a centimeter of it, which differs from stand to stand within the printed range.',
    symbols: 'h = W ÷ m',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Dry matter in a centimeter of a paddock's height, kg/ha: measured by the user, else the table's. */
export const massPerCm = (paddock: Paddock, forage: Forage): number =>
  paddock.massKgPerHaCm ?? forage.massKgPerHaCm[paddock.stand].value;

/** Heights that a standing mass can have, by a range of the dry matter in a centimeter. */
export const heightSpread = (
  massKgPerHa: number,
  kgPerHaCm: Spread | undefined,
): Spread | undefined =>
  kgPerHaCm && {
    low: massKgPerHa / kgPerHaCm.high,
    high: massKgPerHa / kgPerHaCm.low,
    because: `how much dry matter a height stands for: ${kgPerHaCm.because}`,
  };
