import type { BillLine } from '../bill.js';
import type { BatchPlan } from '../batch-plan.js';
import type { PlanContext } from '../context.js';

/**
 * The bill by day, from the arrival to the last day, in whole coins that add up to it. A line lies on
 * the days it is for: feed by what is eaten of its bags, heat by the energy of the day, what the
 * young and the bedding cost on the first day, processing and what goes with it on the last.
 */
export function billByDay(context: PlanContext, plan: BatchPlan): Int32Array {
  const { life, phases } = context;
  const valuesOf = (id: string) => plan.daily.find((series) => series.id === id)?.values ?? [];
  const [fed, energy] = [valuesOf('feed-day'), valuesOf('energy-day')];
  const byDay = new Int32Array(life.days);
  const spans = new Map(
    phases.map(({ phase, fromAgeDays, toAgeDays }) => [
      `${phase.name} feed`,
      [fromAgeDays - life.arrivalAgeDays, toAgeDays - life.arrivalAgeDays] as const,
    ]),
  );
  const last = life.days - 1;
  const weightsOf = ({ label }: BillLine): ((day: number) => number) => {
    const span = spans.get(label);
    if (span) return (day) => (span[0] <= day && day < span[1] ? (fed[day] ?? 0) : 0);
    if (label === 'Heat') return (day) => energy[day] ?? 0;
    return AT_THE_END.has(label) ? (day) => (day === last ? 1 : 0) : (day) => (day === 0 ? 1 : 0);
  };
  for (const line of plan.bill.lines)
    if (line.cost) spread(byDay, line.cost.value, weightsOf(line));
  return byDay;
}

/** Lines that are paid for on the day of processing. */
const AT_THE_END = new Set([
  'Processing',
  'Processing of cockerels',
  'Ice',
  'Freezer bags',
  'Propane to scald',
]);

/** Whole coins over days by their weights: each day gets what brings the sum so far up to its share. */
function spread(byDay: Int32Array, minor: number, weightOf: (day: number) => number): void {
  const weights = Array.from(byDay, (_, day) => weightOf(day));
  const all = weights.reduce((sum, each) => sum + each, 0);
  if (!(0 < all)) {
    byDay[0]! += minor;
    return;
  }
  let [weight, given] = [0, 0];
  weights.forEach((each, day) => {
    weight += each;
    const upTo = Math.round((minor * weight) / all);
    byDay[day]! += upTo - given;
    given = upTo;
  });
}
