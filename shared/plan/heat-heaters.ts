import { plainFormulas } from '../explain/plain-formulas.js';
import {
  from,
  fromRow,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
} from '../explain/quantity.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { Brooder } from '../farm/facility.js';
import { brooderHeatFormulas, heatersFor } from '../poultry/brooder-heat.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { capital } from './bird-words.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';
import type { DayHeat } from './heat-days.js';
import type { ColdestNight } from './heat-night.js';
import { heatRules, type HeatRules } from './heat-rules.js';

/** What the heaters give, whether that is enough, and how many it takes. */
export interface Heaters {
  readonly installed: NumberQuantity;
  /** Told to be out, of those there are. */
  readonly out: number;
  /** By the heat balance, on every night that is still ahead. */
  readonly enough: boolean;
  readonly heatersNeeded: NumberQuantity;
  /** Heaters to add for the coldest night that is still ahead, 0 when there are enough. */
  readonly toAdd: number;
  /** The first night that is still ahead on which there are too few, and how many it takes more. */
  readonly firstShort?: { readonly on: PlainDate; readonly toAdd: number };
  /** What one of them gives, W. */
  readonly heaterW: number;
  readonly rules: HeatRules;
}

/** The fewest heaters by a rule of thumb: the common one for lamps, by the floor for gas. */
export const fewestByRule = (rules: HeatRules): number | undefined =>
  (rules.lampRule ?? rules.others.find(({ needed }) => needed.spread)?.needed)?.value;

export function heatersOf(
  context: PlanContext,
  brooder: Brooder,
  { night, days }: { night: ColdestNight; days: readonly DayHeat[] },
): Found<Heaters> {
  const { heat } = brooder;
  const rules = heatRules(context, brooder, night);
  const each = fromRow(brooder, 'heat.wattsEach', 'Each', heat.wattsEach, 'W', 'P');
  const heatersNeeded =
    heat.kind === 'plate' ? platesNeeded(context, brooder) : byBalance(brooder, night, rules);
  const working = stillAhead(context, days)[0]?.asked.working ?? heat.count;
  const out = heat.count - working;
  const installed = quantity(
    out === 0 ? 'Heat installed' : 'Heat that still works',
    heat.wattsEach * working,
    'W',
    plainFormulas.measured,
    [
      each,
      out === 0
        ? fromRow(brooder, 'heat.count', 'Count', heat.count, 'count', 'n')
        : input(`Work, of ${heat.count}`, working, 'count', 'n'),
    ],
  );
  const short = shortAhead(context, brooder, heatersNeeded.value, days);
  const issues = [
    ...strengthIssues(context, brooder, { night, needed: heatersNeeded, rules, working, short }),
    ...plateIssues(context, brooder, night),
  ];
  const part: Heaters = {
    ...{ installed, out, heatersNeeded, heaterW: heat.wattsEach, rules },
    ...{ enough: short.toAdd === 0, ...short },
  };
  return found(part, { issues });
}

/**
 * How many heaters are missing on the nights that are still ahead. The common rule is no bound here:
 * it counts chicks in a room that nobody describes, and chicks that are cold tonight die of it.
 */
function shortAhead(
  context: PlanContext,
  { heat }: Brooder,
  needed: number,
  days: readonly DayHeat[],
): Pick<Heaters, 'toAdd' | 'firstShort'> {
  const ahead = stillAhead(context, days).flatMap(({ on, need, asked }) => {
    const asks = heat.kind === 'plate' ? needed : heatersFor(need.mid, heat.wattsEach);
    return need.mid === 0 ? [] : [{ on, toAdd: asks - asked.working }];
  });
  const firstShort = ahead.find(({ toAdd }) => 0 < toAdd);
  const toAdd = Math.max(0, ...ahead.map((night) => night.toAdd));
  return { toAdd, ...(firstShort ? { firstShort } : {}) };
}

const stillAhead = ({ dateOf, today }: PlanContext, days: readonly DayHeat[]) =>
  days.map((day, k) => ({ ...day, on: dateOf(k) })).filter(({ on }) => today <= on);

function platesNeeded({ tables, life, words }: PlanContext, brooder: Brooder): NumberQuantity {
  const { heat } = brooder;
  const { plate } = tables.heat;
  const count = heatersFor(life.placed * plate.wattsPerChick, heat.wattsEach);
  return quantity('Plates needed', count, 'count', brooderHeatFormulas.plateRule, [
    input(capital(words.young), life.placed, 'count', 'N'),
    fromTable(plate, 'For each chick', plate.wattsPerChick, 'W'),
    fromRow(brooder, 'heat.wattsEach', 'Each', heat.wattsEach, 'W', 'P'),
  ]);
}

function byBalance(brooder: Brooder, { need }: ColdestNight, rules: HeatRules): NumberQuantity {
  const { heat } = brooder;
  const countFor = (watts: number): number => heatersFor(watts, heat.wattsEach);
  const byRule = fewestByRule(rules);
  const all = [need.spread!.low, need.value, need.spread!.high].map(countFor);
  if (byRule !== undefined) all.push(byRule);
  return quantity(
    `${HEATER_NAMES[heat.kind]} needed`,
    countFor(need.value),
    'count',
    brooderHeatFormulas.heatersNeeded,
    [
      from(need, 'Q', 'Heat needed'),
      fromRow(brooder, 'heat.wattsEach', 'Each', heat.wattsEach, 'W', 'P'),
    ],
    {
      spread: {
        low: Math.min(...all),
        high: Math.max(...all),
        because:
          'the range of the heat needed, and the common rule, which counts heaters over chicks in a room and not what this brooder loses',
      },
    },
  );
}

interface Strength {
  readonly night: ColdestNight;
  readonly needed: NumberQuantity;
  readonly rules: HeatRules;
  /** Heaters that give heat now. */
  readonly working: number;
  readonly short: Pick<Heaters, 'toAdd'>;
}

function strengthIssues(
  context: PlanContext,
  brooder: Brooder,
  { night, needed, rules, working, short: { toAdd } }: Strength,
): PlanIssue[] {
  const { name, heat } = brooder;
  const { words } = context;
  const each = context.say(heat.wattsEach, 'W');
  const has =
    working === heat.count
      ? `${name} has ${heat.count} × ${each}`
      : `Of the ${heat.count} × ${each} in ${name} ${working === 0 ? 'none works' : working === 1 ? '1 works' : `${working} work`}`;
  const isPlate = heat.kind === 'plate';
  const byRule = fewestByRule(rules);
  const { lampRule, gasRule } = context.tables.heat;
  const rows = [heat.kind === 'gas' ? gasRule : lampRule];
  if (toAdd === 0) {
    if (working < needed.value || byRule === undefined || byRule <= working) return [];
    const text = `Check this: ${has}, enough by what it loses, but the common rule asks for ${byRule}. Watch on the first cold night whether the ${words.young} huddle, and have another ready.`;
    return [issue('note', 'heat-rule', text, rows)];
  }
  if (byRule !== undefined && byRule <= working) {
    const text = `${has}, as many as the common rule asks for, but what the brooder loses on the coldest night ahead asks for ${working + toAdd}: add ${toAdd} more, a better lid, or use a smaller part of it. The rule counts heaters over chicks in a room that nobody describes; the other figure counts what this brooder’s walls, lid and fresh air carry off. Hang a thermometer at ${words.youngOne} height on the first cold night.`;
    return [issue('act', 'heat-check', text, rows)];
  }
  const asks = isPlate
    ? `${context.life.placed} ${words.young} ask for ${needed.value}`
    : `the coldest expected night asks for about ${context.say(night.need.value, 'W')}`;
  const orElse = isPlate
    ? 'or brood fewer at a time'
    : 'insulate the walls and lid, close off a part, or order for a warmer week';
  // Below even the low end of the range nothing can be hoped for.
  const hopeless = !isPlate && heat.wattsEach * working < night.need.spread!.low;
  return [
    issue(
      hopeless ? 'stop' : 'act',
      'heat-too-weak',
      `${has}, but ${asks}. Add ${toAdd} more, ${orElse}. Energy and cost below are of the heaters ${working === heat.count ? 'you have' : 'that work'}.`,
    ),
  ];
}

function plateIssues(
  context: PlanContext,
  { name, heat }: Brooder,
  { worst }: ColdestNight,
): PlanIssue[] {
  const { plate } = context.tables.heat;
  if (heat.kind !== 'plate' || plate.warmestRoomFromC <= worst.asked.nightC) return [];
  const text = `Plates want a room of ${context.say(plate.warmestRoomFromC, 'degC')} or warmer; on a cold night the air around ${name} is about ${context.say(worst.asked.nightC, 'degC')}. Warm the room, or use lamps on those nights.`;
  return [issue('act', 'plate-room-cold', text, [plate])];
}

const HEATER_NAMES = { lamp: 'Lamps', plate: 'Plates', gas: 'Gas heaters' } as const;
