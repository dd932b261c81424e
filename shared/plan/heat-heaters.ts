import { plainFormulas } from '../explain/plain-formulas.js';
import {
  from,
  fromFarm,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
} from '../explain/quantity.js';
import type { Brooder } from '../farm/facility.js';
import { brooderHeatFormulas } from '../poultry/brooder-heat.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';
import type { ColdestNight } from './heat-night.js';

/** What the heaters give, whether that is enough, and how many it takes. */
export interface Heaters {
  readonly installed: NumberQuantity;
  readonly enough: boolean;
  readonly heatersNeeded: NumberQuantity;
  /** What one of them gives, W. */
  readonly heaterW: number;
}

export function heatersOf(
  context: PlanContext,
  brooder: Brooder,
  night: ColdestNight,
): Found<Heaters> {
  const { tables, life } = context;
  const { heat } = brooder;
  const { need } = night;
  const isPlate = heat.kind === 'plate';
  const neededW = isPlate ? life.placed * tables.heat.plate.wattsPerChick : need.value;
  const countFor = (watts: number): number => Math.ceil(watts / heat.wattsEach - 1e-9);
  const each = fromFarm('Each', heat.wattsEach, 'W', 'P');
  const heatersNeeded = isPlate
    ? quantity('Plates needed', countFor(neededW), 'count', brooderHeatFormulas.plateRule, [
        input('Chicks', life.placed, 'count', 'N'),
        fromTable(tables.heat.plate, 'For each chick', tables.heat.plate.wattsPerChick, 'W'),
        each,
      ])
    : quantity(
        `${HEATER_NAMES[heat.kind]} needed`,
        countFor(neededW),
        'count',
        brooderHeatFormulas.heatersNeeded,
        [from(need, 'Q', 'Heat needed'), each],
        {
          spread: {
            low: countFor(need.spread!.low),
            high: countFor(need.spread!.high),
            because: 'same range as the heat needed',
          },
        },
      );
  const installed = quantity(
    'Heat installed',
    heat.wattsEach * heat.count,
    'W',
    plainFormulas.measured,
    [each, fromFarm('Count', heat.count, 'count', 'n')],
  );
  const enough = neededW <= installed.value;
  const issues: PlanIssue[] = enough
    ? []
    : [tooWeak(context, brooder, night, { neededW, neededCount: heatersNeeded.value })];
  if (isPlate && night.worst.nightC < tables.heat.plate.warmestRoomFromC) {
    issues.push(
      issue(
        'act',
        'plate-room-cold',
        `Plates want a room of ${context.say(tables.heat.plate.warmestRoomFromC, 'degC')} or warmer; on a cold night the air around ${brooder.name} is about ${context.say(night.worst.nightC, 'degC')}. Warm the room, or use lamps on those nights.`,
        [tables.heat.plate],
      ),
    );
  }
  return found({ installed, enough, heatersNeeded, heaterW: heat.wattsEach }, { issues });
}

function tooWeak(
  context: PlanContext,
  { name, heat }: Brooder,
  { need }: ColdestNight,
  { neededW, neededCount }: { neededW: number; neededCount: number },
): PlanIssue {
  const isPlate = heat.kind === 'plate';
  const asks = isPlate
    ? `${context.life.placed} chicks ask for plates of about ${context.say(neededW, 'W')}`
    : `the coldest expected night asks for about ${context.say(need.value, 'W')}`;
  return issue(
    // Below even the low end of the range nothing can be hoped for.
    isPlate || need.spread!.low <= heat.wattsEach * heat.count ? 'act' : 'stop',
    'heat-too-weak',
    `${name} has ${heat.count} × ${context.say(heat.wattsEach, 'W')}, but ${asks}. Add ${neededCount - heat.count} more, ${isPlate ? 'or brood fewer at a time' : 'insulate the walls and lid, or order for a warmer week'}. Energy and cost below count the heaters that are needed.`,
  );
}

const HEATER_NAMES = { lamp: 'Lamps', plate: 'Plates', gas: 'Gas heaters' } as const;
