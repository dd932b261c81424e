import { from, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { feedActualFormulas } from './feed-actual-formulas.js';
import type { FeedActual } from './feed-actual.js';

/** What the feed of all batches cost beside their plans; the parts add up, to the last coin. */
export interface FeedActualYear {
  readonly planned: NumberQuantity;
  readonly heads: NumberQuantity;
  readonly intake: NumberQuantity;
  readonly waste: NumberQuantity;
  readonly price: NumberQuantity;
  readonly actual: NumberQuantity;
  /** What they are still to eat this year; left out where all of them are gone. */
  readonly toCome?: { readonly planned: NumberQuantity; readonly now: NumberQuantity };
}

/** The batches of the year together; undefined where no bags were told of any. */
export function feedActualYear(batches: readonly FeedActual[]): FeedActualYear | undefined {
  if (batches.length === 0) return undefined;
  const ofAll = (label: string, each: (of: FeedActual) => NumberQuantity | undefined) => {
    const known = batches.flatMap((of) => {
      const part = each(of);
      return part ? [{ name: of.name, part }] : [];
    });
    return quantity(
      label,
      known.reduce((sum, { part }) => sum + part.value, 0),
      'money',
      feedActualFormulas.ofAll,
      known.map(({ name, part }) => from(part, undefined, name)),
    );
  };
  const [first] = batches;
  const sumOf = (key: 'planned' | 'heads' | 'intake' | 'waste' | 'price' | 'actual') =>
    ofAll(first![key].label, (of) => of[key]);
  return {
    planned: sumOf('planned'),
    heads: sumOf('heads'),
    intake: sumOf('intake'),
    waste: sumOf('waste'),
    price: sumOf('price'),
    actual: sumOf('actual'),
    ...(batches.some(({ toCome }) => toCome)
      ? {
          toCome: {
            planned: ofAll('Still to come, as planned', ({ toCome }) => toCome?.planned),
            now: ofAll('Still to come, by now', ({ toCome }) => toCome?.now),
          },
        }
      : {}),
  };
}
