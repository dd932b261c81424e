import type { Life } from './life.js';

/** Birds told to have gone alive before the last day, which ate of the feed as well. */
export interface GoneBefore {
  readonly birds: number;
  /** What they weighed, as far as the growth table says, kg. */
  readonly kg: number;
}

/** Those that were processed, sold or given away on days before the last one; none where none was told. */
export function goneBefore({ told, days, meanWeightKg }: Life): GoneBefore {
  if (!told) return { birds: 0, kg: 0 };
  const end = Math.min(told.left.length, days - 1);
  let birds = 0;
  let kg = 0;
  for (let day = 0; day < end; day++) {
    const went = told.left[day]! - birds;
    birds += went;
    kg += went * meanWeightKg[day]!;
  }
  return { birds, kg };
}
