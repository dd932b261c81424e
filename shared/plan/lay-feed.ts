import { eggWeightG, layerEnergyKcal2005, layerEnergyKcalNrc1994 } from '../poultry/lay.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';

/** Air temperatures that the layer energy equation is read between, °C. */
const LAYER_AIR_C = { min: 10, max: 34 };

/** Feed of laying hens over some days, by both equations, kg, waste included. */
interface FeedOfHens {
  readonly kg: Float64Array;
  readonly kgBy2005: number;
  readonly daysOutside: number;
}

/** Growing feed up to the first egg, then the hens' feed by their energy needs. */
export function feedWithLay(context: PlanContext): Found<Float64Array> {
  const { life, lay } = context;
  if (!lay) return found(life.flockFeedKg);
  const flockFeedKg = Float64Array.from(life.flockFeedKg);
  const { kg, kgBy2005, daysOutside } = feedOfHens(context, lay.firstDay, life.days);
  // Cockerels that are still there are fed as growing birds.
  kg.forEach((hens, k) => {
    const i = lay.firstDay + k;
    flockFeedKg[i] = hens + life.cockerelFeedKg[i]!;
  });
  const issues: PlanIssue[] = [];
  if (0 < daysOutside) {
    issues.push(
      issue(
        'note',
        'layer-feed-range',
        `On ${context.say(daysOutside, 'day')} of lay the average air is outside ${context.say(LAYER_AIR_C.min, 'degC')} to ${context.say(LAYER_AIR_C.max, 'degC')}, where the hens' energy equation is read; the nearest end is used. Hens in a cold coop eat more than shown.`,
      ),
    );
  }
  const allKg = kg.reduce((sum, each) => sum + each, 0);
  // Of hens that are all gone there is nothing to say.
  if (allKg === 0) return found(flockFeedKg, { issues });
  const other = Math.round((kgBy2005 / allKg - 1) * 100);
  issues.push(
    issue(
      'note',
      'layer-energy-spread',
      `Hens' feed is by the 1994 equation (from memory). An independent equation of 2005 gives ${other < 0 ? `${-other} % less` : `${other} % more`} over the laying year.`,
    ),
  );
  return found(flockFeedKg, { issues });
}

/**
 * Feed of the hens on the days from one to another, the second not included, kg a day. Past the end
 * of the plan they keep their weight, and the air is the usual one of the date.
 */
export function feedOfHens(context: PlanContext, from: number, to: number): FeedOfHens {
  const { life, batch } = context;
  const lay = context.lay!;
  const energyKcalPerKg = life.program.phases.at(-1)!.energyKcalPerKg;
  // What a growth table's birds eat at home says nothing of hens; a factor that was typed does.
  const own = (batch.feedFactor ?? 1) * (life.hensFeed?.factor ?? 1);
  const factor = ((1 + life.wasteShare) * own) / energyKcalPerKg;
  const kg = new Float64Array(to - from);
  let [kgBy2005, daysOutside] = [0, 0];
  for (let i = from; i < to; i++) {
    const meanC = airOn(context, i);
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

function airOn({ life, weather, climate, lay }: PlanContext, day: number): number {
  if (day < life.days) return (weather.minC[day]! + weather.maxC[day]!) / 2;
  const slot = lay!.dayOfYear[day]! - 1;
  return (climate.meanMinC[slot]! + climate.meanMaxC[slot]!) / 2;
}
