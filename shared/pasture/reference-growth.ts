import {
  digestibleShare,
  fullGrowth,
  growOn,
  massOf,
  takeOff,
  winterStand,
  type GrassWeather,
} from './sward.js';
import type { GrassGround, GrassKind } from './sward-day.js';

const PLOTS = 4;
const CUT_EVERY_DAYS = 28;
/** What stands at 5 cm: leaf and dead leaf of groups A and B. Jouven et al. 2006, table 2. */
const STUBBLE_KG_PER_HA = 675;

/** Growth of a place as trials measure it, by day. */
export interface ReferenceGrowth {
  /** What is cut, spread over the weeks in which it grew, kg/ha a day. */
  readonly kgPerHa: Float64Array;
  /** Share of what stands above the stubble that can be digested, mean of the plots. */
  readonly digestibleShare: Float64Array;
}

/**
 * Growth by day of a place: the mean of four plots that are cut at 5 cm in turn, each every four
 * weeks, as the growth of swards is measured (Corrall and Fenlon 1978, from memory). They stand for
 * grass that is grazed as it should be: one to four weeks old.
 */
export function referenceGrowth(
  kind: GrassKind,
  ground: GrassGround,
  weather: GrassWeather,
): ReferenceGrowth {
  const n = weather.days.length;
  const kgPerHa = new Float64Array(n);
  const digestible = new Float64Array(n);
  const sward = { kind, ground, weather };
  const full = fullGrowth(sward);
  for (let plot = 0; plot < PLOTS; plot++) {
    const state = winterStand(STUBBLE_KG_PER_HA, ground.waterHeldMm);
    const first = Math.round((plot * CUT_EVERY_DAYS) / PLOTS);
    let last = 0;
    for (let day = 0; day < n; day++) {
      growOn(sward, state, day, full);
      digestible[day]! += digestibleShare(kind, state, STUBBLE_KG_PER_HA) / PLOTS;
      if (day % CUT_EVERY_DAYS !== first && day !== n - 1) continue;
      const cut = Math.max(0, massOf(state) - STUBBLE_KG_PER_HA);
      takeOff(state, cut, STUBBLE_KG_PER_HA);
      for (let i = last; i <= day; i++) kgPerHa[i]! += cut / (day + 1 - last) / PLOTS;
      last = day + 1;
    }
  }
  return { kgPerHa, digestibleShare: digestible };
}
