import type { Batch } from '../farm/batch.js';
import type { Formula } from '../explain/formula.js';
import { daysBetween } from '../calendar/plain-date.js';
import type { MoveOutRule } from '../tables/bird-tables.js';
import { defaultRow, rowById, type Tables } from '../tables/tables.js';
import type { Life } from './life.js';

export const moveOutFormulas = {
  moveOut: {
    id: 'move-out-date',
    title: 'First day out of the brooder',
    words:
      'First day from the rule’s age on, at which the expected lows of the nights from then on average at least the rule’s temperature for birds of that age. Fully feathered birds stand colder nights in a dry shelter (a planning guess). Wind and rain are not in it.',
    symbols: 'min{t ≥ age: mean(T_night, t … t + n − 1) ≥ T_rule}',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  chance: {
    id: 'move-out-chance',
    title: 'Chance that these nights are warm enough',
    words:
      'Of all spells of three nights that began within a week of that date, in every year on record: the share whose coldest night stayed at or above the rule’s temperature.',
    symbols: 'p = spells with min(T_1, T_2, T_3) ≥ T_rule ÷ spells',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

export function moveOutRuleOf(batch: Batch, life: Life, tables: Tables): MoveOutRule {
  const { rules } = rowById(tables.moveOut, life.strain.moveOut);
  return batch.moveOutRuleId === undefined
    ? defaultRow(rules)
    : rowById(rules, batch.moveOutRuleId);
}

/**
 * Day index (after arrival) of the move, or undefined when no night is warm enough in time.
 * A date the household fixed wins.
 *
 * @param nightLowC expected low by day after arrival
 * @param nights how many of them are held against the rule, on average
 */
export function moveOutIndex(
  batch: Batch,
  life: Life,
  rule: MoveOutRule,
  nightLowC: ArrayLike<number>,
  nights: number,
): number | undefined {
  if (batch.moveOutDate !== undefined) {
    const fixed = daysBetween(batch.arrivalDate, batch.moveOutDate);
    return fixed < life.days ? fixed : undefined;
  }
  const earliest = Math.max(0, rule.fromDay - life.arrivalAgeDays);
  for (let i = earliest; i < life.days - 1; i++) {
    if (nightLowAt(rule, life.arrivalAgeDays + i) <= meanOfNext(nightLowC, i, nights)) return i;
  }
  return undefined;
}

/** Night low that the rule asks for at an age: fully feathered birds in a dry shelter stand more. */
export function nightLowAt(rule: MoveOutRule, ageDays: number): number {
  return rule.later.findLast((row) => row.fromDay <= ageDays)?.nightLowC ?? rule.nightLowC;
}

/** Whether the rule's night low at an age is that for older birds. */
export const isLaterRule = (rule: MoveOutRule, ageDays: number): boolean =>
  rule.later.some((row) => row.fromDay <= ageDays);

/** Mean of the expected lows of some nights from a day on, which is what the rule is held against. */
export function meanOfNext(nightLowC: ArrayLike<number>, from: number, nights: number): number {
  const to = Math.min(from + nights, nightLowC.length);
  let sum = 0;
  for (let i = from; i < to; i++) sum += nightLowC[i]!;
  return sum / (to - from);
}
