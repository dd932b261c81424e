import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { NeedStage } from '../tables/ration-tables.js';
import { rowById, type Tables } from '../tables/tables.js';
import { listed } from '../units/listed.js';
import { nearestMix, whatWouldHelp } from './conflicts.js';
import { leastCostOfBulk } from './least-cost.js';
import type { Solve } from './linear-program.js';
import { mixFeed, type MixFeed } from './mix-feed.js';
import { mixOf, type Made, type Mix, type RationAsked } from './mix.js';
import { limitsFor } from './nutrient-limits.js';
import { lowerName, sayMissed, sayNutrient, sayRoom } from './ration-words.js';
import { flocksApart, strictest } from './several-flocks.js';

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
  const { birds, stage, stages, flocks } = flocksOf(asked, tables);
  const judged = tables.judgements.rations;
  const limits = strictest(flocks);
  const feeds = asked.ingredients.map((product) =>
    mixFeed(product, rowById(tables.ingredients, product.ingredientId), {
      stages: stages.map(({ is }) => is),
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
  const apart = mix ? [] : flocksApart(flocks, asked.farm);
  return {
    title: flocks.map(({ title }) => title).join('; '),
    ...(mix ? { mix } : {}),
    issues: mix
      ? issuesOf(mix, feeds, stage, asked)
      : [
          0 < apart.length
            ? flocksDiffer(apart, stages)
            : conflict(asked, tables, { stage, limits, feeds }, solve),
        ],
    cautions: [
      ...new Set(
        [asked, ...(asked.alsoFor ?? [])].flatMap(({ birdsId }, k) =>
          cautionsOf(feeds, birdsId, stages[k]!),
        ),
      ),
    ],
  };
}

/** The flocks that are mixed for, the one that was asked for first. */
function flocksOf(asked: RationAsked, tables: Tables) {
  const all = [asked, ...(asked.alsoFor ?? [])].map(({ birdsId, stageId }) => {
    const birds = rowById(tables.rationNeeds, birdsId);
    return { birds, stage: rowById(birds.stages, stageId) };
  });
  return {
    ...all[0]!,
    stages: all.map(({ stage }) => stage),
    flocks: all.map(({ birds, stage }) => ({
      title: `${birds.name}: ${lowerName(stage.name)}`,
      called: `${birds.name} (${lowerName(stage.name)})`,
      limits: limitsFor(stage, tables.judgements.rations),
    })),
  };
}

const flocksDiffer = (apart: readonly string[], stages: readonly NeedStage[]): PlanIssue =>
  issue(
    'stop',
    'mix-flocks-differ',
    `No one feed does for all of them. ${apart.join(' ')} Mix for the young ones, and give hens oyster shell in a pan of their own.`,
    stages,
  );

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

function cautionsOf(feeds: readonly MixFeed[], birdsId: string, { is }: NeedStage): string[] {
  const has = (ingredientId: string): boolean =>
    feeds.some((feed) => feed.ingredientId === ingredientId);
  return [
    'mix-premix',
    'mix-calcium',
    'mix-weigh',
    'mix-grind',
    'mix-mold',
    ...(is === 'chick' || is === 'grower' ? ['mix-medicated'] : []),
    ...(has('soybeans-roasted') ? ['mix-soybeans'] : []),
    ...(has('meat-and-bone') ? ['mix-cattle'] : []),
    ...(birdsId === 'ducks' ? ['ducklings'] : []),
  ];
}
