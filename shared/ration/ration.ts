import {
  from,
  fromFarm,
  fromTable,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../explain/quantity.js';
import type { Farm } from '../farm/farm.js';
import type { IngredientProduct } from '../farm/ingredient.js';
import type { Product } from '../farm/product.js';
import { costMinor } from '../money/money.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { BirdsToFeed, NeedStage, Nutrient } from '../tables/ration-tables.js';
import { NUTRIENT_KEYS } from '../tables/ration-tables.js';
import { rowById, type Tables } from '../tables/tables.js';
import { listed } from '../units/listed.js';
import { onScale } from '../units/scale.js';
import { againstBought, batchInput, type AgainstBought } from './against-bought.js';
import { nearestMix, whatWouldHelp } from './conflicts.js';
import { leastCostOfBulk, NONE, type CheapestBy, type LeastCost } from './least-cost.js';
import type { Solve } from './linear-program.js';
import { mixFeed, type MixFeed } from './mix-feed.js';
import { atEnergy, limitsFor, type NutrientLimit } from './nutrient-limits.js';
import { heldBy, NUTRIENT_NAMES, unitOf } from './nutrients.js';
import { rationFormulas } from './ration-formulas.js';
import {
  lowerName,
  sayLimits,
  sayMissed,
  sayNutrient,
  sayPrices,
  sayRoom,
} from './ration-words.js';
import { squareCheck, type SquareCheck } from './square-check.js';

/** What is asked: feed for which birds, how much at once, of what. */
export interface RationAsked {
  readonly birdsId: string;
  readonly stageId: string;
  readonly batchKg: number;
  readonly by?: CheapestBy | undefined;
  readonly ingredients: readonly IngredientProduct[];
  /** What the farm buys: the mix is held against the feed of the same phase. */
  readonly products: readonly Product[];
  readonly farm: Pick<Farm, 'units' | 'currency'>;
}

/** A line of the mixing sheet. */
export interface MixLine {
  /** Of the household's ingredient. */
  readonly id: string;
  readonly ingredientId: string;
  readonly name: string;
  readonly amount: NumberQuantity;
  /** Of the mix as it is weighed, 0 to 1. */
  readonly share: number;
  readonly costMinor: number;
  /** Too little to spread by itself: stirred into a bucket of the rest first. */
  readonly isStirredFirst: boolean;
}

/** A nutrient of the mix as it is weighed, beside what is asked of it. */
export interface NutrientLine {
  readonly nutrient: Nutrient;
  readonly name: string;
  readonly has: NumberQuantity;
  readonly need?: NumberQuantity;
  readonly most?: NumberQuantity;
  /** The mix would be cheaper if less, or more, of it were allowed. */
  readonly holdsMix: boolean;
  readonly isMissed: boolean;
}

export interface Mix {
  readonly lines: readonly MixLine[];
  readonly totalKg: number;
  readonly totalMinor: number;
  readonly perKg: NumberQuantity;
  readonly nutrients: readonly NutrientLine[];
  /** What prices and limits decide, in words. */
  readonly prices: readonly string[];
  readonly limits: readonly string[];
  readonly against?: AgainstBought;
  readonly square?: SquareCheck;
}

/** A ration: the mix, or what keeps one from being made. */
export interface Ration {
  readonly title: string;
  readonly mix?: Mix;
  readonly issues: readonly PlanIssue[];
  readonly cautions: readonly string[];
}

/**
 * The mix of least cost that feeds birds of one age what they need.
 *
 * @param solve solves a linear program
 * @throws FieldError by `checkRation`, which whoever calls has asked before
 */
export function rationOf(asked: RationAsked, tables: Tables, solve: Solve): Ration {
  const birds = rowById(tables.rationNeeds, asked.birdsId);
  const stage = rowById(birds.stages, asked.stageId);
  const judged = tables.judgements.rations;
  const limits = limitsFor(stage, judged);
  const feeds = asked.ingredients.map((product) =>
    mixFeed(product, rowById(tables.ingredients, product.ingredientId), {
      is: stage.is,
      currency: asked.farm.currency,
      judged,
    }),
  );
  const found = leastCostOfBulk(reckoned(feeds), limits, {
    leastShares: {
      grain: judged.leastShare.value,
      protein: judged.leastShare.value,
      additive: judged.leastAdditiveShare.value,
    },
    mayCostShare: judged.leaveOutCostShare.value,
    by: asked.by ?? 'growth',
    solve,
  });
  const mix = found && mixOf(asked, tables, { birds, stage, limits, feeds, found });
  return {
    title: `${birds.name}: ${lowerName(stage.name)}`,
    ...(mix ? { mix } : {}),
    issues: mix
      ? issuesOf(mix, feeds, stage, asked)
      : [conflict(asked, tables, { stage, limits, feeds }, solve)],
    cautions: cautionsOf(feeds, birds, stage),
  };
}

/**
 * Minerals at no less than the dearest grain or meal: limestone for a filler would make a mix
 * cheaper and no better.
 */
function reckoned(feeds: readonly MixFeed[]): MixFeed[] {
  const inBulk = feeds.filter(({ what }) => what === 'grain' || what === 'protein');
  const floor = Math.max(...inBulk.map(({ minorPerKg }) => minorPerKg));
  return feeds.map((feed) =>
    feed.what === 'mineral' && Number.isFinite(floor)
      ? { ...feed, minorPerKg: Math.max(floor, feed.minorPerKg) }
      : feed,
  );
}

interface Made {
  readonly birds: BirdsToFeed;
  readonly stage: NeedStage;
  readonly limits: readonly NutrientLimit[];
  readonly feeds: readonly MixFeed[];
  readonly found: LeastCost;
}

interface Weighed {
  readonly feed: MixFeed;
  readonly kg: number;
  readonly share: number;
}

function mixOf(asked: RationAsked, tables: Tables, made: Made): Mix {
  const { farm, batchKg, products } = asked;
  const { feeds, found, limits, stage, birds } = made;
  const parts = weighed(feeds, found.shares, asked);
  const totalKg = parts.reduce((sum, { kg }) => sum + kg, 0);
  const lines = parts.map((part) => lineOf(part, asked, stage));
  const nutrients = nutrientLines(parts, limits, found);
  const perKg = costPerKg(parts);
  const energy = nutrients.find(({ nutrient }) => nutrient === 'energyKcalPerKg')!.has;
  const against = againstBought(
    { perKg, energy, batchKg, parts },
    { birds, stage },
    { products, tables, reader: farm },
  );
  const square = squareCheck(parts);
  return {
    lines,
    totalKg,
    totalMinor: lines.reduce((sum, line) => sum + line.costMinor, 0),
    perKg,
    nutrients,
    prices: sayPrices(feeds, found, farm),
    limits: sayLimits(limits, found, batchKg, farm),
    ...(against ? { against } : {}),
    ...(square ? { square } : {}),
  };
}

/** Minerals and bagged amino acids round up: they are in it because without them it falls short. */
const roundsUp = ({ what }: MixFeed): boolean => what === 'mineral' || what === 'additive';

/** The mix as scales can weigh it, the most first. */
function weighed(
  feeds: readonly MixFeed[],
  shares: readonly number[],
  { batchKg, farm: { units } }: RationAsked,
): Weighed[] {
  const all = feeds.flatMap((feed, i) => {
    const share = shares[i]!;
    if (share <= NONE) return [];
    const kg = onScale(share * batchKg, units, roundsUp(feed) ? 'up' : 'near');
    return kg === 0 ? [] : [{ feed, kg }];
  });
  const totalKg = all.reduce((sum, { kg }) => sum + kg, 0);
  return all.map((part) => ({ ...part, share: part.kg / totalKg })).sort((a, b) => b.kg - a.kg);
}

/** Below this share a part is stirred into a bucket of the rest first. */
const STIRRED_FIRST = 0.015;

function lineOf({ feed, kg, share }: Weighed, asked: RationAsked, stage: NeedStage): MixLine {
  const { currency } = asked.farm;
  return {
    id: feed.id,
    ingredientId: feed.ingredientId,
    name: feed.name,
    amount: quantity(
      feed.name,
      kg,
      'kg',
      rationFormulas.amount,
      [
        batchInput(asked.batchKg),
        fromFarm(`Price of ${lowerName(feed.name)}`, feed.minorPerKg, 'moneyPerKg', 'pᵢ'),
        ...(feed.limit
          ? [
              fromTable(
                feed.limit,
                `At most: ${lowerName(feed.limit.because)}`,
                feed.most,
                'share',
                'uᵢ',
              ),
            ]
          : []),
      ],
      { rows: [stage, feed.row] },
    ),
    share,
    costMinor: costMinor(feed.price, kg / feed.bagKg, currency),
    isStirredFirst: share < STIRRED_FIRST,
  };
}

const costPerKg = (parts: readonly Weighed[]): NumberQuantity =>
  quantity(
    'Your mix',
    parts.reduce((sum, { feed, share }) => sum + share * feed.minorPerKg, 0),
    'moneyPerKg',
    rationFormulas.cost,
    parts.flatMap(({ feed, share }) => [
      fromFarm(`${feed.name}, of the mix`, share, 'share', 'xᵢ'),
      fromFarm(`Price of ${lowerName(feed.name)}`, feed.minorPerKg, 'moneyPerKg', 'pᵢ'),
    ]),
  );

/** No scale tells less than this part of what is asked. */
const NOT_MISSED = 0.01;

function nutrientLines(
  parts: readonly Weighed[],
  limits: readonly NutrientLimit[],
  { worths }: LeastCost,
): NutrientLine[] {
  const mix = parts.map(({ feed, share }) => ({ share, holds: feed.holds }));
  const energy = holdsOf(parts, 'energyKcalPerKg');
  return NUTRIENT_KEYS.flatMap((nutrient): NutrientLine[] => {
    const own = limits.flatMap((limit, k) => (limit.nutrient === nutrient ? [{ limit, k }] : []));
    if (own.length === 0) return [];
    const held = heldBy(mix, nutrient);
    const asked = (side: 'least' | 'most') => own.find(({ limit }) => limit.side === side)?.limit;
    const [least, most] = [asked('least'), asked('most')];
    const need = least && atEnergy(least, least.need, energy.value);
    return [
      {
        nutrient,
        name: NUTRIENT_NAMES[nutrient],
        has: nutrient === 'energyKcalPerKg' ? energy : holdsOf(parts, nutrient),
        ...(least ? { need: askedOf(least, need!, energy) } : {}),
        ...(most ? { most: askedOf(most, most.need, energy) } : {}),
        holdsMix: own.some(({ k }) => NONE < Math.abs(worths[k]!)),
        isMissed:
          (need !== undefined && held < need * (1 - NOT_MISSED)) ||
          (most !== undefined && most.need * (1 + NOT_MISSED) < held),
      },
    ];
  });
}

function holdsOf(parts: readonly Weighed[], nutrient: Nutrient): NumberQuantity {
  const unit = unitOf(nutrient);
  const value = heldBy(
    parts.map(({ feed, share }) => ({ share, holds: feed.holds })),
    nutrient,
  );
  const inputs = parts.flatMap(({ feed, share }): QuantityInput[] => {
    const held = feed.holds[nutrient];
    if (held === 0) return [];
    const holds = `${feed.name} holds`;
    return [
      fromFarm(`${feed.name}, of the mix`, share, 'share', 'xᵢ'),
      feed.own.includes(nutrient)
        ? fromFarm(holds, held, unit, 'nᵢ')
        : fromTable(feed.row, holds, held, unit, 'nᵢ'),
    ];
  });
  return quantity(NUTRIENT_NAMES[nutrient], value, unit, rationFormulas.holds, inputs);
}

function askedOf(limit: NutrientLimit, asked: number, energy: NumberQuantity): NumberQuantity {
  const { nutrient, side, need, atKcalPerKg, row } = limit;
  const unit = unitOf(nutrient);
  const label = `${NUTRIENT_NAMES[nutrient]}, at ${side}`;
  return quantity(label, asked, unit, rationFormulas.need, [
    fromTable(row, 'Of the table', need, unit, 'b₀'),
    ...(atKcalPerKg === undefined
      ? []
      : [from(energy, 'E'), fromTable(row, 'In a feed of', atKcalPerKg, 'kcalPerKg', 'E₀')]),
  ]);
}

function issuesOf(
  mix: Mix,
  feeds: readonly MixFeed[],
  stage: NeedStage,
  { farm }: RationAsked,
): PlanIssue[] {
  const missed = mix.nutrients.filter(({ isMissed }) => isMissed);
  const energy = mix.nutrients.find(({ nutrient }) => nutrient === 'energyKcalPerKg')!.has.value;
  const more = stage.needs.energyKcalPerKg / energy - 1;
  return [
    ...(feeds.some(({ what }) => what === 'premix')
      ? []
      : [
          issue(
            'act',
            'mix-no-premix',
            'It holds no vitamin and mineral premix. Birds fail on grain and meal alone: add one.',
          ),
        ]),
    ...(missed.length === 0
      ? []
      : [
          issue(
            'act',
            'mix-rounding',
            `Weighed to what a scale reads, it misses ${listed(missed.map(({ name }) => lowerName(name)))}. Mix more at once, or weigh finer.`,
            [stage],
          ),
        ]),
    ...(0.03 < more
      ? [
          issue(
            'note',
            'mix-energy',
            `It holds ${sayNutrient('energyKcalPerKg', energy, farm)}, the table goes with ${sayNutrient('energyKcalPerKg', stage.needs.energyKcalPerKg, farm)}: they eat about ${Math.round(100 * more)} % more of it.`,
            [stage],
          ),
        ]
      : []),
  ];
}

/** Why there is no mix, how near one comes, and what would make one possible. */
function conflict(
  { farm }: RationAsked,
  tables: Tables,
  { stage, limits, feeds }: Pick<Made, 'stage' | 'limits' | 'feeds'>,
  solve: Solve,
): PlanIssue {
  const nearest = nearestMix(feeds, limits, solve);
  const had = new Set(feeds.map(({ ingredientId }) => ingredientId));
  const among = tables.ingredients
    .filter(({ id, what }) => !had.has(id) && what !== 'premix')
    .map((row) => {
      const limit = row.limits.find(({ stages }) => stages.includes(stage.is));
      return { ...row, least: 0, most: (limit?.percent ?? 100) / 100 };
    });
  const help = whatWouldHelp(feeds, limits, { among, solve });
  const said = nearest ? sayMissed(nearest.missed, farm).join(' ') : sayRoom(feeds, farm);
  const fix =
    help === undefined || help.length === 0
      ? 'Add a meal that is rich in what is short, or raise your own limits.'
      : `${listed(help.map(({ name }) => name).map(lowerName))} would make it possible.`;
  return issue(
    'stop',
    'mix-not-possible',
    `No mix of these feeds them. ${said} ${fix[0]!.toUpperCase()}${fix.slice(1)}`,
    [stage],
  );
}

function cautionsOf(feeds: readonly MixFeed[], { id }: BirdsToFeed, { is }: NeedStage): string[] {
  const has = (ingredientId: string): boolean =>
    feeds.some((feed) => feed.ingredientId === ingredientId);
  return [
    'mix-premix',
    'mix-calcium',
    'mix-weigh',
    'mix-mold',
    ...(is === 'chick' || is === 'grower' ? ['mix-medicated'] : []),
    ...(has('soybeans-roasted') ? ['mix-soybeans'] : []),
    ...(has('meat-and-bone') ? ['mix-cattle'] : []),
    ...(id === 'ducks' ? ['ducklings'] : []),
  ];
}
