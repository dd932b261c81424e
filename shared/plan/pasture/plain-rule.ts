import type { Formula } from '../../explain/formula.js';
import { fromJudgement, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { graze } from '../../pasture/grazier.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
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

/** These moves beside those of a plain rule in the same model. */
export interface BesideRule {
  /** Fed by hand less than by the rule, dry matter; below 0 where the rule feeds less. */
  readonly saved: NumberQuantity;
  /** Hay that the rule would leave less to buy, as it lies in store, kg; 0 where it leaves more. */
  readonly rulesGainKg: number;
}

/**
 * Holds the moves of a plan against a plain rule: by it nothing is left standing that a longest stay
 * does not eat.
 *
 * @param hay what is to buy by the plan, kg, and hay in store for a kilogram of dry matter eaten
 */
export function besidePlainRule(
  context: PastureContext,
  chosen: Chosen,
  hay: { readonly toBuyKg: number; readonly hayPerDryKg: number },
): BesideRule {
  const { problem } = chosen;
  const { plainHayRipeness, mostStrips } = context.tables.judgements.grazing;
  const makesHay = context.choices.makesHay !== false;
  const plain = graze(
    { ...problem, takes: 'most-grown', judged: { ...problem.judged, mostStrips: 1 } },
    makesHay ? 'above-a-height' : 'never',
  );
  const [ofPlain, ofPlan] = [feedAndHay(context, plain), feedAndHay(context, chosen.books)];
  const saved = quantity(
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
  const { dryMatterShare } = context.tables.pasture.hay;
  const balance = ({ fedKg, madeKg }: typeof ofPlan): number =>
    fedKg * hay.hayPerDryKg - madeKg / dryMatterShare;
  const gainKg = Math.min(hay.toBuyKg, balance(ofPlan) - balance(ofPlain));
  return { saved, rulesGainKg: Math.max(0, gainKg) };
}

/** Says where the plain rule leaves clearly less hay to buy, and what it does otherwise. */
export function ruleIsBetter(
  context: PastureContext,
  { saved, rulesGainKg }: BesideRule,
  needKg: number,
): PlanIssue[] {
  if (rulesGainKg <= context.tables.judgements.grazing.littleShare.value * needKg) return [];
  const { say, choices } = context;
  const [fed, ownFed, made, ownMade] = saved.inputs
    .slice(0, 4)
    .map(({ value }) => say(value as number, 'kg'));
  const does =
    choices.makesHay === false
      ? `always takes the tallest grass and feeds hay until it is at its full height: ${fed} of dry matter by hand, this plan ${ownFed}. Where hay is dear, wait longer before going in`
      : `always takes the tallest grass and shuts every paddock that stands half as tall again as it is grazed: it makes ${made} of hay and feeds ${fed}, this plan makes ${ownMade} and feeds ${ownFed}. Where hay is dear, shut earlier and more`;
  return [
    issue(
      'note',
      'plain-rule-better',
      `By a plain rule about ${say(rulesGainKg, 'kg')} less hay would be to buy here. The rule ${does}.`,
      [saved],
    ),
  ];
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
