import type { Formula } from '../explain/formula.js';
import type { PastureTable } from '../tables/pasture-tables.js';

export const recalibrateFormulas = {
  factor: {
    id: 'farm-growth-factor',
    title: 'Your growth against the model',
    words: 'What your own readings make of the growth of each kind of paddock, by its area.',
    symbols: 'f = Σ (A × f_paddocks) ÷ Σ A',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  group: {
    id: 'paddock-growth-factor',
    title: 'Growth of paddocks alike against the model',
    words:
      'Growth between your readings over the growth expected in the same days, in paddocks of the same grass, soil, fertility and stand. The more growth was expected beside what a height can be misread by, the more a reading counts. Imagined readings that agree with the model are averaged in: half say that the farm grows as the model has it, half that these paddocks grow as the farm does, so that readings of other paddocks count for something here too.',
    symbols:
      'w = E² ÷ (E² + (s ÷ c)²); r = Σ (w × measured ÷ E) ÷ Σ w; f = (n_model × f_farm + Σ w × r) ÷ (n_model + Σ w)',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  off: {
    id: 'reading-against-plan',
    title: 'How far off the plan was',
    words: 'The height read, less what had been expected for that day, as a share of it.',
    symbols: '(h_read − h_expected) ÷ h_expected',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
} satisfies Record<string, Formula>;

export interface GrowthPair {
  readonly measuredKgPerHa: number;
  readonly expectedKgPerHa: number;
}

/** Of paddocks of one kind: how their growth stands to the model's. */
export interface GroupGrowth {
  readonly factor: number;
  readonly readings: number;
  /** How many readings in full growth its readings count for. */
  readonly weight: number;
  /** What its readings alone would say. */
  readonly ownRatio: number | undefined;
}

export interface FarmGrowth {
  /** What the readings of all kinds say of the farm, which one without readings goes by. */
  readonly farm: number;
  readonly groups: readonly GroupGrowth[];
}

type Weight = PastureTable['readingWeight'];

/**
 * Factors on growth from the farm's own readings: 1 without any, drawn slowly toward what they say.
 *
 * Of two levels, each with half of what is known beforehand: a farm differs from the model, and kinds
 * of paddock from their farm. With one kind of paddock they come to one level with all of it. As
 * growth is compared and not its ratio, days in which hardly any was expected count as well: where
 * much grew then, that says something, and where little did, next to nothing.
 */
export function growthFactors(
  table: Weight,
  groups: readonly (readonly GrowthPair[])[],
): FarmGrowth {
  // Variances of two levels add, and so each counts for twice the readings of both.
  const levelReadings = 2 * table.priorReadings;
  const read = groups.map((pairs) => evidenceOf(table, pairs));
  let [sum, weights] = [levelReadings, levelReadings];
  for (const { weight, ratios } of read) {
    const share = levelReadings / (weight + levelReadings);
    sum += ratios * share;
    weights += weight * share;
  }
  const farm = clamp(sum / weights, table);
  return {
    farm,
    groups: read.map(({ weight, ratios }, g) => ({
      factor: clamp((levelReadings * farm + ratios) / (levelReadings + weight), table),
      readings: groups[g]!.length,
      weight,
      ownRatio: weight === 0 ? undefined : ratios / weight,
    })),
  };
}

/** Sum of the weights of readings, and of the weighted ratios of what was measured to what was expected. */
function evidenceOf(
  { readingErrorKgPerHa, growthSpread, lowFactor, highFactor }: Weight,
  pairs: readonly GrowthPair[],
): { weight: number; ratios: number } {
  const halfWeight = readingErrorKgPerHa / growthSpread;
  let [weight, ratios] = [0, 0];
  for (const { measuredKgPerHa, expectedKgPerHa } of pairs) {
    // One that no growth and no misreading explains counts as the furthest that they do.
    const low = lowFactor * expectedKgPerHa - readingErrorKgPerHa;
    const high = highFactor * expectedKgPerHa + readingErrorKgPerHa;
    const measured = Math.min(high, Math.max(low, measuredKgPerHa));
    const variance = expectedKgPerHa ** 2 + halfWeight ** 2;
    weight += expectedKgPerHa ** 2 / variance;
    ratios += (expectedKgPerHa * measured) / variance;
  }
  return { weight, ratios };
}

/** A stand that fell by more than a height can be misread by was grazed, mown or trodden. */
export const isGrowth = (
  { readingErrorKgPerHa, lowFactor }: Weight,
  { measuredKgPerHa, expectedKgPerHa }: GrowthPair,
): boolean =>
  0 < measuredKgPerHa || lowFactor * expectedKgPerHa - readingErrorKgPerHa <= measuredKgPerHa;

const clamp = (ratio: number, { lowFactor, highFactor }: Weight): number =>
  Math.min(highFactor, Math.max(lowFactor, ratio));
