import { dailySeries, type DailySeries } from '../explain/daily-series.js';
import type { Sourced } from '../explain/formula.js';
import {
  datedFact,
  fromJudgement,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
  type QuantityInput,
} from '../explain/quantity.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { formatChance } from '../units/format.js';
import { coldNightPart, type ColdNightPart } from './cold-nights.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';
import {
  chanceOfColdFirstNights,
  coldNightByDay,
  isLaterRule,
  moveOutFormulas,
  moveOutIndex,
  nightLowAt,
} from './move-out.js';
import { weatherUsed } from './outside-weather.js';

/** First day out for one way of being sure, and what is left of a cold night after it. */
export interface DayOut {
  readonly surety: string;
  /** Left out when no nights before the end are that sure. */
  readonly on?: Quantity;
  readonly coldNight?: NumberQuantity;
}

export interface WhenOutPart {
  readonly moveOut?: Quantity;
  readonly ageAtMove?: NumberQuantity;
  readonly nightLow?: NumberQuantity;
  readonly coldNight?: NumberQuantity;
  /** Days to get the birds used to nights without heat before the move. */
  readonly hardenFrom?: Quantity;
  /** What one night that is too cold costs them. */
  readonly oneColdNight?: ColdNightPart;
  /** The same for each way of being sure, the boldest first. */
  readonly daysOut: readonly DayOut[];
}

/** The day out of the brooder, how sure its nights are, and what cold comes after. */
export function whenOut(context: PlanContext, day: number): Found<WhenOutPart> {
  const { moveOutRule: rule, life, nights, batch, nightSurety } = context;
  const rows = rowsOf(context, day);
  const ageDays = life.arrivalAgeDays + day;
  const isFixed = batch.moveOutDate !== undefined;
  const cold = coldNightOf(context, day);
  return found(
    {
      moveOut: datedFact(
        life.isUnderHen ? 'Without the hen' : 'Out of the brooder',
        context.dateOf(day),
        moveOutFormulas.moveOut,
        [
          input('Rule', isFixed ? 'date fixed by the household' : rule.name, 'text'),
          ...nightInputs(context, day),
          input('Each of these nights warm enough on', nightSurety.name, 'text'),
        ],
        { rows },
      ),
      ageAtMove: quantity(
        'Age at the move',
        ageDays,
        'day',
        moveOutFormulas.moveOut,
        [
          input('Days after arrival', day, 'day'),
          input('Age at arrival', life.arrivalAgeDays, 'day'),
        ],
        { rows },
      ),
      nightLow: quantity(
        'Average low of the first night out',
        nights.lowC[day]!,
        'degC',
        moveOutFormulas.moveOut,
        nightInputs(context, day),
        { rows },
      ),
      coldNight: cold,
      oneColdNight: coldNightPart(context, day, rows),
      hardenFrom: datedFact(
        'Get them used to it from',
        context.dateOf(hardenFromDay(context, day)),
        moveOutFormulas.harden,
        [fromJudgement(context.tables.judgements.birds.hardenDays)],
      ),
      daysOut: daysOut(context),
    },
    {
      series: [coldSeries(context, day, rows)],
      issues: [...issuesOfNights(context, day, cold.value, rows), ...laterCold(context, day, rows)],
    },
  );
}

/** Day on which hardening off begins before a move on a day. */
export const hardenFromDay = ({ tables }: PlanContext, moveOutDay: number): number =>
  Math.max(0, moveOutDay - tables.judgements.birds.hardenDays.value);

/** What the nights after a move rest on. */
function rowsOf({ tables, life, moveOutRule, climate }: PlanContext, day: number): Sourced[] {
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

const nightInputs = (
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

function coldNightOf(context: PlanContext, day: number): NumberQuantity {
  const { life, moveOutRule, nights, tables } = context;
  const count = tables.judgements.birds.moveOutNights.value;
  return quantity(
    `Chance of a night too cold in the first ${count}`,
    chanceOfColdFirstNights(life, moveOutRule, { nights, count }, day, tables),
    'chance',
    moveOutFormulas.coldNight,
    nightInputs(context, day),
    { rows: [...rowsOf(context, day), tables.nights.likeness] },
  );
}

/** Chance of each night from the move on to be too cold for birds of its age. */
function coldSeries(context: PlanContext, day: number, rows: readonly Sourced[]): DailySeries {
  const { life, moveOutRule, nights, climate } = context;
  return dailySeries(
    'night-too-cold',
    'Night too cold for them, chance',
    'chance',
    moveOutFormulas.coldNight,
    coldNightByDay(life, moveOutRule, nights, day),
    [
      input('Rule', moveOutRule.name, 'text'),
      weatherUsed(climate),
      { label: 'Expected night low', series: 'night-low' },
    ],
    { rows },
  );
}

/** First days out by each way of being sure, whatever date the household has fixed. */
export function daysOut(context: PlanContext): DayOut[] {
  const { batch, life, moveOutRule, nights, tables } = context;
  const { moveOutDate: _fixed, ...free } = batch;
  const first = { nights, count: tables.judgements.birds.moveOutNights.value };
  return tables.nights.surety.choices.map(({ name, share }) => {
    const day = moveOutIndex(free, life, moveOutRule, first, share);
    if (day === undefined) return { surety: name };
    return {
      surety: name,
      on: datedFact(
        `Out when each night is warm enough on ${name}`,
        context.dateOf(day),
        moveOutFormulas.moveOut,
        [...nightInputs(context, day), input('Share of nights', share, 'share')],
        { rows: rowsOf(context, day) },
      ),
      coldNight: coldNightOf(context, day),
    };
  });
}

function issuesOfNights(
  context: PlanContext,
  day: number,
  cold: number,
  rows: readonly Sourced[],
): PlanIssue[] {
  const { nights, tables, batch, moveOutRule: rule, life } = context;
  const { moveOutNights, unsureBelow } = tables.judgements.birds;
  const stand = context.say(nightLowAt(rule, life.arrivalAgeDays + day), 'degC');
  const issues: PlanIssue[] = [];
  if (nights.lowC[day]! < 0) {
    issues.push(
      issue(
        'act',
        'move-into-winter',
        `On ${context.say(context.dateOf(day), 'date')} nights average ${context.say(nights.lowC[day]!, 'degC')}: water freezes, and grass is gone. Keep them under a roof with bedding and water that stays open, or choose another arrival.`,
        rows,
      ),
    );
  }
  if (1 - unsureBelow.value < cold) {
    const isFixed = batch.moveOutDate !== undefined;
    issues.push(
      issue(
        isFixed ? 'act' : 'note',
        isFixed ? 'move-out-cold' : 'move-out-unsure',
        `A night below ${stand} in the first ${moveOutNights.value} after the move on ${context.say(context.dateOf(day), 'date')} comes ${formatChance(cold)}. Read the forecast before you move them, and have tarps, dry bedding and safe heat for a night at hand, or wait.`,
        rows,
      ),
    );
  }
  return issues;
}

/** Nights after the first ones that are too cold for birds of their age more often than wanted. */
function laterCold(context: PlanContext, day: number, rows: readonly Sourced[]): PlanIssue[] {
  const { life, moveOutRule, nights, nightSurety, tables } = context;
  const chances = coldNightByDay(life, moveOutRule, nights, day);
  // Hens in lay live in a house, and are no longer what the rule was written for.
  const last = (life.firstEggAgeDays ?? life.lastAgeDays) - life.arrivalAgeDays;
  const from = chances.findIndex(
    (chance, night) =>
      day + tables.judgements.birds.moveOutNights.value <= night &&
      night < last &&
      1 - nightSurety.share + 1e-9 < chance,
  );
  if (from < 0) return [];
  const worst = Math.max(...chances.subarray(from, last));
  const stand = context.say(nightLowAt(moveOutRule, life.arrivalAgeDays + from), 'degC');
  return [
    issue(
      'act',
      'cold-later',
      `From ${context.say(context.dateOf(from), 'date')} nights are often below ${stand}, what birds of that age stand: ${formatChance(worst)} on the worst of them. Give them a closed, dry shelter or heat from then on, or let them go earlier.`,
      rows,
    ),
  ];
}
