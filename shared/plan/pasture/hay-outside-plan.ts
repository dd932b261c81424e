import { addDays, daysBetween } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import {
  from,
  fromJudgement,
  input,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../../explain/quantity.js';
import { turnOutOf } from './grass-again.js';
import { leftNextOn, toldHayDay } from './on-hay-day.js';
import type { PastureContext } from './pasture-context.js';
import { YEAR } from './pasture-span.js';
import type { Chosen } from './surplus.js';
import { winterGrass, winterGrassFormulas } from './winter-grass.js';

export const hayOutsidePlanFormulas = {
  nextWinter: {
    id: 'hay-next-winter',
    title: 'Hay from the end of the plan to grass again',
    words:
      'What the herds need on the last day of the plan, for each day until the day of the next year on which they turn out in this one, as hay with what is lost in store and at the feeder. What they eat of the grass meanwhile is taken off. Cattle that come, go or grow in those days are not in it.',
    symbols: 'H = (F_day·days − G) ÷ (dm·(1 − l_store)·(1 − l_feed))',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  untilPlan: {
    id: 'hay-until-plan',
    title: 'Hay from today to the plan',
    words:
      'Between two seasons the plan begins ahead of today. Until then the herds are on hay: what they need on its first day, for each of the days.',
    symbols: 'H = F_day·days ÷ (dm·(1 − l_store)·(1 − l_feed))',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Days at the end of the plan whose need stands for the days after it. */
const LAST_DAYS = 7;

/** Hay from the end of the plan to grass again. */
export function nextWinterOf(
  context: PastureContext,
  { problem, books }: Chosen,
  hayPerDryKg: number,
): NumberQuantity | undefined {
  const { span, herdDays, dateOf, tables } = context;
  let need = 0;
  for (const { demandKg } of herdDays)
    for (let i = Math.max(span.from, span.to - LAST_DAYS); i < span.to; i++) need += demandKg[i]!;
  if (need <= 0) return undefined;
  const turnOut = turnOutOf(problem, books) ?? span.from;
  const until = addDays(dateOf(turnOut), YEAR);
  const days = daysBetween(dateOf(span.to - 1), until) - 1;
  if (days <= 0) return undefined;
  const perDayKg = need / Math.min(LAST_DAYS, span.to - span.from);
  const left = tables.judgements.grass.leftBeforeWinterDays;
  const onHay = context.paddocks.map((paddock) => toldHayDay(span, context, paddock) !== undefined);
  const grassKg = winterGrass(problem, books, {
    ...{ perDayKg, days },
    left: context.paddocks.map((paddock) => leftNextOn(span, context, paddock)),
  });
  if (perDayKg * days <= grassKg) return undefined;
  const grass = quantity('Of grass meanwhile', grassKg, 'kg', winterGrassFormulas.winterGrass, [
    input('Need of a day, dry matter', perDayKg, 'kg', 'F_day'),
    input('Days', days, 'day', 'days'),
    ...(onHay.includes(true) ? [input('On hay since', context.choices.onHaySince!, 'date')] : []),
    ...(onHay.includes(false) ? [fromJudgement(left)] : []),
  ]);
  return hayOfDays(context, 'Hay from then to grass again', hayOutsidePlanFormulas.nextWinter, {
    ...{ perDayKg, days, hayPerDryKg, grass },
    until: input('Grass again about', until, 'date'),
  });
}

/** Hay from today to the plan: what the herds need on its first day, for each day until then. */
export function untilPlanOf(
  context: PastureContext,
  hayPerDryKg: number,
): NumberQuantity | undefined {
  const { span, herdDays, dateOf, today } = context;
  const days = daysBetween(today, dateOf(span.from));
  const perDay = herdDays.reduce((sum, { demandKg }) => sum + demandKg[span.from]!, 0);
  if (days <= 0 || perDay <= 0) return undefined;
  return hayOfDays(context, 'Hay from today until then', hayOutsidePlanFormulas.untilPlan, {
    perDayKg: perDay,
    ...{ days, hayPerDryKg },
    until: input('The plan begins on', dateOf(span.from), 'date'),
  });
}

/** Hay, as it lies in store, for so many days of one need. */
const hayOfDays = (
  context: PastureContext,
  label: string,
  formula: Formula,
  of: {
    perDayKg: number;
    days: number;
    hayPerDryKg: number;
    until: QuantityInput;
    /** Eaten of grass meanwhile. */
    grass?: NumberQuantity;
  },
): NumberQuantity =>
  quantity(
    label,
    (of.perDayKg * of.days - (of.grass?.value ?? 0)) * of.hayPerDryKg,
    'kg',
    formula,
    [
      input('Need of a day, dry matter', of.perDayKg, 'kg', 'F_day'),
      input('Days', of.days, 'day', 'days'),
      ...(of.grass?.value ? [from(of.grass, 'G')] : []),
      of.until,
      input('Hay for a kilogram eaten', of.hayPerDryKg, 'ratio'),
    ],
    { rows: [context.order, context.tables.pasture.hay] },
  );
