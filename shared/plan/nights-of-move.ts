import type { Sourced } from '../explain/formula.js';
import {
  fromJudgement,
  input,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../explain/quantity.js';
import type { PlanContext } from './context.js';
import {
  coldFirstNights,
  chanceOfColdFirstNights,
  isLaterRule,
  moveOutFormulas,
  nightLowAt,
} from './move-out.js';
import { weatherUsed } from './outside-weather.js';

/** What the nights after a move rest on. */
export function rowsOfMove(
  { tables, life, moveOutRule, climate }: PlanContext,
  day: number,
): Sourced[] {
  const table = tables.moveOut.find((m) => m.id === life.strain.moveOut)!;
  const { nights, judgements } = tables;
  return [
    table,
    ...(isLaterRule(moveOutRule, life.arrivalAgeDays + day)
      ? [{ sources: table.laterSources, mark: table.laterMark }]
      : []),
    judgements.birds.moveOutNights,
    ...(life.isUnderHen ? [tables.hatching.withHen] : []),
    nights.surety,
    ...(climate.way === 'monthly-means' ? [nights.spread] : []),
    ...(0 < (climate.forecast?.length ?? 0) ? [nights.forecast] : []),
  ];
}

/** What is known of the first night after a move on a day. */
export const nightInputs = (
  { nights, life, moveOutRule, climate, tables }: PlanContext,
  day: number,
): QuantityInput[] => [
  input('Average low of the first night', nights.lowC[day]!, 'degC', 'T_night'),
  input('Single nights differ from it by about', nights.sdC[day]!, 'K', 'SD'),
  input(
    'What birds of that age stand',
    nightLowAt(moveOutRule, life.arrivalAgeDays + day),
    'degC',
    'T_rule',
  ),
  fromJudgement(tables.judgements.birds.moveOutNights, 'n'),
  weatherUsed(climate),
];

/** What the figures of one move share. */
interface RestsOn {
  readonly inputs: readonly QuantityInput[];
  readonly rows: readonly Sourced[];
}

/** Chance that at least one of the first nights after a move is too cold for birds of its age. */
export function coldNightOf(
  context: PlanContext,
  day: number,
  { inputs, rows }: RestsOn,
): NumberQuantity {
  const { life, moveOutRule, nights, tables } = context;
  const count = tables.judgements.birds.moveOutNights.value;
  return quantity(
    `Chance of a night too cold in the first ${count}`,
    chanceOfColdFirstNights(life, moveOutRule, { nights, count }, day, tables),
    'chance',
    moveOutFormulas.coldNight,
    inputs,
    { rows: [...rows, tables.nights.likeness] },
  );
}

/** How many of the first nights after a move are too cold for birds of their age, on average. */
export function coldNightsOf(
  context: PlanContext,
  day: number,
  { inputs, rows }: RestsOn,
): NumberQuantity {
  const { life, moveOutRule, nights, tables } = context;
  const count = Math.min(tables.judgements.birds.moveOutNights.value, life.days - day);
  return quantity(
    `Nights too cold of the first ${count}`,
    coldFirstNights(life, moveOutRule, { nights, count }, day),
    'ratio',
    moveOutFormulas.coldNights,
    inputs,
    { rows },
  );
}
