import type { Formula } from '../../explain/formula.js';
import { from, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { fedByHand } from './fed-by-hand.js';
import type { PastureContext } from './pasture-context.js';
import { balesOf, type Chosen } from './surplus.js';

export const hayByWinterFormulas = {
  untilOut: {
    id: 'hay-to-buy-until-out',
    title: 'Hay to buy until turn-out',
    words:
      'What the herds are fed from today until they go out on grass, as hay with what is lost in store and at the feeder, less what lies in store, was baled or is taken as made. Hay of the coming summer is no help for it.',
    symbols: 'H_out = max(0, H_now + H_spring − H_store − H_baled − H_taken)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  nextWinter: {
    id: 'hay-to-buy-next-winter',
    title: 'Hay to buy from turn-out through the next winter',
    words: 'All hay to buy, less what is to be bought until turn-out.',
    symbols: 'H_next = H_buy − H_out',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Hay to buy for this winter and for the next, where both are in one plan. */
export interface HayByWinter {
  readonly untilOut: NumberQuantity;
  readonly balesUntilOut: NumberQuantity;
  readonly nextWinter: NumberQuantity;
  readonly balesNextWinter: NumberQuantity;
}

/**
 * Hay that is fed in the plan before herds go out, kg as it lies in store; undefined where none is
 * still to go out.
 */
export function fedUntilOutKg(
  context: PastureContext,
  chosen: Chosen,
  hayPerDryKg: number,
): number | undefined {
  const { stays } = chosen.books;
  const turnOut = stays.find(({ start }) => start === 'turn-out');
  if (!turnOut) return undefined;
  let kg = 0;
  context.herds.forEach((_, h) => {
    const fed = fedByHand(context, chosen, h);
    // A herd that never grazes lives on hay beside those that do.
    const { start, from: out } = stays.find(({ herd }) => herd === h) ?? turnOut;
    if (start !== 'turn-out') return;
    for (let day = context.span.from; day < out; day++) kg += fed[day]!;
  });
  return kg * hayPerDryKg;
}

/** Hay as it lies in store, kg. */
interface Kept {
  /** Fed from today until turn-out. */
  readonly untilOutKg: number;
  /** Fed from today until there is grass again after the next winter. */
  readonly needKg: number;
  /** In store, baled, or taken as made. */
  readonly thereKg: number;
  /** To be made in the summer of the plan. */
  readonly ownKg: number;
}

/** What is to be bought of it: hay that is made in summer feeds nobody in the spring before. */
export function toBuyKg({ untilOutKg, needKg, thereKg, ownKg }: Kept): {
  readonly untilOut: number;
  readonly all: number;
} {
  const untilOut = Math.max(0, untilOutKg - thereKg);
  const leftKg = Math.max(0, thereKg - untilOutKg);
  return { untilOut, all: untilOut + Math.max(0, needKg - untilOutKg - leftKg - ownKg) };
}

/** Parts an amount of hay to buy by winters. */
export function hayByWinter(
  context: PastureContext,
  toBuy: NumberQuantity,
  untilOut: NumberQuantity,
): HayByWinter {
  const nextWinter = quantity(
    untilOut.label.replace('until turn-out', 'from turn-out through the next winter'),
    Math.max(0, toBuy.value - untilOut.value),
    'kg',
    hayByWinterFormulas.nextWinter,
    [from(toBuy, 'H_buy'), from(untilOut, 'H_out')],
    { rows: [context.order] },
  );
  const bales = (of: NumberQuantity): NumberQuantity =>
    balesOf(context, of, of.label.replace('Hay', 'Bales'));
  return {
    ...{ untilOut, balesUntilOut: bales(untilOut) },
    ...{ nextWinter, balesNextWinter: bales(nextWinter) },
  };
}
