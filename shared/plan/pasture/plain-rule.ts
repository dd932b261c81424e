import type { Formula } from '../../explain/formula.js';
import { fromJudgement, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { graze } from '../../pasture/grazier.js';
import type { SeasonBooks } from '../../pasture/season-books.js';
import type { PastureContext } from './pasture-context.js';
import { seasonFeed } from './season-feed.js';
import type { Chosen } from './surplus.js';

export const plainRuleFormulas = {
  saved: {
    id: 'saved-over-plain-rule',
    title: 'Fed by hand less than by a plain rule',
    words:
      'The same season walked by a plain rule: into the most grown paddock, out at the residual or after the longest stay, shut for hay where it has grown above a height. What it feeds by hand, less what this plan does. A plain rule often makes more hay and feeds more of it back, as it shuts what the herd would have grazed: the hay of both stands beside it.',
    symbols: 'ΔF = F_plain − F_plan',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/**
 * What these moves feed by hand less than a plain rule in the same model, kg of dry matter; below 0
 * where the plain rule feeds less. By it nothing is left standing that a longest stay does not eat.
 */
export function savedOverPlainRule(context: PastureContext, chosen: Chosen): NumberQuantity {
  const { problem } = chosen;
  const { plainHayRipeness, mostStrips } = context.tables.judgements.grazing;
  const makesHay = context.choices.makesHay !== false;
  const plain = graze(
    { ...problem, takes: 'most-grown', judged: { ...problem.judged, mostStrips: 1 } },
    makesHay ? 'above-a-height' : 'never',
  );
  const [ofPlain, ofPlan] = [feedAndHay(context, plain), feedAndHay(context, chosen.books)];
  return quantity(
    'Fed by hand less than by a plain rule, dry matter',
    ofPlain.fedKg - ofPlan.fedKg,
    'kg',
    plainRuleFormulas.saved,
    [
      input('Fed by the plain rule', ofPlain.fedKg, 'kg', 'F_plain'),
      input('Fed by this plan', ofPlan.fedKg, 'kg', 'F_plan'),
      input('Hay made by the plain rule', ofPlain.madeKg, 'kg'),
      input('Hay made by this plan', ofPlan.madeKg, 'kg'),
      fromJudgement(plainHayRipeness),
      fromJudgement(mostStrips),
    ],
    { rows: [context.order] },
  );
}

/** What is fed beside grass and what is made of hay, kg of dry matter. */
function feedAndHay(
  context: PastureContext,
  books: SeasonBooks,
): { readonly fedKg: number; readonly madeKg: number } {
  const { allKg } = seasonFeed(context, books);
  const mown = books.cuts.reduce((sum, { kg }) => sum + kg, 0);
  return {
    fedKg: allKg,
    madeKg: mown * context.tables.pasture.hay.harvestShare,
  };
}
