import type { HowItWent } from './how-it-went.js';

/** One figure of several batches together. */
export interface SumOfBatches {
  readonly value: number;
  /** Of how many batches it is known. */
  readonly of: number;
}

/** Batches of a breed that are over, added up: of one year, or of all of them. */
export interface BreedSum {
  readonly strain: string;
  readonly purpose: HowItWent['purpose'];
  /** The breed, with what it is kept for where it is kept for both. */
  readonly name: string;
  /** The calendar year in which they came; left out in the sum over all years. */
  readonly year?: number;
  readonly batches: number;
  readonly came?: SumOfBatches;
  /** Birds that were lost, and what share of those that came, of batches of which both are known. */
  readonly lost?: SumOfBatches;
  readonly lostShare?: SumOfBatches;
  /** Live weight and age at processing, of the average bird, kg and days. */
  readonly liveEach?: SumOfBatches;
  readonly age?: SumOfBatches;
  /** Feed for one of live weight: all feed over all weight. */
  readonly conversion?: SumOfBatches;
  /** Minor units of money for a kilogram of live weight: all cost over all weight. */
  readonly costLive?: SumOfBatches;
  /** Hours of jobs that were timed, and those they had been reckoned at. */
  readonly hours?: SumOfBatches;
  readonly reckonedHours?: SumOfBatches;
}

/**
 * How the batches of each breed went, years side by side: a sum of each year in which some came, and
 * one of all years where there are several. Each figure is of the batches of which it is known, so
 * that a batch nobody weighed makes the others neither lighter nor dearer.
 *
 * @returns breeds by name, years one after another, the sum of all after them
 */
export function byBreed(went: readonly HowItWent[]): BreedSum[] {
  const over = went.filter(({ isOver }) => isOver);
  const breeds = grouped(over, ({ strain, purpose }) => `${strain}/${purpose}`);
  return [...breeds]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, batches]) => {
      const years = grouped(batches, ({ arrivedOn }) => arrivedOn.slice(0, 4));
      const { strain, purpose } = batches[0]!;
      const isBoth = breeds.has(`${strain}/${purpose === 'meat' ? 'layers' : 'meat'}`);
      const name = isBoth ? `${strain}, ${KEPT_FOR[purpose]}` : strain;
      const each = [...years]
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([year, ofYear]) => ({ name, ...sumOf(ofYear), year: Number(year) }));
      return 1 < each.length ? [...each, { name, ...sumOf(batches) }] : each;
    });
}

const KEPT_FOR = { meat: 'for meat', layers: 'for eggs' } as const;

function sumOf(batches: readonly HowItWent[]): Omit<BreedSum, 'name'> {
  const { strain, purpose } = batches[0]!;
  const actual = ({ lines }: HowItWent, id: string): number | undefined =>
    lines.find((line) => line.id === id)?.actual;
  /** Of the batches of which all of these are known: their figures, in this order. */
  const known = (...ids: string[]): number[][] =>
    batches
      .map((batch) => ids.map((id) => actual(batch, id)))
      .filter((figures): figures is number[] => figures.every((each) => each !== undefined));
  const sum = (
    rows: readonly number[][],
    of: (row: number[]) => number,
  ): SumOfBatches | undefined =>
    rows.length === 0 ? undefined : { value: total(rows.map(of)), of: rows.length };
  /** One sum over another. */
  const over = (
    rows: readonly number[][],
    upper: (row: number[]) => number,
    lower: (row: number[]) => number,
  ): SumOfBatches | undefined => {
    const below = total(rows.map(lower));
    return below === 0 ? undefined : { value: total(rows.map(upper)) / below, of: rows.length };
  };
  const timed = batches.flatMap(({ lines }) => {
    const { actual: logged, planned } = lines.find(({ id }) => id === 'hours') ?? {};
    return logged === undefined || planned === undefined ? [] : [[logged, planned]];
  });
  const figures = {
    came: sum(known('came'), ([came]) => came!),
    lost: sum(known('lost'), ([lost]) => lost!),
    lostShare: over(
      known('lost', 'came'),
      ([lost]) => lost!,
      ([, came]) => came!,
    ),
    liveEach: over(known('live-each', 'processed'), product, second),
    age: over(known('age', 'processed'), product, second),
    // What a batch ate or cost over its weight, times that weight, is what it ate or cost.
    conversion: over(known('feed', 'conversion'), ([feed]) => feed!, quotient),
    costLive: over(known('cost', 'cost-live'), ([cost]) => cost!, quotient),
    hours: sum(timed, ([logged]) => logged!),
    reckonedHours: sum(timed, second),
  };
  const isKnown = ([, figure]: [string, SumOfBatches | undefined]): boolean => figure !== undefined;
  return {
    ...{ strain, purpose, batches: batches.length },
    ...Object.fromEntries(Object.entries(figures).filter(isKnown)),
  };
}

const product = ([a, b]: number[]): number => a! * b!;
const second = ([, b]: number[]): number => b!;
const quotient = ([a, b]: number[]): number => (b === 0 ? 0 : a! / b!);
const total = (numbers: readonly number[]): number => numbers.reduce((sum, each) => sum + each, 0);

function grouped<T>(all: readonly T[], by: (each: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const each of all) groups.set(by(each), [...(groups.get(by(each)) ?? []), each]);
  return groups;
}
