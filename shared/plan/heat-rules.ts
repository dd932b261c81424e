import {
  fromRow,
  fromTable,
  from,
  input,
  quantity,
  type NumberQuantity,
} from '../explain/quantity.js';
import type { Brooder } from '../farm/facility.js';
import { brooderHeatFormulas, lampsByRule } from '../poultry/brooder-heat.js';
import { capital } from './bird-words.js';
import { floorHad, floorHadM2 } from './floor-had.js';
import type { PlanContext } from './context.js';
import type { ColdestNight } from './heat-night.js';

/** What rules of thumb say of this batch, in heaters such as the household has. */
export interface HeatRules {
  /** By the common rule of lamps; left out where it gives no figure, and of plates and gas. */
  readonly lampRule?: NumberQuantity;
  readonly others: readonly { readonly name: string; readonly needed: NumberQuantity }[];
}

export function heatRules(context: PlanContext, brooder: Brooder, night: ColdestNight): HeatRules {
  if (brooder.heat.kind === 'gas') return { others: [gasRule(context, brooder, night)] };
  if (brooder.heat.kind === 'plate') return { others: [] };
  const lampRule = commonRule(context, brooder, night);
  return { ...(lampRule ? { lampRule } : {}), others: otherRules(context, brooder) };
}

function commonRule(
  { tables, life, words }: PlanContext,
  brooder: Brooder,
  { worst, coldestNight }: ColdestNight,
): NumberQuantity | undefined {
  const { heat } = brooder;
  const rule = tables.heat.lampRule;
  const lamps = lampsByRule(rule, life.placed, worst.asked.nightC, heat.wattsEach);
  if (lamps === undefined) return undefined;
  return quantity(
    'Lamps by the common rule',
    lamps,
    'count',
    brooderHeatFormulas.lampRule,
    [
      input(capital(words.young), life.placed, 'count', 'N'),
      {
        ...from(coldestNight),
        ...input('Air around the brooder', worst.asked.nightC, 'degC', 'T'),
      },
      fromTable(rule, `Chicks a lamp of ${rule.lampW} W warms at most`, rule.chicks, 'count'),
      fromRow(brooder, 'heat.wattsEach', 'Each', heat.wattsEach, 'W', 'P'),
    ],
    10 < worst.asked.nightC
      ? { outside: 'The rule gives no figure above 10 °C (50 °F); 75 chicks a lamp is kept.' }
      : {},
  );
}

const otherRules = (
  { tables, life, words }: PlanContext,
  brooder: Brooder,
): HeatRules['others'] => {
  const { heat } = brooder;
  return tables.heat.rules.map((rule) => ({
    name: rule.name,
    needed: quantity(
      'Lamps by it',
      Math.ceil((life.placed * rule.wattsPerChick) / heat.wattsEach - 1e-9),
      'count',
      brooderHeatFormulas.thumbRule,
      [
        input(capital(words.young), life.placed, 'count', 'N'),
        fromTable(rule, 'For each chick', rule.wattsPerChick, 'W', 'w'),
        fromRow(brooder, 'heat.wattsEach', 'Each', heat.wattsEach, 'W', 'P'),
      ],
    ),
  }));
};

function gasRule(
  { tables }: PlanContext,
  brooder: Brooder,
  { worst: { share } }: ColdestNight,
): HeatRules['others'][number] {
  const { gasRule: rule } = tables.heat;
  // What lies behind the board is not heated.
  const floorM2 = share * floorHadM2(brooder);
  const count = (wPerM2: number): number =>
    Math.ceil((floorM2 * wPerM2) / brooder.heat.wattsEach - 1e-9);
  return {
    name: 'Gas brooders in cold weather, by the floor',
    needed: quantity(
      'Gas heaters by it',
      count(rule.lowWPerM2),
      'count',
      brooderHeatFormulas.thumbRule,
      [
        floorHad(brooder, 'Floor', 'N'),
        ...(share < 1 ? [input('Part of it in use', share, 'share')] : []),
        fromTable(rule, 'For each square meter', rule.lowWPerM2, 'W', 'w'),
        fromRow(brooder, 'heat.wattsEach', 'Each', brooder.heat.wattsEach, 'W', 'P'),
      ],
      {
        spread: {
          low: count(rule.lowWPerM2),
          high: count(rule.highWPerM2),
          because: 'the source gives a range for floors kept in the low 90s °F',
        },
      },
    ),
  };
}
