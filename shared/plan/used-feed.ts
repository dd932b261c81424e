import {
  fromFarm,
  input,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../explain/quantity.js';
import { processingFormulas } from '../poultry/processing.js';
import { NINETEEN_IN_TWENTY } from '../poultry/weighings.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import { feedOpenedFormulas, type OwnFeed } from './feed-opened.js';
import type { Life } from './life.js';

/** Feed used between the first and the last opening of bags, beside what was planned for it. */
export interface UsedFeed {
  readonly used: NumberQuantity;
  readonly plannedKg: number;
  /** What the plan goes by from there on. */
  readonly factor: NumberQuantity;
  /** Share that went beyond what they eat; left out where it is no figure of this flock. */
  readonly wasted?: NumberQuantity;
  /** Feed over the live weight they put on in the same days. */
  readonly conversion?: NumberQuantity;
}

/** What the bags change of the feed of growing birds, and of hens in lay. */
export const ownFeedInputs = (life: Life): QuantityInput[] => [
  ...(life.ownFeed ? [fromFarm('Your feed over the plan’s', life.ownFeed.factor, 'ratio')] : []),
  ...hensFeedInputs(life),
];

export const hensFeedInputs = ({ hensFeed }: Pick<Life, 'hensFeed'>): QuantityInput[] =>
  hensFeed ? [fromFarm('Your hens’ feed over the plan’s', hensFeed.factor, 'ratio')] : [];

/** What was used last: by the hens, once they lay and enough bags were emptied. */
const latestOf = ({ ownFeed, hensFeed }: Life): OwnFeed | undefined => hensFeed ?? ownFeed;

export function usedOf(context: PlanContext): { readonly used?: UsedFeed } {
  const own = latestOf(context.life);
  return own ? { used: usedFeed(context, own) } : {};
}

function usedFeed({ life }: PlanContext, own: OwnFeed): UsedFeed {
  const used = quantity('Feed used, by your bags', own.usedKg, 'kg', feedOpenedFormulas.eaten, [
    fromFarm('Bags emptied', own.bags, 'bags', 'n_bags'),
    input('Days', own.to - own.from, 'day'),
  ]);
  const about = NINETEEN_IN_TWENTY * own.error;
  const massOn = (day: number): number => (life.meanWeightKg[day] ?? 0) * (life.aliveAll[day] ?? 0);
  // What hens put on is no measure of what they eat: they lay.
  const gainKg = own === life.hensFeed ? 0 : massOn(own.to) - massOn(own.from);
  return {
    used,
    plannedKg: own.plannedKg,
    factor: quantity(
      'Your feed over the plan’s',
      own.factor,
      'ratio',
      feedOpenedFormulas.factor,
      [
        fromFarm('Feed used', own.usedKg, 'kg', 'F_used'),
        input('Planned for those days', own.plannedKg, 'kg', 'F_planned'),
        fromFarm('Bags emptied', own.bags, 'bags', 'n_bags'),
      ],
      {
        spread: {
          low: Math.max(0, own.factor - about),
          high: own.factor + about,
          because: 'the last bag may not have been empty',
        },
      },
    ),
    ...(own.isFarOff ? {} : { wasted: wastedOf(life, own) }),
    ...(gainKg <= 0
      ? {}
      : {
          conversion: quantity(
            'Feed conversion so far',
            own.usedKg / gainKg,
            'ratio',
            processingFormulas.conversion,
            [
              fromFarm('Feed used', own.usedKg, 'kg', 'F'),
              input('Live weight put on', gainKg, 'kg', 'W'),
            ],
          ),
        }),
  };
}

/** What went beyond what they eat: below nothing, they eat less than the table says. */
function wastedOf({ wasteShare }: Life, own: OwnFeed): NumberQuantity {
  const share = (ratio: number): number => ratio * (1 + wasteShare) - 1;
  const ratio = own.usedKg / own.plannedKg;
  const about = NINETEEN_IN_TWENTY * own.openError;
  return quantity(
    'Feed gone beyond what they eat',
    share(ratio),
    'share',
    feedOpenedFormulas.wasted,
    [
      fromFarm('Feed used', own.usedKg, 'kg', 'F_used'),
      input('Planned for those days', own.plannedKg, 'kg', 'F_planned'),
      input('Planned as spilled', wasteShare, 'share', 'waste'),
    ],
    {
      spread: {
        low: share(ratio - about),
        high: share(ratio + about),
        because: 'the last bag may not have been empty',
      },
    },
  );
}

/** Feed beyond the plan: spilled, eaten by somebody else, or not turned into weight. */
export function usedFeedIssues({ life, tables, say }: PlanContext): PlanIssue[] {
  const ownFeed = latestOf(life);
  const { feedDrift } = tables.judgements.birds;
  if (ownFeed?.isFarOff) {
    return [
      issue(
        'act',
        'feed-far-off',
        `By the bags opened they used ${say(ownFeed.usedKg, 'kg')} of feed where ${say(ownFeed.plannedKg, 'kg')} was planned. No flock differs so much, so that the plan leaves it out: check the number of bags, what one weighs, and whether other animals got some of it.`,
      ),
    ];
  }
  if (!ownFeed || ownFeed.factor - ownFeed.error < 1 + feedDrift.value) return [];
  const percent = Math.round(100 * (ownFeed.usedKg / ownFeed.plannedKg - 1));
  return [
    issue(
      'act',
      'feed-above-plan',
      `They used ${say(ownFeed.usedKg, 'kg')} of feed where ${say(ownFeed.plannedKg, 'kg')} was planned, ${percent} % more. Look for feed on the ground, feeders too full or too low, rats and wild birds, and cold${ownFeed === life.hensFeed ? '' : '; weigh some birds to see whether they grew on it'}.`,
      [feedDrift],
    ),
  ];
}
