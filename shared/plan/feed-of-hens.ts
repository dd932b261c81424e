import type { Batch } from '../farm/batch.js';
import { eggWeightG, layerEnergyKcal2005, layerEnergyKcalNrc1994 } from '../poultry/lay.js';
import type { Climate, expectedWeather } from '../weather/climate.js';
import type { LayDays } from './lay-days.js';
import type { Life } from './life.js';

/** Air temperatures that the layer energy equation is read between, °C. */
export const LAYER_AIR_C = { min: 10, max: 34 };

/** Feed of laying hens over some days, by both equations, kg, waste included. */
interface FeedOfHens {
  readonly kg: Float64Array;
  readonly kgBy2005: number;
  readonly daysOutside: number;
}

/** What the feed of hens is worked out from. */
interface HensKept {
  readonly batch: Batch;
  readonly life: Life;
  readonly lay: LayDays | undefined;
  readonly weather: ReturnType<typeof expectedWeather>;
  readonly climate: Climate;
}

/**
 * Feed of the hens on the days from one to another, the second not included, kg a day. Past the end
 * of the plan they keep their weight, and the air is the usual one of the date.
 */
export function feedOfHens(kept: HensKept, from: number, to: number): FeedOfHens {
  const { life, batch } = kept;
  const lay = kept.lay!;
  const energyKcalPerKg = life.program.phases.at(-1)!.energyKcalPerKg;
  // What a growth table's birds eat at home says nothing of hens; a factor that was typed does.
  const own = (batch.feedFactor ?? 1) * (life.hensFeed?.factor ?? 1);
  const factor = ((1 + life.wasteShare) * own) / energyKcalPerKg;
  const kg = new Float64Array(to - from);
  let [kgBy2005, daysOutside] = [0, 0];
  for (let i = from; i < to; i++) {
    const meanC = airOn(kept, i);
    const airC = Math.min(LAYER_AIR_C.max, Math.max(LAYER_AIR_C.min, meanC));
    if (airC !== meanC) daysOutside++;
    const at = Math.min(i, life.days - 1);
    const hen = {
      weightKg: life.weightKg.female[at]!,
      gainGPerDay:
        at < i ? 0 : Math.max(0, (life.weightKg.female[i]! - life.weightKg.female[i - 1]!) * 1000),
      eggMassGPerDay: lay.planned[i]! * eggWeightG(lay.curve, (life.arrivalAgeDays + i) / 7),
      airC,
    };
    const flock = lay.hens[i]! * factor;
    kg[i - from] = layerEnergyKcalNrc1994(hen) * flock;
    kgBy2005 += layerEnergyKcal2005(hen) * flock;
  }
  return { kg, kgBy2005, daysOutside };
}

function airOn({ life, weather, climate, lay }: HensKept, day: number): number {
  if (day < life.days) return (weather.minC[day]! + weather.maxC[day]!) / 2;
  const slot = lay!.dayOfYear[day]! - 1;
  return (climate.meanMinC[slot]! + climate.meanMaxC[slot]!) / 2;
}
