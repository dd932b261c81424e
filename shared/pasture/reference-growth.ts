import type { GrassWeather } from './grass-weather.js';
import { newOpen, noneOpen, PlotGround, putMean, type OpenGrowth } from './open-growth.js';
import { digestibleShare, growOpen, massOf, takeOff, winterStand } from './sward.js';
import { drawsShareOf, FALLS_WET, type GrassGround, type GrassKind } from './sward-day.js';

/** Plots are cut a week apart from each other. */
export const PHASES = 4;
const CUT_EVERY_DAYS = 28;
/** What stands at 5 cm: leaf and dead leaf of groups A and B. Jouven et al. 2006, table 2. */
const STUBBLE_KG_PER_HA = 675;

/** Growth of a place as trials measure it, by day. */
export interface ReferenceGrowth {
  /** What is cut, spread over the weeks in which it grew, kg/ha a day. */
  readonly kgPerHa: Float64Array;
  /** Share of what stands above the stubble that can be digested, mean of the plots. */
  readonly digestibleShare: Float64Array;
  readonly open: OpenGrowth;
  /** Of the reference evapotranspiration, the share that leaves draw, by day and plot. */
  readonly drawsShare: Float64Array;
  /** What the ground of each plot holds before a day, mm. */
  readonly waterBefore: (day: number) => Float64Array;
}

/**
 * Growth by day of a place: the mean of plots that are cut at 5 cm in turn, each every four weeks,
 * in the years of the weather by turns, as the growth of swards is measured (Corrall and Fenlon 1978, from memory). They stand for
 * grass that is grazed as it should be: one to four weeks old; so do they for what the soil under it
 * holds, which is wet on the first day.
 */
export function referenceGrowth(
  kind: GrassKind,
  ground: GrassGround,
  weather: GrassWeather,
): ReferenceGrowth {
  const { nitrogenIndex, waterHeldMm, growthFactor, coverShare } = ground;
  const key = [nitrogenIndex, waterHeldMm, growthFactor, coverShare].join();
  let ofWeather = knownGrowth.get(weather);
  if (!ofWeather) knownGrowth.set(weather, (ofWeather = new WeakMap()));
  let ofKind = ofWeather.get(kind);
  if (!ofKind) ofWeather.set(kind, (ofKind = new Map()));
  let growth = ofKind.get(key);
  if (!growth) ofKind.set(key, (growth = grownOnPlots(kind, ground, weather)));
  return growth;
}

/** Paddocks of the same grass and ground grow alike, in every plan of the same weather. */
const knownGrowth = new WeakMap<GrassWeather, WeakMap<GrassKind, Map<string, ReferenceGrowth>>>();

function grownOnPlots(
  kind: GrassKind,
  ground: GrassGround,
  weather: GrassWeather,
): ReferenceGrowth {
  const n = weather.days.length;
  const many = Math.max(PHASES, weather.years.length);
  const kgPerHa = new Float64Array(n);
  const digestible = new Float64Array(n);
  const drawsShare = new Float64Array(n * many);
  const waterMm = new Float64Array(n * many);
  const open = newOpen(n);
  const plots = new PlotGround(kind, ground.waterHeldMm, weather, many);
  const states = Array.from({ length: many }, () => winterStand(STUBBLE_KG_PER_HA));
  const cutLast = new Int16Array(many);
  for (let day = 0; day < n; day++) {
    const sum = noneOpen();
    waterMm.set(plots.waterMm, day * many);
    for (let p = 0; p < many; p++) {
      const state = states[p]!;
      const draws = drawsShareOf(kind, state);
      drawsShare[day * many + p] = draws;
      // Light use was fitted with dead leaf that falls as printed, wherever plots lie: what a dry
      // month leaves hanging from the one before has not grown in it.
      growOpen(kind, ground, weather, state, day, plots.goOn(p, day, draws, sum), FALLS_WET);
      digestible[day]! += digestibleShare(kind, state, STUBBLE_KG_PER_HA) / many;
      const isCut = day % CUT_EVERY_DAYS === ((p % PHASES) * CUT_EVERY_DAYS) / PHASES;
      if (!isCut && day !== n - 1) continue;
      const cut = Math.max(0, massOf(state) - STUBBLE_KG_PER_HA);
      takeOff(state, cut, STUBBLE_KG_PER_HA);
      const from = cutLast[p]!;
      for (let i = from; i <= day; i++) kgPerHa[i]! += cut / (day + 1 - from) / many;
      cutLast[p] = day + 1;
    }
    putMean(open, day, sum, plots);
  }
  return {
    ...{ kgPerHa, digestibleShare: digestible, open, drawsShare },
    waterBefore: (day) => waterMm.subarray(day * many, (day + 1) * many),
  };
}
