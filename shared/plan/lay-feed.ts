import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import { feedOfHens, LAYER_AIR_C } from './feed-of-hens.js';
import { found, type Found } from './found.js';

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
