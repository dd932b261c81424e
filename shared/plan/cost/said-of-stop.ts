import { formatAbout } from '../../units/format.js';
import type { Made } from './made.js';
import type { StopFeeding } from './stop-days.js';
import type { StopWeek } from './stop-weeks.js';
import { meatPrices } from './own-costs.js';

/** When to stop feeding, as a neighbor would say it. */
export function saidOfStop(
  { context, plan, curve }: Made,
  { stop, weeks }: { stop?: StopFeeding; weeks: readonly StopWeek[] },
): readonly string[] {
  const { say, batch } = context;
  if (!stop) return [noPrice(weeks, say)];
  const date = (of: { readonly value: number | string }): string => say(of.value, 'date');
  const money = (minor: number): string => say(Math.abs(Math.round(minor)), 'money');
  const reader = { ...context.farm, today: context.today };
  const kg = (of: number): string => formatAbout(Math.abs(of), 'kg', reader);
  const { best, bestAge, eachAtBest, goodFrom, goodTo, weekEarly, weekLate, planned } = stop;
  const price = meatPrices(context)(curve.dressedEachKg[curve.plannedDay]!);
  const lines = [
    `The meat costs least on ${date(best)}, at ${weeksOld(Number(bestAge.value))}: ${say(eachAtBest.value, 'moneyPerKg')} dressed. From then on the next ${oneOf(say)} costs more than that.`,
    `Any day from ${date(goodFrom)} to ${date(goodTo)} is as good. A week early you have ${kg(weekEarly.weight.value)} less, and the rest costs ${money(weekEarly.costs.value)} more than it had to; a week late you have ${kg(weekLate.weight.value)} more, and all of it costs ${money(weekLate.costs.value)} more than it had to.`,
    ...(planned.on.value === best.value ? [] : [saidOfPlanned(stop)]),
    ...(stop.paysUntil && price !== undefined
      ? [
          `At ${say(price, 'moneyPerKg')} a day more still pays for its feed until ${date(stop.paysUntil)}.`,
        ]
      : []),
  ];
  return plan.bill.leftOut.length === 0
    ? lines
    : [...lines, `The bill is ${plan.bill.leftOut.join(', ')}.`];

  function saidOfPlanned(of: StopFeeding): string {
    const what = `${batch.slotDate === undefined ? 'Your day' : 'The slot'}, ${date(of.planned.on)},`;
    const isAsGood =
      String(goodFrom.value) <= String(of.planned.on.value) &&
      String(of.planned.on.value) <= String(goodTo.value);
    return isAsGood
      ? `${what} is one of them.`
      : `${what} costs ${money(of.planned.costs.value)} more than it had to.`;
  }
}

const weeksOld = (days: number): string => {
  const weeks = Math.floor(days / 7);
  const rest = days % 7;
  return rest === 0
    ? `${weeks} weeks`
    : `${weeks} weeks and ${rest === 1 ? 'a day' : `${rest} days`}`;
};

/** One pound, or one kilogram. */
const oneOf = (say: Made['context']['say']): string =>
  /lb$/.test(say(1, 'kg')) ? 'pound' : 'kilogram';

/** Without prices the feed itself says it. */
function noPrice(weeks: readonly StopWeek[], say: Made['context']['say']): string {
  const planned = weeks.find(({ isPlanned }) => isPlanned);
  const fed = planned?.conversion;
  return fed
    ? `No price for all of it, so no best day yet. In the last week every ${oneOf(say)} gained took ${say(fed.value, 'ratio')} of feed.`
    : 'No price for all of it, so no best day yet.';
}
