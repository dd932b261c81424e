import type { PlainDate } from '../calendar/plain-date.js';
import type { Formula } from '../explain/formula.js';
import {
  from,
  fromFarm,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
} from '../explain/quantity.js';
import { reachOf, survivingShare } from '../poultry/losses.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { formatChance } from '../units/format.js';
import type { PlanContext } from './context.js';
import type { Life } from './life.js';

export const countedFormulas = {
  now: {
    id: 'birds-counted',
    title: 'Birds there are',
    words:
      'Those that came alive, less those that died and those that were processed, sold or given.',
    symbols: 'N = N_came − N_died − N_left',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  usualLoss: {
    id: 'usual-loss-by-now',
    title: 'Usually lost by now',
    words: 'What a flock of this kind usually loses up to this day, of those that came.',
    symbols: 'N_came·(1 − S(t))',
    sources: [],
    mark: 'computed',
  },
  asMany: {
    id: 'chance-of-such-losses',
    title: 'Chance of losing as many',
    words:
      'Of a hundred flocks with the usual losses, those that would have lost as many or more by this day. How many live varies from flock to flock more than a coin does, as losses come together.',
    symbols: 'P(D ≥ d), D ~ beta-binomial(N_came, 1 − S(t), ρ)',
    sources: ['FLOCK_LOSSES'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** How many birds there are by what was told. */
export interface CountedPart {
  readonly now: NumberQuantity;
  readonly died: NumberQuantity;
  /** Processed, sold or given. */
  readonly left: NumberQuantity;
  readonly usuallyLost: NumberQuantity;
  /** The day on which the last of them died or went; left out while some are there. */
  readonly lastLeftOn?: PlainDate;
  /** Days on which some were told to have been processed. */
  readonly processedOn: readonly PlainDate[];
  /** Chance of losing as many as died, where any did. */
  readonly asMany?: NumberQuantity;
}

/** Undefined while nothing was told that says how many there are. */
export function countedPart(context: PlanContext): CountedPart | undefined {
  const { life, tables, headChanges = [] } = context;
  const { told } = life;
  if (!told?.isCounted) return undefined;
  const processed = headChanges.filter(({ change }) => change === 'processed');
  const [came, died, left] = [
    fromFarm('Came alive', life.placed, 'count', 'N_came'),
    fromFarm('Died', told.died[told.knownTo]!, 'count', 'N_died'),
    fromFarm('Processed, sold or given', told.left[told.knownTo]!, 'count', 'N_left'),
  ];
  const fact = (label: string, of: typeof died): NumberQuantity =>
    quantity(label, Number(of.value), 'count', countedFormulas.now, [of]);
  const share = survivingShare(life.rates, told.knownTo);
  const usual = [
    came,
    input('Usually lives to now', share, 'share', 'S'),
    input('Days after arrival', told.knownTo, 'day', 't'),
  ];
  const rows = { rows: [life.losses] };
  const asMany = chanceOfSuchLosses(life);
  return {
    now: quantity('Birds there are', life.now!.there, 'count', countedFormulas.now, [
      came,
      died,
      left,
    ]),
    died: fact('Died so far', died),
    left: fact('Processed, sold or given', left),
    usuallyLost: quantity(
      'Usually lost by now',
      life.placed * (1 - share),
      'count',
      countedFormulas.usualLoss,
      usual,
      rows,
    ),
    ...(told.overOn === undefined ? {} : { lastLeftOn: context.dateOf(told.overOn) }),
    processedOn: [...new Set(processed.map(({ date }) => date))].sort(),
    ...(asMany === undefined
      ? {}
      : {
          asMany: quantity(
            'Chance of losing as many',
            asMany,
            'chance',
            countedFormulas.asMany,
            [
              ...usual,
              from(fact('Died so far', died), 'd'),
              fromTable(
                tables.orders.togetherness,
                'Losses come together',
                tables.orders.togetherness.value,
                'ratio',
                'ρ',
              ),
            ],
            rows,
          ),
        }),
  };
}

/** Chance that a flock with the usual losses would have lost as many by now; undefined where none died. */
function chanceOfSuchLosses({ told, rates, placed, odds }: Life): number | undefined {
  const died = told?.died[told.knownTo] ?? 0;
  if (!told?.isCounted || died <= 0) return undefined;
  const reach = reachOf({
    survivingShare: survivingShare(rates, told.knownTo),
    sexShare: 1,
    togetherness: odds.togetherness,
  });
  const least = placed - died + 1;
  return placed < least ? 1 : Math.max(0, 1 - reach(Math.max(0, least), placed));
}

/** First days in which the journey and a weak start take their share. */
const FIRST_DAYS = 7;
const RUNNING_DAYS = 2;

/** Birds that died within two days, where that is sudden: more than a few, and past the first week. */
function diedSuddenly({ life: { told, placed }, tables }: PlanContext): number | undefined {
  const { suddenLossShare, fewestLost } = tables.judgements.birds;
  if (!told?.isCounted || told.knownTo < FIRST_DAYS + RUNNING_DAYS) return undefined;
  const before = told.knownTo - RUNNING_DAYS;
  const there = placed - told.died[before]! - told.left[before]!;
  const died = told.died[told.knownTo]! - told.died[before]!;
  return Math.max(fewestLost.value, suddenLossShare.value * there) <= died ? died : undefined;
}

const LOOK_FOR =
  'Look for cold or heat, damp, too little water or room, and something that comes in at night. Where several die in a day, or look sick, ask a veterinarian.';

/** Losses beyond what is usual: said while there is something to do about it. */
export function countedIssues(context: PlanContext): PlanIssue[] {
  const { life, tables } = context;
  const { unusualLossChance, fewestLost, suddenLossShare } = tables.judgements.birds;
  const part = countedPart(context);
  if (!part?.asMany || part.now.value < 1) return [];
  const suddenly = diedSuddenly(context);
  if (suddenly !== undefined)
    return [
      issue(
        'act',
        'losses-above-usual',
        `${suddenly} have died within two days, ${part.died.value} in all: after the first week that is sudden. ${LOOK_FOR} Keep others from the birds until you know why.`,
        [suddenLossShare, fewestLost],
      ),
    ];
  if (part.died.value < fewestLost.value || unusualLossChance.value <= part.asMany.value) return [];
  const usual = Math.max(1, Math.round(part.usuallyLost.value));
  return [
    issue(
      'act',
      'losses-above-usual',
      `${part.died.value} have died. About ${usual} is usual by now; a flock ${formatChance(part.asMany.value)} loses as many. ${LOOK_FOR}`,
      [unusualLossChance, fewestLost, life.losses],
    ),
  ];
}
