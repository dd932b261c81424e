import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { wasteOf } from './hay-waste.js';
import { turnOutOf } from './grass-again.js';
import type { PastureContext } from './pasture-context.js';
import { YEAR } from './pasture-span.js';
import { baleOf, type Chosen } from './surplus.js';

/** Fewer are said by weight: what is rounded down to none or one says little of a small herd's hay. */
const LEAST_BALES = 2;

/**
 * What the cattle could still eat where snow comes onto it. They are fed while snow lies, so that its
 * household buys hay beside grass: it says how much, what it would spare, and through how much snow they
 * reach it.
 */
export function grassUnderSnow(context: PastureContext, { problem, books }: Chosen): PlanIssue[] {
  const { tables, herdDays, say, dateOf } = context;
  const { swards, harvestShare, to } = problem;
  const { backFromHayDays, snowGrazedCm } = tables.judgements.grazing;
  const day = snowAfterGrass({ problem, books });
  if (day === undefined) return [];
  const kg = swards.reduce((sum, { residualKgPerHa, areaHa, isClosed }, p) => {
    const above = books.massKgPerHa[p]![day]! - residualKgPerHa;
    return sum + (1 - isClosed[day]!) * Math.max(0, above) * areaHa * harvestShare[0]!;
  }, 0);
  const needKg = herdDays.reduce((sum, { grassKg }) => sum + grassKg[Math.min(day, to - 1)]!, 0);
  if (kg < backFromHayDays.value * needKg || needKg === 0) return [];
  const feedDays = Math.floor(kg / needKg);
  const winterDays = (turnOutOf(problem, books) ?? context.span.from) + YEAR - day;
  const isEnough = winterDays <= feedDays;
  const hayKg =
    (Math.min(kg, needKg * winterDays) * wasteOf(context)) / tables.pasture.hay.dryMatterShare;
  const bales = Math.floor(hayKg / baleOf(context).kg);
  const lasts = isEnough
    ? 'More grass than the cattle need until there is grass again'
    : `Grass for about ${say(feedDays, 'day')}`;
  const hay = bales < LEAST_BALES ? `${say(hayKg, 'kg')} of hay` : say(bales, 'bales');
  return [
    issue(
      'note',
      'grass-under-snow',
      `${lasts} stands above the residuals when snow comes (${say(dateOf(day), 'date')} in a usual year), ${say(kg, 'kg')} of dry matter that cattle would eat. Hay is planned from then on, as snow ends grazing here. Up to about ${say(snowGrazedCm.value, 'cm')} of loose snow, without ice or a crust, cattle that know it graze through; deeper they work hard for a bite and need hay too. ${isEnough ? 'What they need of it would spare' : 'All of it eaten would spare'} about ${hay}; it loses leaf and feed value all winter.`,
      [backFromHayDays, snowGrazedCm],
    ),
  ];
}

/** First day with snow once the herds are on grass for the last time; undefined where none lies in the plan. */
function snowAfterGrass({ problem, books }: Chosen): number | undefined {
  const last = books.stays.at(-1);
  if (last === undefined) return undefined;
  for (let day = last.from; day < problem.to; day++)
    if (problem.swards.every(({ weather }) => weather.isSnow[day] === 1)) return day;
  return undefined;
}
