import {
  eggWeightG,
  henDayShare,
  layerEnergyKcal2005,
  layerEnergyKcalNrc1994,
} from '../poultry/lay.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';

/** Air temperatures that the layer energy equation is read between, °C. */
const LAYER_AIR_C = { min: 10, max: 34 };

/** Growing feed up to the first egg, then the hens' feed by their energy needs. */
export function feedWithLay(context: PlanContext): Found<Float64Array> {
  const { life, weather, batch } = context;
  if (!life.layCurve || life.firstEggAgeDays === undefined) return found(life.flockFeedKg);
  const flockFeedKg = Float64Array.from(life.flockFeedKg);
  const firstEggDay = life.firstEggAgeDays - life.arrivalAgeDays;
  const layer = life.program.phases.at(-1)!;
  let outside = 0;
  let both = { nrc: 0, other: 0 };
  for (let i = firstEggDay; i < life.days; i++) {
    const ageWeeks = (life.arrivalAgeDays + i) / 7;
    const meanC = (weather.minC[i]! + weather.maxC[i]!) / 2;
    const airC = Math.min(LAYER_AIR_C.max, Math.max(LAYER_AIR_C.min, meanC));
    if (airC !== meanC) outside++;
    const hen = {
      weightKg: life.weightKg.female[i]!,
      gainGPerDay: Math.max(0, (life.weightKg.female[i]! - life.weightKg.female[i - 1]!) * 1000),
      eggMassGPerDay: henDayShare(life.layCurve, ageWeeks) * eggWeightG(life.layCurve, ageWeeks),
      airC,
    };
    // What a growth table's birds eat at home says nothing of hens; a factor that was typed does.
    const hens = life.alive.female[i]! * (1 + life.wasteShare) * (batch.feedFactor ?? 1);
    const kg = layerEnergyKcalNrc1994(hen) / layer.energyKcalPerKg;
    both = {
      nrc: both.nrc + kg * hens,
      other: both.other + (layerEnergyKcal2005(hen) / layer.energyKcalPerKg) * hens,
    };
    flockFeedKg[i] = kg * hens;
  }
  const issues: PlanIssue[] = [];
  if (0 < outside) {
    issues.push(
      issue(
        'note',
        'layer-feed-range',
        `On ${context.say(outside, 'day')} of lay the average air is outside ${context.say(LAYER_AIR_C.min, 'degC')} to ${context.say(LAYER_AIR_C.max, 'degC')}, where the hens' energy equation is read; the nearest end is used. Hens in a cold coop eat more than shown.`,
      ),
    );
  }
  const other = Math.round((both.other / both.nrc - 1) * 100);
  issues.push(
    issue(
      'note',
      'layer-energy-spread',
      `Hens' feed is by the 1994 equation (from memory). An independent equation of 2005 gives ${other < 0 ? `${-other} % less` : `${other} % more`} over the laying year.`,
    ),
  );
  return found(flockFeedKg, { issues });
}
