import type { Formula } from '../explain/formula.js';
import { fromRow, fromTable, input, quantity, type NumberQuantity } from '../explain/quantity.js';
import type { Brooder } from '../farm/facility.js';
import type { PlanContext } from './context.js';
import { heatAsked, type HeatAsked } from './heat-asked.js';
import { surroundingRows } from './heat-days.js';
import { coldNightRows } from './outside-weather.js';

export const heatLimitFormulas = {
  chicks: {
    id: 'most-chicks-by-heat',
    title: 'Most chicks for lamps or gas heaters',
    words:
      'The most chicks with whom the heat that is needed on the coldest expected night is no more than the heaters give. Walls and floor lose the same with any number; each chick needs fresh air that must be warmed, more of it where a heater burns without a flue, and from its second week on gives warmth of its own. Lamps have places for no more than the common rule puts under one. None where the empty brooder loses more than they give.',
    symbols: 'max{N: Q(N) ≤ P}',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** More than that a batch cannot hold; so many chicks are no limit. */
const MOST_CHICKS = 6000;

/**
 * The most chicks that lamps or gas heaters keep warm on the coldest night of a plan; undefined where
 * they do so for any number that can be planned.
 */
export function mostUnderHeat(context: PlanContext, brooder: Brooder): NumberQuantity | undefined {
  const { heat } = brooder;
  const haveW = heat.count * heat.wattsEach;
  const askedBy = (chicks: number): HeatAsked => heatAsked(withChicks(context, chicks), brooder);
  const isWarm = (chicks: number): boolean => {
    const { mostW, byRule = 0 } = askedBy(chicks);
    const hasPlaces = heat.kind === 'gas' || byRule <= heat.count;
    return hasPlaces && mostW <= haveW + 1e-9;
  };
  if (isWarm(MOST_CHICKS)) return undefined;
  const most = lastThatHolds(isWarm);
  const { ventilation, birds, floor } = context.tables.heat;
  return quantity(
    `${heat.kind === 'gas' ? 'Gas heaters' : 'Heat lamps'}: most ${context.words.young}`,
    most,
    'count',
    heatLimitFormulas.chicks,
    [
      fromRow(brooder, 'heat.wattsEach', 'Each', heat.wattsEach, 'W', 'P'),
      fromRow(brooder, 'heat.count', 'Count', heat.count, 'count', 'n'),
      input('Heat needed for so many', askedBy(most).mostW, 'W', 'Q'),
      input('Heat needed for one more', askedBy(most + 1).mostW, 'W'),
      fromTable(ventilation, 'Fresh air by', 'birds and their weight', 'text'),
      fromTable(birds, 'Birds count as warmth from', birds.creditFromDay, 'day'),
    ],
    {
      rows: [
        floor,
        context.life.losses,
        ...context.life.weightRows,
        ...coldNightRows(context),
        ...surroundingRows(brooder, context.tables),
      ],
    },
  );
}

/** The same birds, of whom so many come. */
function withChicks(context: PlanContext, chicks: number): PlanContext {
  const { life } = context;
  const aliveAll = life.aliveAll.map((alive) => (alive * chicks) / life.placed);
  return { ...context, life: { ...life, placed: chicks, aliveAll } };
}

/** The largest number for which it holds; 0 for none. Few can need more heat than some do. */
function lastThatHolds(holds: (chicks: number) => boolean): number {
  let [fits, tooMany] = [0, MOST_CHICKS];
  for (let step = MOST_CHICKS / 2; 1 <= step; step /= 2) {
    const next = Math.round(step);
    if (holds(next)) {
      fits = next;
      break;
    }
    tooMany = next;
  }
  while (fits + 1 < tooMany) {
    const middle = Math.floor((fits + tooMany) / 2);
    if (holds(middle)) fits = middle;
    else tooMany = middle;
  }
  return fits;
}
