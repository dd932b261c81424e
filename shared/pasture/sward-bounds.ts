import type { Sward } from './sward.js';

/** Most a stand could grow between two days, kg/ha: at half of its ceiling on every one of them. */
export const relativePeak = (sward: Sward, from: number, to: number): number =>
  ((sward.rateSum[to]! - sward.rateSum[from]!) * sward.ceilingKgPerHa) / 4;
