import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import { formatDate, type DateReader } from '../../units/dates.js';
import type { BatchPlan } from '../batch-plan.js';
import type { PlaceInPlan } from './place-in-plan.js';
import type { Teller } from './plausible-changes.js';

/** Days that a forecast reaches ahead. */
const FORECAST_DAYS = 7;
/** Days of lay before a week of counted eggs says how the flock lays. */
const SETTLED_DAYS = 28;
/** Age from which a weighing says how birds grow, where no work of the plan weighs them. */
const WEIGH_AGE_DAYS = 28;

/**
 * When something that moves the number of a place is known better, and by what; undefined where it
 * is over, and nothing still to come tells more of it.
 */
export function knownBetter(
  plan: BatchPlan,
  by: Teller,
  place: PlaceInPlan,
  reader: DateReader,
): string | undefined {
  const say = (date: PlainDate) => (date <= plan.today ? 'now' : `on ${formatDate(date, reader)}`);
  switch (by) {
    case 'weighing':
      return weighing(plan, say);
    case 'count':
      return counting(plan, say);
    case 'eggs':
      return eggs(plan, say);
    case 'candle':
      return candling(plan, say);
    case 'forecast':
      return forecast(plan, place, reader);
    case 'bags':
      return 'When the first bags are empty: type under the batch how much more they eat or waste.';
    case 'feed-price':
      return 'When you buy the feed and type its price.';
    case 'heat-price':
      return 'When you type what power and gas cost you by the next bill, under Your place.';
  }
}

type Say = (date: PlainDate) => string;

function weighing({ tasks, today, hatchDate, lastDate, birds }: BatchPlan, say: Say) {
  const next = tasks.tasks.find(({ id, end }) => /weigh/.test(id) && today <= end)?.start;
  const on = next ?? addDays(hatchDate, WEIGH_AGE_DAYS);
  if (lastDate <= today) return undefined;
  return `Weigh ${birds.toWeigh.value} birds ${say(on)}, and type it.`;
}

function counting({ arrivalDate, lastDate, outdoors, today, words }: BatchPlan, say: Say) {
  const type = 'and tell the ones that died';
  if (lastDate <= today) return undefined;
  if (today <= arrivalDate) return `Count the ${words.young} ${say(arrivalDate)}, ${type}.`;
  const out = outdoors.moveOut?.value;
  return typeof out === 'string' && today <= out
    ? `Count them at the move, ${say(out)}, ${type}.`
    : `Count them now, ${type}.`;
}

function eggs({ laying }: BatchPlan, say: Say) {
  const first = laying?.firstEgg.value;
  if (typeof first !== 'string') return undefined;
  return `Count the eggs of a week ${say(addDays(first, SETTLED_DAYS))}, and type them.`;
}

function candling({ hatching, today }: BatchPlan, say: Say) {
  const next = hatching?.candleOn.find(({ value }) => today <= String(value))?.value;
  return typeof next === 'string' ? `Candle the eggs ${say(next)}.` : undefined;
}

function forecast(plan: BatchPlan, place: PlaceInPlan, reader: DateReader): string | undefined {
  // Two days of a series can say the same, so that one of them is not told from the other.
  if (place[0] === 'daily') return 'The forecast of that day, from a week before.';
  const day = dayOf(plan, place);
  if (day < plan.today) return undefined;
  const from = addDays(day, -FORECAST_DAYS);
  return from <= plan.today
    ? 'The forecast reaches that far now.'
    : `The forecast, from ${formatDate(from, reader)}.`;
}

/** The day whose weather decides a number. */
function dayOf({ outdoors, heat, arrivalDate }: BatchPlan, [part]: PlaceInPlan): PlainDate {
  const about = part === 'outdoors' ? outdoors.moveOut?.value : heat?.coldestNight.value;
  return typeof about === 'string' ? about : arrivalDate;
}
