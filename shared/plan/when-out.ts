import { dailySeries, type DailySeries } from '../explain/daily-series.js';
import type { Sourced } from '../explain/formula.js';
import {
  datedFact,
  fromFarm,
  fromJudgement,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { defaultRow } from '../tables/tables.js';
import type { ColdNightPart } from './cold-nights.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';
import { coldNightByDay, moveOutFormulas, nightLowAt } from './move-out.js';
import { nightInputs, rowsOfMove } from './nights-of-move.js';
import { weatherUsed } from './outside-weather.js';
import { penHeat } from './pen-heat.js';
import { sayNights } from './say-ways-out.js';
import { waysOut, type WayOut, type WayOutDay } from './ways-out.js';

export interface WhenOutPart {
  readonly moveOut?: Quantity;
  readonly ageAtMove?: NumberQuantity;
  readonly nightLow?: NumberQuantity;
  readonly coldNight?: NumberQuantity;
  readonly coldNights?: NumberQuantity;
  /** Days to get the birds used to nights without heat before the move. */
  readonly hardenFrom?: Quantity;
  /** What one night that is too cold costs them. */
  readonly oneColdNight?: ColdNightPart;
  /** Electricity of heat out there, for birds that go out by their age with it. */
  readonly penHeat?: NumberQuantity;
  /** The ways to go by, the boldest first, side by side. */
  readonly waysOut: readonly WayOut[];
}

/** The day out of the brooder, how sure its nights are, and what cold comes after. */
export function whenOut(context: PlanContext, day: number): Found<WhenOutPart> {
  const { moveOutRule: rule, life, nights, batch, nightSurety } = context;
  const rows = rowsOfMove(context, day);
  const inputs = nightInputs(context, day);
  const isFixed = batch.moveOutDate !== undefined;
  const ways = waysOut(context);
  const way = ways.find(({ isChosen }) => isChosen)!.out!;
  const heatOutThere = penHeat(context, day);
  return found(
    {
      moveOut: datedFact(
        life.isUnderHen ? 'Without the hen' : 'Out of the brooder',
        context.dateOf(day),
        moveOutFormulas.moveOut,
        [
          input('Rule', isFixed ? 'date fixed by the household' : rule.name, 'text'),
          ...inputs,
          input('Each of these nights warm enough on', nightSurety.name, 'text'),
        ],
        { rows },
      ),
      ageAtMove: way.age,
      nightLow: quantity(
        'Average low of the first night out',
        nights.lowC[day]!,
        'degC',
        moveOutFormulas.moveOut,
        inputs,
        { rows },
      ),
      coldNight: way.coldNight,
      coldNights: way.coldNights,
      oneColdNight: way.oneColdNight,
      ...(heatOutThere ? { penHeat: heatOutThere } : {}),
      hardenFrom: datedFact(
        'Get them used to it from',
        context.dateOf(hardenFromDay(context, day)),
        moveOutFormulas.harden,
        [fromJudgement(context.tables.judgements.birds.hardenDays)],
      ),
      waysOut: ways,
    },
    {
      series: [coldSeries(context, day, rows)],
      issues: [
        ...issuesOfNights(context, day, way, rows),
        ...laterCold(context, day, rows),
        ...longInBrooder(context, day, ways),
      ],
    },
  );
}

/**
 * Grown birds go into their home on the day they come: no night decides it, but later ones can be
 * too cold for them.
 */
export function intoTheCoop(context: PlanContext, day: number): Found<WhenOutPart> {
  const { batch, dateOf, life } = context;
  const rows = rowsOfMove(context, day);
  const came = input('Arrival', batch.arrivalDate, 'date');
  return found(
    {
      moveOut: datedFact('Into the coop', dateOf(day), moveOutFormulas.onArrival, [came]),
      ageAtMove: quantity(
        'Age when they come',
        life.arrivalAgeDays,
        'day',
        moveOutFormulas.onArrival,
        [fromFarm('Weeks old when they come', life.arrivalAgeDays / 7, 'count')],
      ),
      waysOut: [],
    },
    {
      series: [coldSeries(context, day, rows)],
      issues: laterCold(context, day, rows, day),
    },
  );
}

/** Day on which hardening off begins before a move on a day. */
export const hardenFromDay = ({ tables }: PlanContext, moveOutDay: number): number =>
  Math.max(0, moveOutDay - tables.judgements.birds.hardenDays.value);

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

function issuesOfNights(
  context: PlanContext,
  day: number,
  { coldNight, coldNights, oneColdNight }: WayOutDay,
  rows: readonly Sourced[],
): PlanIssue[] {
  const { nights, tables, batch, moveOutRule: rule, life, nightSurety } = context;
  const { moveOutNights, unsureBelow } = tables.judgements.birds;
  // Of nights that are past nothing is to be feared.
  if (context.dateOf(day + moveOutNights.value) < context.today) return [];
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
  const isFixed = batch.moveOutDate !== undefined;
  if (!isFixed && nightSurety.share === 0) {
    const heat =
      oneColdNight.heat && `, about ${context.say(oneColdNight.heat.value, 'money')} a night`;
    issues.push(
      issue(
        'act',
        'move-out-with-heat',
        `They go out on ${context.say(context.dateOf(day), 'date')}, at ${context.say(life.arrivalAgeDays + day, 'day')}, with heat in the pen: about ${Math.max(1, Math.round(coldNights.value))} of the first ${moveOutNights.value} nights are below ${stand}. Have the heat hung and tried before they move, fixed twice and clear of tarp and bedding${heat ?? ''}; without it, keep them in.`,
        rows,
      ),
    );
  } else if (1 - unsureBelow.value < coldNight.value) {
    issues.push(
      issue(
        isFixed ? 'act' : 'note',
        isFixed ? 'move-out-cold' : 'move-out-unsure',
        `Expect ${sayNights(coldNights.value)} below ${stand}, what birds of that age stand, among the first ${moveOutNights.value} after the move on ${context.say(context.dateOf(day), 'date')}. For those nights have ${batch.purpose === 'meat' ? 'a tarp over the roof and the windward side, dry deep bedding,' : 'the coop dry, free of drafts and deep in bedding,'} and safe heat hung and tried before they go; read the forecast, and move them on a mild morning.`,
        rows,
      ),
    );
  }
  return issues;
}

/** Nights after the first ones that are too cold for birds of their age more often than wanted. */
function laterCold(
  context: PlanContext,
  day: number,
  rows: readonly Sourced[],
  fromNight = day + context.tables.judgements.birds.moveOutNights.value,
): PlanIssue[] {
  const { life, moveOutRule, nights, nightSurety, tables } = context;
  const chances = coldNightByDay(life, moveOutRule, nights, day);
  // Who goes by age alone has heat for the first weeks, and is as sure as others after them.
  const share = nightSurety.share || defaultRow(tables.nights.surety.choices).share;
  // Hens in lay live in a house, and are no longer what the rule was written for.
  const last = (life.firstEggAgeDays ?? life.lastAgeDays) - life.arrivalAgeDays;
  const from = chances.findIndex(
    (chance, night) => fromNight <= night && night < last && 1 - share + 1e-9 < chance,
  );
  if (from < 0) return [];
  const nightsOf = chances.subarray(from, last).reduce((sum, chance) => sum + chance, 0);
  const until = last < life.lastAgeDays - life.arrivalAgeDays ? 'the first egg' : 'the end';
  const stand = context.say(nightLowAt(moveOutRule, life.arrivalAgeDays + from), 'degC');
  return [
    issue(
      'act',
      'cold-later',
      `From ${context.say(context.dateOf(from), 'date')} nights are often below ${stand}, what birds of that age stand: ${sayNights(nightsOf)} until ${until}. Give them a closed, dry shelter or heat from then on${life.isStarted ? '' : ', or let them go earlier'}.`,
      rows,
    ),
  ];
}

/** Meat birds that would be in the brooder for most of their lives, where keepers go sooner. */
function longInBrooder(
  { batch, life, tables, dateOf, say, today }: PlanContext,
  day: number,
  ways: readonly WayOut[],
): PlanIssue[] {
  const { longInBrooderDays, hardenDays, moveOutNights } = tables.judgements.birds;
  const age = life.arrivalAgeDays + day;
  if (batch.purpose !== 'meat' || batch.moveOutDate !== undefined || life.isUnderHen) return [];
  if (age <= longInBrooderDays.value || dateOf(day) <= today) return [];
  const sooner = ways.find(
    ({ out, isByAge, isChosen }) =>
      !isByAge && !isChosen && out !== undefined && out.age.value + hardenDays.value <= age,
  )?.out;
  const name = ways.find(({ out }) => out === sooner)?.name;
  if (!sooner || name === undefined) return [];
  // What keepers do with chickens says nothing of poults, which are tender for longer.
  const keepers =
    life.strain.species === 'chicken'
      ? 'Keepers put birds like these out at three to four weeks, hardened off, into a closed dry shelter with a tarp'
      : 'They could go out sooner, hardened off, into a closed dry shelter with a tarp';
  return [
    issue(
      'act',
      'long-in-brooder',
      `They would be in the brooder until ${say(dateOf(day), 'date')}, ${age} of ${life.lastAgeDays} days. ${keepers}: “${name}” would be ${say(sooner.on.value, 'date')}, and with ${sayNights(sooner.coldNights.value)} of the first ${moveOutNights.value} too cold for them. Choose it under the ways to go out, or see that the brooder has the room and air for large birds.`,
      [longInBrooderDays],
    ),
  ];
}
