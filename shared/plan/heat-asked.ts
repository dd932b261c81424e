import type { Brooder } from '../farm/facility.js';
import { lampsByRule } from '../poultry/brooder-heat.js';
import { broodingHeat, coldestOf, daysOfHeat, type HeatContext } from './heat-days.js';
import { sharesNeeded } from './heat-weeks.js';

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
        ? Math.ceil((floorM2 * gasRule.lowWPerM2) / wattsEach - 1e-9)
        : lampsByRule(lampRule, context.life.placed, worst.asked.nightC, wattsEach),
  };
}
