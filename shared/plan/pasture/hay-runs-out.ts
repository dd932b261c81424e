import { daysBetween } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import { fedByHand } from './fed-by-hand.js';
import type { PastureContext } from './pasture-context.js';
import type { Chosen } from './surplus.js';

export const hayRunsOutFormulas = {
  runsOut: {
    id: 'hay-runs-out',
    title: 'Hay runs out',
    words: 'First day on which what lies in store and has come home is fed.',
    symbols: 'H_store + H_home(t) < H_fed(t)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/**
 * First day on which there is none left; undefined where it lasts or is not known.
 *
 * @param of hay for a kilogram eaten, what is fed before the plan begins, and what is there, if that is known
 */
export function runsOutOn(
  context: PastureContext,
  chosen: Chosen,
  {
    hayPerDryKg,
    beforeKg,
    storeKg,
  }: { hayPerDryKg: number; beforeKg: number; storeKg: number | undefined },
): number | undefined {
  const { span, tables } = context;
  if (storeKg === undefined) return undefined;
  const { hay } = tables.pasture;
  const home = new Map<number, number>();
  for (const { openFrom, kg } of chosen.books.cuts)
    home.set(openFrom, (home.get(openFrom) ?? 0) + (kg * hay.harvestShare) / hay.dryMatterShare);
  const fed = context.herds.map((_, h) => fedByHand(context, chosen, h));
  let left = storeKg - beforeKg;
  if (left < 0) {
    const days = daysBetween(context.today, context.dateOf(span.from));
    return span.from - days + Math.floor((days * storeKg) / beforeKg);
  }
  for (let day = span.from; day < span.to; day++) {
    left += home.get(day) ?? 0;
    for (const kg of fed) left -= kg[day]! * hayPerDryKg;
    if (left < -1e-6) return day;
  }
  return undefined;
}
