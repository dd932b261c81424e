import { regrown } from './regrowth.js';

/** One paddock over a season, all that does not depend on who grazes it. Day 0 is the first day. */
export interface Sward {
  readonly areaHa: number;
  readonly ceilingKgPerHa: number;
  /** Relative growth rate of each day. */
  readonly rate: Float64Array;
  /** Rates summed up to the start of each day; one longer than the season. */
  readonly rateSum: Float64Array;
  /** Share of the standing mass that dies off in each day, outside the growing season. */
  readonly loss: Float64Array;
  /** Logarithms of what loss leaves, summed up to the start of each day. */
  readonly lossSum: Float64Array;
  /** First later day on which growth turns to loss or loss to growth. */
  readonly turnDay: Int16Array;
  readonly residualKgPerHa: number;
  readonly turnInKgPerHa: number;
  readonly rankKgPerHa: number;
  readonly minRestDays: Int16Array;
  readonly isClosed: Uint8Array;
  /** Days on which it is mown, at the start of the day, in order. */
  readonly cutDays: readonly number[];
  readonly stubbleKgPerHa: number;
  readonly startKgPerHa: number;
  /** Day after the last grazing before the season, negative; undefined when not known. */
  readonly lastGrazedEnd: number | undefined;
}

export type PlainSward = Omit<Sward, 'rateSum' | 'lossSum' | 'turnDay'>;

/**
 * Adds the running sums that let undisturbed growth be looked up instead of stepped through.
 *
 * On a day with loss nothing grows.
 */
export function swardOf(own: PlainSward): Sward {
  const n = own.rate.length;
  const rate = own.rate.map((r, i) => (0 < own.loss[i]! ? 0 : r));
  const rateSum = new Float64Array(n + 1);
  const lossSum = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    rateSum[i + 1] = rateSum[i]! + rate[i]!;
    lossSum[i + 1] = lossSum[i]! + Math.log(1 - own.loss[i]!);
  }
  const turnDay = new Int16Array(n).fill(n);
  for (let i = n - 2; 0 <= i; i--) {
    turnDay[i] = 0 < own.loss[i]! === 0 < own.loss[i + 1]! ? turnDay[i + 1]! : i + 1;
  }
  return { ...own, rate, rateSum, lossSum, turnDay };
}

/** Mass at the start of day `to` of a stand left alone since the start of day `from`, kg/ha. */
export function massOn(sward: Sward, massKgPerHa: number, from: number, to: number): number {
  let mass = massKgPerHa;
  let day = from;
  for (const cut of sward.cutDays) {
    if (cut < from || to < cut) continue;
    mass = Math.min(undisturbed(sward, mass, day, cut), sward.stubbleKgPerHa);
    day = cut;
  }
  return undisturbed(sward, mass, day, to);
}

function undisturbed(sward: Sward, massKgPerHa: number, from: number, to: number): number {
  const { rateSum, lossSum, turnDay, ceilingKgPerHa, loss } = sward;
  let mass = massKgPerHa;
  for (let day = from; day < to;) {
    const end = Math.min(to, turnDay[day]!);
    mass =
      0 < loss[day]!
        ? mass * Math.exp(lossSum[end]! - lossSum[day]!)
        : regrown(mass, rateSum[end]! - rateSum[day]!, ceilingKgPerHa);
    day = end;
  }
  return mass;
}

export interface GrazedDay {
  /** Mass left in the evening, kg/ha. */
  readonly massKgPerHa: number;
  readonly eatenKgPerHa: number;
  /** Trodden down, dunged on and refused. */
  readonly trampledKgPerHa: number;
}

/**
 * One day of grazing after the day's growth. Nothing is taken below the residual.
 *
 * @param demandKgPerHa what the herd would eat of this paddock in the day
 * @param harvestShare share of what disappears that is eaten, 0 to 1
 */
export function grazeDay(
  massKgPerHa: number,
  residualKgPerHa: number,
  demandKgPerHa: number,
  harvestShare: number,
): GrazedDay {
  const available = Math.max(0, massKgPerHa - residualKgPerHa);
  const removed = Math.min(available, demandKgPerHa / harvestShare);
  const eatenKgPerHa = removed * harvestShare;
  return {
    massKgPerHa: massKgPerHa - removed,
    eatenKgPerHa,
    trampledKgPerHa: removed - eatenKgPerHa,
  };
}
