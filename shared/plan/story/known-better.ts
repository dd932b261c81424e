import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { Quantity } from '../../explain/quantity.js';
import { formatDate, type DateReader } from '../../units/dates.js';
import type { BatchPlan } from '../batch-plan.js';
import { placeOf, type PlaceInPlan } from './place-in-plan.js';

/** Days that a forecast reaches ahead. */
const FORECAST_DAYS = 7;
/** Days of lay before a week of counted eggs says how the flock lays. */
const SETTLED_DAYS = 28;
/** Age from which a weighing says how birds grow, where no work of the plan weighs them. */
const WEIGH_AGE_DAYS = 28;

/**
 * When a number of a plan will be known better, and by what; undefined where nothing still to come
 * tells more of it.
 */
export function knownBetter(
  plan: BatchPlan,
  quantity: Quantity,
  reader: DateReader,
): string | undefined {
  const place = placeOf(plan, quantity);
  if (!place) return undefined;
  const say = (date: PlainDate) => (date <= plan.today ? 'now' : `on ${formatDate(date, reader)}`);
  const by = whatTells(place);
  if (by === 'weighing') return weighing(plan, say);
  if (by === 'count') return counting(plan, say);
  if (by === 'eggs') return eggs(plan, say);
  if (by === 'candle') return candling(plan, say);
  return by === 'forecast' ? forecast(plan, place, reader) : undefined;
}

type Teller = 'weighing' | 'count' | 'eggs' | 'candle' | 'forecast';

/** What tells more of the numbers of each part of a plan. */
const TELLERS: Readonly<Record<string, Teller>> = {
  hatching: 'candle',
  birds: 'count',
  feed: 'weighing',
  leaving: 'weighing',
  bill: 'weighing',
  laying: 'eggs',
  heat: 'forecast',
  outdoors: 'forecast',
  brooding: 'forecast',
};

function whatTells([part, series]: PlaceInPlan): Teller | undefined {
  if (part !== 'daily') return TELLERS[String(part)];
  const id = String(series);
  if (id === 'alive') return 'count';
  if (/^eggs/.test(id)) return 'eggs';
  return /^(night|noon|day)-|heat/.test(id) ? 'forecast' : 'weighing';
}

type Say = (date: PlainDate) => string;

function weighing({ tasks, today, hatchDate, lastDate, birds }: BatchPlan, say: Say) {
  const next = tasks.tasks.find(({ id, end }) => /weigh/.test(id) && today <= end)?.start;
  const on = next ?? addDays(hatchDate, WEIGH_AGE_DAYS);
  if (lastDate <= today) return undefined;
  return `Weigh ${birds.toWeigh.value} birds ${say(on)}.`;
}

function counting({ arrivalDate, outdoors, today }: BatchPlan, say: Say) {
  if (today <= arrivalDate) return `Count the chicks ${say(arrivalDate)}.`;
  const out = outdoors.moveOut?.value;
  return typeof out === 'string' && today <= out
    ? `Count them at the move, ${say(out)}.`
    : undefined;
}

function eggs({ laying }: BatchPlan, say: Say) {
  const first = laying?.firstEgg.value;
  if (typeof first !== 'string') return undefined;
  return `Count the eggs of a week ${say(addDays(first, SETTLED_DAYS))}.`;
}

function candling({ hatching, today }: BatchPlan, say: Say) {
  const next = hatching?.candleOn.find(({ value }) => today <= String(value))?.value;
  return typeof next === 'string' ? `Candle the eggs ${say(next)}.` : undefined;
}

function forecast(plan: BatchPlan, place: PlaceInPlan, reader: DateReader): string | undefined {
  const { outdoors, heat, today, arrivalDate } = plan;
  const about =
    place[0] === 'outdoors' ? outdoors.moveOut?.value : (heat?.coldestNight.value ?? arrivalDate);
  const day = typeof about === 'string' ? about : arrivalDate;
  if (day < today) return undefined;
  const from = addDays(day, -FORECAST_DAYS);
  return from <= today
    ? 'The forecast reaches that far now.'
    : `The forecast, from ${formatDate(from, reader)}.`;
}
