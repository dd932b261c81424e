import type { GrassWeather } from './grass-weather.js';
import { deadGrassFalls } from './dead-grass.js';
import { fullGrowthKg, type GrassKind } from './sward-day.js';
import { waterAfter, waterShare } from './water-share.js';

/** What a kind of grass on a ground would grow by day if its leaves caught all light. */
export interface OpenGrowth {
  /** With ample nitrogen, and as soil water lets it: mean of the years of the weather, kg/ha. */
  readonly kgPerHa: Float64Array;
  /** Share that soil water leaves of it. */
  readonly wetShare: Float64Array;
  /** Of the rates at which dead leaf and stem fall where it is wet, the shares that are left. */
  readonly leafFallsShare: Float64Array;
  readonly stemFallsShare: Float64Array;
}

const knownFull = new WeakMap<GrassWeather, WeakMap<GrassKind, Float64Array>>();

/**
 * Full growth of a kind of grass on each day of each year, year after year, kg/ha; kept, as many
 * paddocks share it.
 */
function fullGrowth(kind: GrassKind, weather: GrassWeather): Float64Array {
  let ofKind = knownFull.get(weather);
  if (!ofKind) knownFull.set(weather, (ofKind = new WeakMap()));
  let kg = ofKind.get(kind);
  if (kg) return kg;
  const n = weather.days.length;
  kg = new Float64Array(weather.years.length * n);
  const rests = kind.baseC < kind.wakesC ? restsOn(kind, weather) : undefined;
  weather.years.forEach(({ lightMJ, growthC, onsetC, temperatureSum }, year) => {
    for (let day = 0; day < n; day++) {
      if (rests?.[day] === 1) continue;
      kg![year * n + day] = fullGrowthKg(
        kind,
        lightMJ[day]!,
        growthC[day]!,
        onsetC[day]!,
        temperatureSum[day]!,
      );
    }
  });
  ofKind.set(kind, kg);
  return kg;
}

/**
 * Days on which grass that rests in winter does: it grows again when the soil has warmed to what wakes
 * it, and on until it is at its base. The averages say so: a warm spell wakes no grass for good.
 */
function restsOn({ baseC, wakesC }: GrassKind, { days }: GrassWeather): Uint8Array {
  let isAwake = false;
  return Uint8Array.from(days, ({ onsetC }) => {
    isAwake = (isAwake ? baseC : wakesC) < onsetC;
    return Number(!isAwake);
  });
}

/**
 * The ground under plots of one grass, day after day; plots take turns in the years of a weather.
 */
export class PlotGround {
  /** What it holds under each of them, mm. */
  readonly waterMm: Float64Array;
  private readonly full: Float64Array;

  /**
   * @param heldMm water between field capacity and wilting point
   * @param startMm what it holds before the first day, by plot; in turn where these are fewer
   */
  constructor(
    kind: GrassKind,
    private readonly heldMm: number,
    readonly weather: GrassWeather,
    readonly plots: number,
    startMm: ArrayLike<number> = [heldMm],
  ) {
    this.full = fullGrowth(kind, weather);
    this.waterMm = Float64Array.from({ length: plots }, (_, p) => startMm[p % startMm.length]!);
  }

  /**
   * A day of one plot: its ground becomes as wet as leaves leave it.
   *
   * @param drawsShare of the reference evapotranspiration, the share that its leaves draw
   * @param sum where growth is added up
   * @returns its growth with all light caught and ample nitrogen, kg/ha
   */
  goOn(plot: number, day: number, drawsShare: number, sum: OpenSum): number {
    const { waterMm, heldMm, full } = this;
    const { years, days, isRainKnown } = this.weather;
    const { referenceMm } = days[day]!;
    const year = plot % years.length;
    const { rainMm } = years[year]!;
    const mm = waterAfter(waterMm[plot]!, rainMm[day]!, referenceMm * drawsShare, heldMm);
    waterMm[plot] = mm;
    const share = isRainKnown ? waterShare(mm / heldMm, referenceMm) : 1;
    const fullKg = full[year * days.length + day]!;
    sum.kg += fullKg * share;
    sum.fullKg += fullKg;
    sum.wet += share;
    return fullKg * share;
  }
}

/** A day of all plots, added up. */
export interface OpenSum {
  kg: number;
  fullKg: number;
  wet: number;
}

export const noneOpen = (): OpenSum => ({ kg: 0, fullKg: 0, wet: 0 });

/** Growth of no day yet. */
export const newOpen = (days: number): OpenGrowth => ({
  kgPerHa: new Float64Array(days),
  wetShare: new Float64Array(days),
  leafFallsShare: new Float64Array(days),
  stemFallsShare: new Float64Array(days),
});

/**
 * Puts the mean of plots down as the growth of a day. Dead stems stand, as wet as the rain of the last
 * weeks makes them. Dead leaf lies near the ground: it falls no slower than soil lets the green grow,
 * else a dry month on good soil would leave more to graze than a usual one.
 */
export function putMean(
  into: OpenGrowth,
  day: number,
  { kg, fullKg, wet }: OpenSum,
  { plots, weather }: PlotGround,
): void {
  into.kgPerHa[day] = kg / plots;
  into.wetShare[day] = fullKg === 0 ? wet / plots : kg / fullKg;
  const stems = deadGrassFalls(weather.deadGrass, Math.min(1, weather.rainWetness[day]!));
  into.stemFallsShare[day] = stems;
  into.leafFallsShare[day] = Math.max(stems, wet / plots);
}

/**
 * Growth of the days from one on in the usual weather, where what the ground holds then is known.
 *
 * @param usual how the same grows where it is not
 * @param drawsShare of the reference evapotranspiration, the share that leaves draw, by day and plot
 */
export function openFrom(
  day: number,
  ground: PlotGround,
  usual: OpenGrowth,
  drawsShare: Float64Array,
): OpenGrowth {
  const { plots } = ground;
  const open = {
    kgPerHa: usual.kgPerHa.slice(),
    wetShare: usual.wetShare.slice(),
    leafFallsShare: usual.leafFallsShare.slice(),
    stemFallsShare: usual.stemFallsShare.slice(),
  };
  for (let i = day; i < open.kgPerHa.length; i++) {
    const sum = noneOpen();
    for (let p = 0; p < plots; p++) ground.goOn(p, i, drawsShare[i * plots + p]!, sum);
    putMean(open, i, sum, ground);
  }
  return open;
}
