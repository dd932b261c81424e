import type { Formula } from '../explain/formula.js';

export const snowFormulas = {
  snow: {
    id: 'snow-on-the-ground',
    title: 'Snow on the ground',
    words:
      'What falls on a day whose mean lies below a mark lies as snow. For each degree that a day’s mean lies above freezing a few millimeters of its water melt and soak in. It is followed from the warmest day of the summer before, where no record says how the winter was, through twenty winters as they come there: what lies is the middle of them. Drifts, shade and a south slope are not known.',
    symbols: 'S = S₋₁ + P_snow − min(S₋₁ + P_snow, m·max(0, T))',
    sources: ['NWS_SNOW', 'NEH_SNOWMELT'],
    mark: 'from-memory',
  },
} satisfies Record<string, Formula>;

/** When rain is snow, and how fast that melts. */
interface SnowTable {
  readonly belowMeanC: number;
  readonly meltMmPerC: number;
}

/** Water of the snow that lies at the end of each day, and what comes to the soil in it, mm. */
interface SnowCover {
  readonly snowMm: Float64Array;
  readonly toSoilMm: Float64Array;
}

/**
 * Snow by degree-days: what lies, and the rain and melt that reach the soil. None lies where somebody
 * saw that.
 *
 * @param liesMm water of the snow that lies before the first day
 *
 * Left out: rain on snow, wind, sun and the cold that a deep pack holds.
 * Source: degree-day method, National Engineering Handbook 630, chapter 11; the mark between rain and
 * snow, National Weather Service. Open fields of Finland melted a quarter faster (Kuusisto 1980).
 */
export function snowCover(
  days: {
    readonly minC: ArrayLike<number>;
    readonly maxC: ArrayLike<number>;
    readonly rainMm: ArrayLike<number>;
  },
  { belowMeanC, meltMmPerC }: SnowTable,
  {
    isSeenClear = () => false,
    liesMm = 0,
  }: { readonly isSeenClear?: (day: number) => boolean; readonly liesMm?: number } = {},
): SnowCover {
  const n = days.rainMm.length;
  const snowMm = new Float64Array(n);
  const toSoilMm = new Float64Array(n);
  let lies = liesMm;
  for (let day = 0; day < n; day++) {
    const meanC = (days.minC[day]! + days.maxC[day]!) / 2;
    const rainMm = days.rainMm[day]!;
    const isSnow = meanC < belowMeanC;
    if (isSeenClear(day)) lies = 0;
    if (isSnow) lies += rainMm;
    const melts = Math.min(lies, meltMmPerC * Math.max(0, meanC));
    lies -= melts;
    snowMm[day] = lies;
    toSoilMm[day] = melts + (isSnow ? 0 : rainMm);
  }
  return { snowMm, toSoilMm };
}
