import { riseBelowLampK } from '../poultry/lamp-zone.js';
import type { PlanContext } from './context.js';
import { coldestOf, daysOfHeat, type BroodingHeat, type DayHeat } from './heat-days.js';
import { riseUnderHeatK, warmsRoom } from './heat-rig.js';

/**
 * Why gas asks for more than lamps on the coldest night: fresh air for what burns without a flue, and
 * air that has to be warmer where rays warm the birds less. Undefined of other heat.
 */
export function gasNeedsSaid(
  { tables, say }: Pick<PlanContext, 'tables' | 'say'>,
  heat: BroodingHeat,
  days: readonly DayHeat[],
): string | undefined {
  const coldest = coldestOf(days);
  const worst = days[coldest];
  if (heat.rig.heat.kind !== 'gas' || !worst || worst.need.mid === 0) return undefined;
  const { ventilation, radiant, lampRule, clearance } = tables.heat;
  const share = 1 / ventilation.unventedGasFactor;
  const vented = heat.conditions.map((day) => {
    const { low, mid, high } = day.freshAir;
    return { ...day, freshAir: { low: low * share, mid: mid * share, high: high * share } };
  });
  const shares = days.map((day) => day.share);
  const ventedW = daysOfHeat({ ...heat, conditions: vented }, shares)[coldest]!.need.mid;
  const forAirW = worst.need.mid - ventedW;
  const air =
    1 <= forAirW
      ? ` A heater that burns without a flue needs ${ventilation.unventedGasFactor} times the fresh air, and warming that takes ${say(forAirW, 'W')} of it.`
      : '';
  const riseK = riseUnderHeatK(heat.rig, heat.rig.clearanceM);
  const lampK = riseBelowLampK(radiant, lampRule.lampW, clearance.valueM);
  const rays =
    lampK <= riseK || heat.rig.isAirSchedule
      ? ''
      : warmsRoom(heat.rig.heat)
        ? ' It warms the air of the whole room; lamps warm the birds below them by rays, and the air can stay cooler.'
        : ` Its rays warm the birds below it by ${say(riseK, 'K')} beyond the air, a lamp of ${say(lampRule.lampW, 'W')} hung as low as it may by ${say(lampK, 'K')}: the air has to be warmer.`;
  return air + rays === '' ? undefined : `Gas asks for more than lamps would here.${air}${rays}`;
}
