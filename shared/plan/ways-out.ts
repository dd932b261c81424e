import {
  datedFact,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import type { Batch } from '../farm/batch.js';
import { spaceFormulas } from '../poultry/space.js';
import type { MoveOutRule } from '../tables/bird-tables.js';
import type { NightSurety } from '../tables/night-table.js';
import { defaultRow, rowById } from '../tables/tables.js';
import { brooderFloorM2 } from './brooder-spare.js';
import { coldNightPart, type ColdNightPart } from './cold-nights.js';
import type { PlanContext } from './context.js';
import { moveOutFormulas, moveOutIndex, moveOutRuleOf, nightLowAt } from './move-out.js';
import { coldNightOf, coldNightsOf, nightInputs, rowsOfMove } from './nights-of-move.js';
import { spaceStandardOf } from './space-standard.js';

/** One way to go out: from when, how cold the first nights may be, and what must be ready. */
export interface WayOut {
  readonly id: string;
  readonly name: string;
  /** What choosing it writes into the batch. */
  readonly chosenBy: Pick<Batch, 'moveOutRuleId' | 'nightSuretyId'>;
  readonly isChosen: boolean;
  /** Whether it goes by their age alone, with heat for the cold nights. */
  readonly isByAge: boolean;
  readonly takes: string;
  /** Left out when no nights before the end are that sure. */
  readonly out?: WayOutDay;
}

export interface WayOutDay {
  readonly on: Quantity;
  readonly age: NumberQuantity;
  /** What birds of that age stand by the rule of this way. */
  readonly stand: NumberQuantity;
  readonly coldNight: NumberQuantity;
  readonly coldNights: NumberQuantity;
  /** What one night that is too cold costs them. */
  readonly oneColdNight: ColdNightPart;
  /** Brooder floor that they need until then; left out under a hen. */
  readonly floor?: NumberQuantity;
  /** Set where their age sets the date and not the nights. */
  readonly because?: string;
}

interface Way {
  readonly id: string;
  readonly name: string;
  readonly rule: MoveOutRule;
  readonly surety: NightSurety;
  readonly takes: string;
}

/**
 * The ways a household can go by, the boldest first; one of them is the plan's own.
 *
 * @param context of the plan, with the day of the move that it goes by
 */
export function waysOut(context: PlanContext): WayOut[] {
  const { batch, moveOutRule, nightSurety, moveOutDay } = context;
  const isFixed = batch.moveOutDate !== undefined;
  const all = allWays(context);
  const isOf = ({ rule, surety }: Way) =>
    rule.id === moveOutRule.id && surety.id === nightSurety.id;
  const like = all.find(isOf);
  // Held until they are feathered, which is a day later than the way itself has.
  const isHeld =
    !isFixed &&
    like !== undefined &&
    moveOutDay !== undefined &&
    dayOf(context, like) !== moveOutDay;
  const chosen = isFixed || isHeld ? undefined : like;
  const own: Way = {
    ...(isFixed
      ? { id: 'own-date', name: 'your own date' }
      : isHeld
        ? { id: 'feathered', name: `${moveOutRule.name}, once feathered` }
        : { id: 'own-rule', name: `${moveOutRule.name}; ${nightSurety.name}` }),
    rule: moveOutRule,
    surety: nightSurety,
    takes: moveOutRule.takes ?? nightSurety.takes,
  };
  const goesBy = chosen ?? own;
  const ways = chosen ? all : [own, ...all];
  const days = ways.map((way) =>
    way === own && (isFixed || isHeld) ? moveOutDay : dayOf(context, way),
  );
  return ways.map((way, i): WayOut => {
    const { id, name, takes, rule, surety } = way;
    const day = days[i];
    const same = days.findIndex((other) => other !== undefined && other === day);
    return {
      ...{ id, name, takes },
      chosenBy: { moveOutRuleId: rule.id, nightSuretyId: surety.id },
      isChosen: way === goesBy,
      isByAge: surety.share === 0,
      ...(day === undefined
        ? {}
        : {
            out: outOn({ ...context, moveOutRule: rule }, day, {
              way,
              sameAs: same < i ? ways[same]! : undefined,
              isFixed: way === own && isFixed,
            }),
          }),
    };
  });
}

function allWays({ batch, life, tables, moveOutRule }: PlanContext): Way[] {
  const { rules } = rowById(tables.moveOut, life.strain.moveOut);
  const { choices } = tables.nights.surety;
  const ruleOf = ({ id }: MoveOutRule) =>
    moveOutRuleOf({ ...batch, moveOutRuleId: id }, life, tables);
  // Beside a rule that is a way of its own, the others go by the usual one.
  const rule = ruleOf(moveOutRule.takes === undefined ? moveOutRule : defaultRow(rules));
  const byNights = choices.map((surety): Way => ({ ...surety, rule, surety }));
  const byRule = rules.flatMap((each): Way[] =>
    each.takes === undefined
      ? []
      : [
          {
            ...{ id: each.id, name: each.name, takes: each.takes },
            ...{ rule: ruleOf(each), surety: defaultRow(choices) },
          },
        ],
  );
  const asks = ({ surety }: Way) => 0 < surety.share;
  return [...byNights.filter((way) => !asks(way)), ...byRule, ...byNights.filter(asks)];
}

function dayOf(context: PlanContext, way: Way): number | undefined {
  const { batch, life, nights, tables } = context;
  const { moveOutDate: _fixed, ...free } = batch;
  const first = { nights, count: tables.judgements.birds.moveOutNights.value };
  return moveOutIndex(free, life, way.rule, first, way.surety.share);
}

interface Reason {
  readonly way: Way;
  readonly sameAs: Way | undefined;
  readonly isFixed: boolean;
}

function outOn(context: PlanContext, day: number, reason: Reason): WayOutDay {
  const { life } = context;
  const { way } = reason;
  const rows = rowsOfMove(context, day);
  const inputs = nightInputs(context, day);
  const age = life.arrivalAgeDays + day;
  const because = whyThen(context, day, reason);
  return {
    on: datedFact(
      `Out: ${way.name}`,
      context.dateOf(day),
      moveOutFormulas.moveOut,
      [...inputs, input('Share of nights', way.surety.share, 'share')],
      { rows },
    ),
    age: quantity(
      'Age at the move',
      age,
      'day',
      moveOutFormulas.moveOut,
      [
        input('Days after arrival', day, 'day'),
        input('Age at arrival', life.arrivalAgeDays, 'day'),
      ],
      { rows },
    ),
    stand: quantity(
      'What birds of that age stand at night',
      nightLowAt(context.moveOutRule, age),
      'degC',
      moveOutFormulas.moveOut,
      inputs,
      { rows },
    ),
    coldNight: coldNightOf(context, day, { inputs, rows }),
    coldNights: coldNightsOf(context, day, { inputs, rows }),
    oneColdNight: coldNightPart(context, day, rows),
    ...(life.hasBrooder ? { floor: floorUntil(context, day) } : {}),
    ...(because === undefined ? {} : { because }),
  };
}

/** Floor of the brooder on the last day in it. */
function floorUntil(context: PlanContext, day: number): NumberQuantity {
  const { life } = context;
  const standard = spaceStandardOf(context);
  const last = Math.max(0, day - 1);
  return quantity(
    'Brooder floor needed by then',
    brooderFloorM2(life, standard, last),
    'm2',
    spaceFormulas.floor,
    [
      input('Birds alive', life.aliveAll[last]!, 'count', 'N'),
      input('Age', life.arrivalAgeDays + last, 'day'),
      input('Standard', standard.name, 'text'),
    ],
    { rows: [standard, life.losses] },
  );
}

/** Why it is that day, where it is their age; the nights say the rest. */
function whyThen(
  context: PlanContext,
  day: number,
  { way, sameAs, isFixed }: Reason,
): string | undefined {
  if (isFixed) return undefined;
  const { life, moveOutRule, say } = context;
  const sooner = day === context.moveOutDay ? dayOf(context, way) : undefined;
  if (sooner !== undefined && sooner < day)
    return `Held to ${say(life.arrivalAgeDays + day, 'day')} of age, when they are feathered; nights let hardened ones out from ${say(context.dateOf(sooner), 'date')}.`;
  const age = life.arrivalAgeDays + day;
  const same = sameAs ? `Same date as “${sameAs.name}”: ` : '';
  const step = moveOutRule.later.find(({ fromDay }) => fromDay === age);
  if (age === Math.max(moveOutRule.fromDay, life.arrivalAgeDays))
    return `${same}${same ? 'n' : 'N'}ot before ${say(age, 'day')} of age.`;
  if (step && step.nightLowC !== nightLowAt(moveOutRule, age - 1))
    return `${same}${same ? 't' : 'T'}heir age sets it: from ${say(age, 'day')} they stand ${say(step.nightLowC, 'degC')}, before that ${say(nightLowAt(moveOutRule, age - 1), 'degC')}.`;
  return same ? `${same}the nights warm up that fast.` : undefined;
}
