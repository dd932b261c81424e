import { formatAbout } from '../../units/format.js';
import type { Made } from './made.js';
import type { StopFeeding } from './stop-days.js';
import type { StopWeek } from './stop-weeks.js';
import { meatPrices } from './own-costs.js';

/** When to stop feeding, as a neighbor would say it. */
export function saidOfStop(
  made: Made,
  { stop, weeks }: { stop?: StopFeeding; weeks: readonly StopWeek[] },
): readonly string[] {
  const { context, plan } = made;
  if (!stop) return [noPrice(weeks, context.say)];
  return [
    ...bestInWords(made, stop),
    ...(stop.planned.on.value === stop.best.value ? [] : [plannedInWords(made, stop)]),
    ...priceInWords(made, stop),
    ...(plan.bill.leftOut.length === 0 ? [] : [`The bill is ${plan.bill.leftOut.join(', ')}.`]),
  ];
}

type OfValue = { readonly value: number | string };

/** Whether birds of one size bring more than those of another: then the best day is no cheapest one. */
const hasSizes = ({ curve: { money } }: Made): boolean =>
  1 < new Set(money!.priceMinor.filter((price) => price !== undefined)).size;

function bestInWords(made: Made, stop: StopFeeding): string[] {
  const { context, curve } = made;
  const { say, today } = context;
  const { best, bestAge, eachAtBest, goodFrom, goodTo, weekEarly, weekLate } = stop;
  const date = (of: OfValue): string => say(of.value, 'date');
  const reader = { ...context.farm, today };
  const kg = (of: OfValue): string => formatAbout(Math.abs(Number(of.value)), 'kg', reader);
  const age = weeksOld(Number(bestAge.value));
  const each = say(eachAtBest.value, 'moneyPerKg');
  const day = Number(bestAge.value) - curve.longer.life.arrivalAgeDays;
  const brings = curve.money!.priceMinor[day];
  const isPast = String(best.value) < today;
  const span =
    goodFrom.value === goodTo.value
      ? ''
      : `Any day from ${date(goodFrom)} to ${date(goodTo)} is as good. `;
  const off = (of: OfValue): string => offBest(made, Number(of.value));
  return [
    hasSizes(made) && brings !== undefined
      ? `The meat leaves most on ${date(best)}, at ${age}: it costs ${each} dressed, and birds of that size bring ${say(brings, 'moneyPerKg')}.`
      : `The meat costs least on ${date(best)}, at ${age}: ${each} dressed. From then on the next ${oneOf(say)} costs more than that.`,
    isPast
      ? 'That day is past: the sooner now, the better.'
      : `${span}A week early you have ${kg(weekEarly.weight)} less, and the rest ${off(weekEarly.costs)}; a week late you have ${kg(weekLate.weight)} more, and all of it ${off(weekLate.costs)}.`,
  ];
}

const offBest = (made: Made, minor: number): string => {
  const much = made.context.say(Math.abs(Math.round(minor)), 'money');
  return hasSizes(made) ? `leaves ${much} less than it could` : `costs ${much} more than it had to`;
};

function plannedInWords(made: Made, { planned, goodFrom, goodTo }: StopFeeding): string {
  const { say, batch } = made.context;
  const on = String(planned.on.value);
  const what = `${batch.slotDate === undefined ? 'Your day' : 'The slot'}, ${say(on, 'date')},`;
  return String(goodFrom.value) <= on && on <= String(goodTo.value)
    ? `${what} is one of the good ones.`
    : `${what} ${offBest(made, planned.costs.value)}.`;
}

/** Until when a day more pays for itself: sooner than the cheapest day where raising them does not pay. */
function priceInWords(made: Made, { paysUntil, best }: StopFeeding): string[] {
  const { context, curve } = made;
  const { say, today } = context;
  const price = meatPrices(context)(curve.dressedEachKg[curve.plannedDay]!);
  if (!paysUntil || price === undefined) return [];
  const until = say(paysUntil.value, 'date');
  const at = hasSizes(made) ? 'At your prices' : `At ${say(price, 'moneyPerKg')}`;
  if (String(paysUntil.value) < today) return [`${at} a day more no longer pays for its feed.`];
  return String(paysUntil.value) < String(best.value)
    ? [`${at} stop sooner: after ${until} a day more costs more than it adds.`]
    : [`${at} a day more still pays for its feed until ${until}.`];
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
