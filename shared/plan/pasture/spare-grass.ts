import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { moreHead, wordsOfHead } from './hay-over.js';
import { hayToBuy, isShortage } from './hay-part.js';
import type { PastureContext } from './pasture-context.js';
import { seasonFeed } from './season-feed.js';
import { baleOf, balesMade, chooseMoves, surplusOf, type Chosen } from './surplus.js';
import { quantity } from '../../explain/quantity.js';
import { hayStoreFormulas } from './hay-store.js';

/**
 * What to do with it: where the grass is short later it is feed for then, and no grass for more head.
 */
function waysToUse(context: PastureContext, chosen: Chosen, mown: Chosen): string {
  const { books } = chosen;
  const { say, dateOf } = context;
  const feed = seasonFeed(context, books);
  const { firstShort, lastShort } = feed;
  const homeFrom = Math.min(
    ...mown.books.cuts.filter(({ kg }) => 0 < kg).map(({ openFrom }) => openFrom),
  );
  const mownFeed = seasonFeed(context, mown.books);
  const lessKg = hayToBuy(context, chosen, feed).allKg - hayToBuy(context, mown, mownFeed).allKg;
  const less = Math.floor(lessKg / baleOf(context).kg);
  const lessToBuy = less < 1 ? '' : `: about ${say(less, 'bales')} less to buy`;
  if (firstShort !== undefined && homeFrom <= lastShort! && isShortage(context, feed.inSeasonKg)) {
    const since =
      homeFrom <= firstShort ? `, as it is from ${say(dateOf(firstShort), 'date')} on` : '';
    return lessToBuy === ''
      ? 'leave it standing for the days that are short later'
      : `make it all the same, or let a neighbor make it for you, and feed it when grass is short${since}${lessToBuy}`;
  }
  const cutKg = mown.books.cuts.reduce((sum, { kg }) => sum + kg, 0);
  const more = moreHead(context, chosen, cutKg);
  return [
    lessToBuy === ''
      ? 'let a neighbor mow it'
      : `make it, or let a neighbor make it for you${lessToBuy}`,
    ...wordsOfHead(context, more),
    0 < books.toppings.length
      ? 'or top it, as planned here'
      : 'or leave it standing for a dry spell',
  ].join(', ');
}

/**
 * Where the household makes no hay: what could be mown all the same, and what else could use it.
 * The season is walked once more as if hay were made.
 */
export function spareGrass(context: PastureContext, chosen: Chosen): PlanIssue[] {
  const { choices } = context;
  if (choices.makesHay !== false) return [];
  const mown = chooseMoves({ ...context, choices: { ...choices, makesHay: true } });
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
  return [
    issue(
      'note',
      'spare-grass',
      `More grass grows than the herds eat: from ${say(cuts[0]!.shutFrom, 'date')} on, ${names.slice(0, 4).join(', ')}${4 < names.length ? ` and ${names.length - 4} more` : ''} could be spared for about ${say(balesMade(context, hay, 'Bales').value, 'bales')} of hay. No hay is planned here: ${waysToUse(context, chosen, mown)}. If you do make hay, say so under “Hay”.`,
      [hay],
    ),
  ];
}
