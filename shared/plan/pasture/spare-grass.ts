import { graze } from '../../pasture/grazier.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { moreHead } from './hay-over.js';
import type { PastureContext } from './pasture-context.js';
import { balesMade, surplusOf, type Chosen } from './surplus.js';
import { quantity } from '../../explain/quantity.js';
import { hayStoreFormulas } from './hay-store.js';

/**
 * Where the household makes no hay: what could be mown all the same, and what else could use it.
 * The season is walked once more as if hay were made.
 */
export function spareGrass(context: PastureContext, chosen: Chosen): PlanIssue[] {
  if (context.choices.makesHay !== false) return [];
  const { problem, books } = chosen;
  const mown = { problem, books: graze(problem) };
  const cuts = surplusOf(context, mown);
  if (cuts.length === 0) return [];
  const { say, paddocks } = context;
  const hay = quantity(
    'Hay that could be made',
    cuts.reduce((sum, cut) => sum + cut.hay.value, 0),
    'kg',
    hayStoreFormulas.own,
    [],
    { rows: [context.order] },
  );
  const names = [
    ...new Set(cuts.map(({ paddockId }) => paddocks.find(({ id }) => id === paddockId)!.name)),
  ];
  const cutKg = mown.books.cuts.reduce((sum, { kg }) => sum + kg, 0);
  const more = moreHead(context, chosen, cutKg);
  const ways = [
    'let a neighbor mow it',
    ...(0 < more ? [`keep about ${more} more head in summer`] : []),
    0 < books.toppings.length
      ? 'or top it, as planned here'
      : 'or leave it standing for a dry spell',
  ];
  return [
    issue(
      'note',
      'spare-grass',
      `More grass grows than the herds eat: from ${say(cuts[0]!.shutFrom, 'date')} on, ${names.slice(0, 4).join(', ')}${4 < names.length ? ` and ${names.length - 4} more` : ''} could be spared for about ${say(balesMade(context, hay, 'Bales').value, 'bales')} of hay. No hay is planned here: ${ways.join(', ')}. If you do make hay, say so under “Hay”.`,
      [hay],
    ),
  ];
}
