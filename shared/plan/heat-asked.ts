import type { Brooder } from '../farm/facility.js';
import { lampsByRule } from '../poultry/brooder-heat.js';
import { broodingHeat, coldestOf, daysOfHeat, type HeatContext } from './heat-days.js';
import { bestByDay, hottestDay, hourOf, sharesNeeded, weeksOfAge } from './heat-weeks.js';

/** Heat that the coldest night of a brooding time asks for, and heaters by the rule of thumb. */
export interface HeatAsked {
  readonly mostW: number;
  /** The low end of its range. */
  readonly leastW: number;
  readonly byRule: number | undefined;
}

/** The same figures as in a plan of that arrival, without its words. */
export function heatAsked(context: HeatContext, brooder: Brooder): HeatAsked {
  const heat = broodingHeat(context, brooder);
  const floorM2 = brooder.lengthM * brooder.widthM;
  const shares = brooder.closesOff ? sharesNeeded(heat, floorM2) : heat.conditions.map(() => 1);
  const days = daysOfHeat(heat, shares);
  const worst = days[coldestOf(days)];
  if (!worst) return { mostW: 0, leastW: 0, byRule: undefined };
  const { kind, wattsEach } = brooder.heat;
  const { lampRule, gasRule } = context.tables.heat;
  return {
    mostW: worst.need.mid,
    leastW: worst.need.low,
    byRule:
      kind === 'gas'
        ? Math.ceil((worst.share * floorM2 * gasRule.lowWPerM2) / wattsEach - 1e-9)
        : lampsByRule(lampRule, context.life.placed, worst.asked.nightC, wattsEach),
  };
}

/** The noon of a brooding time on which birds in the brooder are warmest for their age. */
export interface HottestNoon {
  /** First day of its week, after the arrival. */
  readonly first: number;
  readonly airC: number;
  readonly outsideC: number;
  readonly warnC: number;
  readonly dangerC: number;
}

/**
 * The noon that is hottest for them, of all weeks in the brooder up to the end of the schedule, with
 * the heaters set as in a plan of that arrival; undefined when there is no day in the brooder.
 */
export function hottestNoon(context: HeatContext, brooder: Brooder): HottestNoon | undefined {
  const heat = broodingHeat(context, brooder);
  const floorM2 = brooder.lengthM * brooder.widthM;
  const shares = brooder.closesOff ? sharesNeeded(heat, floorM2) : undefined;
  let worst: HottestNoon | undefined;
  for (const { first, last } of weeksOfAge(heat.conditions, heat.conditions.length - 1)) {
    const day = hottestDay(heat.conditions.slice(first, last + 1));
    const { noonC, warnC, dangerC } = day;
    const { clearanceM } = heat.rig;
    const at = { share: shares?.[first] ?? 1, heightM: clearanceM, headroomM: clearanceM };
    const { airC } = bestByDay(heat.rig, hourOf(heat, day, 'day', noonC), at);
    if (!worst || worst.airC - worst.warnC < airC - warnC)
      worst = { first, airC, outsideC: noonC, warnC, dangerC };
  }
  return worst;
}
