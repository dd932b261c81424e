import { daysBetween } from '../../calendar/plain-date.js';
import type { Batch } from '../../farm/batch.js';
import type { NamedBatch } from '../../farm/picture.js';
import { holding, type FactOf, type ToldFact } from '../../farm/told-fact.js';
import { rowById, type Tables } from '../../tables/tables.js';
import { formatValue, type Reader } from '../../units/format.js';
import { usualFactors } from '../how-they-grow.js';
import type { HowItWent } from './how-it-went.js';

/** What the farm's own batches change of how the next one is planned, and why. */
export interface LearnedFromBatches {
  readonly values: Partial<
    Pick<
      Batch,
      'firstWeekLossPercent' | 'laterLossPercent' | 'weightFactor' | 'feedFactor' | 'ownEggsPerHen'
    >
  >;
  readonly words: readonly string[];
}

/** What is known of a batch that is to be planned: all of it, or what was chosen so far. */
export type LearningBatch = Pick<Batch, 'purpose' | 'strainId'> & Partial<Batch>;

/** Batches that came, as they went, with what was told of them. */
export interface OwnBatches {
  readonly batches: readonly NamedBatch[];
  readonly went: readonly HowItWent[];
  readonly facts: readonly ToldFact[];
}

const FIRST_WEEK_DAYS = 7;
/** Batches that left at another age say nothing of weight or conversion at this one. */
const SAME_AGE_DAYS = 3;
const LIMITS = {
  weightFactor: [0.3, 1.6],
  feedFactor: [0.5, 2],
  percent: [0, 60],
  eggs: [20, 365],
} as const;

/**
 * What to plan another batch with, by batches of the same breed or cross that are over; of hens that
 * lay, by their eggs so far, where enough of their days were counted. The table's
 * losses count as so many birds of the farm's own, and its weight and feed as one batch, so that a
 * small or single batch moves them only a part of the way. What the household typed stays as it is.
 *
 * Losses in percent of those placed; factors over the growth table. Weight and feed are taken only
 * of batches that left within three days of the age they were planned for.
 * Source: a mean drawn toward what is usual; common practice.
 */
export function learnedFromBatches(
  batch: LearningBatch,
  own: OwnBatches,
  tables: Tables,
  reader: Reader,
): LearnedFromBatches {
  const ofBreed = own.went.filter(
    ({ batchId }) => own.batches.find(({ id }) => id === batchId)?.strainId === batch.strainId,
  );
  const lay = batch.purpose === 'layers' ? layOf(batch, ofBreed, tables) : NOTHING;
  const alike = ofBreed.filter(({ isOver }) => isOver);
  if (alike.length === 0) return lay;
  const losses = lossesOf(batch, alike, own.facts, tables, reader);
  const grown = batch.purpose === 'meat' ? growthOf(batch, alike, own, tables) : NOTHING;
  return {
    values: { ...losses.values, ...grown.values, ...lay.values },
    words: [...losses.words, ...grown.words, ...lay.words],
  };
}

const NOTHING: LearnedFromBatches = { values: {}, words: [] };

function lossesOf(
  batch: LearningBatch,
  alike: readonly HowItWent[],
  facts: readonly ToldFact[],
  tables: Tables,
  reader: Reader,
): LearnedFromBatches {
  const counted = alike.flatMap(({ batchId, lines }) => {
    const placed = lines.find(({ id }) => id === 'came')?.actual;
    const lost = lines.find(({ id }) => id === 'lost')?.actual;
    if (!placed || lost === undefined) return [];
    return [{ placed, lost, first: diedInFirstWeek(batchId, facts) }];
  });
  const placed = sum(counted.map((each) => each.placed));
  if (placed === 0) return NOTHING;
  const first = sum(counted.map((each) => Math.min(each.first, each.lost)));
  const later = sum(counted.map((each) => each.lost)) - first;
  const strain = rowById(tables.strains, batch.strainId);
  const usual = rowById(
    tables.losses,
    (batch.purpose === 'layers' && strain.layLosses) || strain.losses,
  );
  const weight = tables.judgements.birds.usualLossBirds.value;
  const drawn = (died: number, usualPercent: number): number =>
    clamp(tenth((100 * (died + (weight * usualPercent) / 100)) / (placed + weight)), 'percent');
  const parts = [
    ['firstWeekLossPercent', 'in the first week', first, usual.firstWeekPercent],
    ['laterLossPercent', 'after it', later, usual.laterPercent],
  ] as const;
  // Of hens what is lost later is lost over years: a flock that is over says nothing of their rearing.
  const learned = parts.filter(
    ([field]) =>
      batch[field] === undefined && (batch.purpose === 'meat' || field === 'firstWeekLossPercent'),
  );
  const say = (percent: number): string => formatValue(percent / 100, 'share', reader);
  return {
    values: Object.fromEntries(
      learned.map(([field, , died, percent]) => [field, drawn(died, percent)]),
    ),
    words: learned.map(
      ([, when, died, percent]) =>
        `${died} of ${placed} were lost ${when} (${ofBatches(counted.length)}): planned with ${say(drawn(died, percent))}, usual is ${say(percent)}.`,
    ),
  };
}

function diedInFirstWeek(batchId: string, facts: readonly ToldFact[]): number {
  const held = holding(facts).filter(({ about }) => about === batchId);
  const arrived = held.findLast(({ kind }) => kind === 'arrived');
  if (!arrived) return 0;
  const dead = held.filter(
    (fact): fact is FactOf<'died'> =>
      fact.kind === 'died' && daysBetween(arrived.on, fact.on) <= FIRST_WEEK_DAYS,
  );
  return sum(dead.map(({ details }) => details.birds));
}

function growthOf(
  batch: LearningBatch,
  alike: readonly HowItWent[],
  { batches }: OwnBatches,
  tables: Tables,
): LearnedFromBatches {
  const strain = rowById(tables.strains, batch.strainId);
  const tableId = batch.growthTableId ?? strain.growthTables[0]!;
  const usual = usualFactors(batch, rowById(tables.growthTables, tableId));
  const ratios = alike.flatMap((went) => {
    const before = batches.find(({ id }) => id === went.batchId);
    const age = shareOf(went, 'age');
    if (!before || before.weightFactor !== undefined || before.feedFactor !== undefined) return [];
    if (age === undefined || SAME_AGE_DAYS < Math.abs(age.actual - age.planned)) return [];
    const [live, conversion] = [shareOf(went, 'live-each'), shareOf(went, 'conversion')];
    return [
      {
        live: live && ratio(live),
        conversion: conversion && ratio(conversion),
      },
    ];
  });
  const weigh = (logs: readonly number[]): number =>
    Math.exp(sum(logs) / (logs.length + tables.judgements.birds.usualGrowthBatches.value));
  const lives = ratios.flatMap(({ live }) => (live === undefined ? [] : [Math.log(live)]));
  const eaten = ratios.flatMap(({ live, conversion }) =>
    conversion === undefined ? [] : [Math.log(conversion * (live ?? 1))],
  );
  const hasWeight = 0 < lives.length && batch.weightFactor === undefined;
  const hasFeed = 0 < eaten.length && batch.feedFactor === undefined;
  const percent = (logs: readonly number[]): string =>
    `${Math.round(100 * Math.exp(sum(logs) / logs.length))} %`;
  const planned = (logs: readonly number[]): string => {
    const to = Math.round(100 * weigh(logs));
    return to === 100 ? 'planned as before' : `planned with ${to} %`;
  };
  return {
    values: {
      ...(hasWeight
        ? {
            weightFactor: clamp(hundredth(usual.weight * weigh(lives)), 'weightFactor'),
          }
        : {}),
      ...(hasFeed
        ? {
            feedFactor: clamp(hundredth(usual.feed * weigh(eaten)), 'feedFactor'),
          }
        : {}),
    },
    words: [
      ...(hasWeight
        ? [
            `They weighed ${percent(lives)} of the plan (${ofBatches(lives.length)}): ${planned(lives)}.`,
          ]
        : []),
      ...(hasFeed
        ? [
            `They took ${percent(eaten)} of the feed planned (${ofBatches(eaten.length)}): ${planned(eaten)}.`,
            ...wasteWords(alike),
          ]
        : []),
    ],
  };
}

/** What of the feed went beyond what birds of that weight eat, on average of the batches. */
function wasteWords(alike: readonly HowItWent[]): string[] {
  const shares = alike.flatMap(({ lines }) => {
    const { planned, actual } = lines.find(({ id }) => id === 'waste') ?? {};
    return planned === undefined || actual === undefined ? [] : [{ planned, actual }];
  });
  if (shares.length === 0) return [];
  const average = (of: 'planned' | 'actual'): number =>
    Math.round((100 * sum(shares.map((each) => each[of]))) / shares.length);
  const [gone, spilled] = [average('actual'), average('planned')];
  if (gone <= spilled) return [];
  return [
    `Of that, ${gone} % went beyond what birds of their weight eat; ${spilled === 0 ? 'nothing' : `${spilled} %`} is planned as spilled. Overfull feeders, mice and wild birds take it.`,
  ];
}

/** Eggs of a hen of one's own, drawn toward the plan's as weight and feed are. */
function layOf(
  batch: LearningBatch,
  alike: readonly HowItWent[],
  tables: Tables,
): LearnedFromBatches {
  const { usualGrowthBatches, layDaysToLearn } = tables.judgements.birds;
  if (batch.ownEggsPerHen !== undefined) return NOTHING;
  const counted = alike.flatMap((went) => {
    const eggs = shareOf(went, 'eggs-per-hen');
    const year = went.plannedEggsPerHen;
    const days = went.lines.find(({ id }) => id === 'eggs-per-hen')?.days ?? 0;
    return eggs && year !== undefined && layDaysToLearn.value <= days
      ? [{ log: Math.log(ratio(eggs)), year }]
      : [];
  });
  if (counted.length === 0) return NOTHING;
  const logs = counted.map(({ log }) => log);
  const drawn = Math.exp(sum(logs) / (logs.length + usualGrowthBatches.value));
  const usual = sum(counted.map(({ year }) => year)) / counted.length;
  const eggs = clamp(Math.round(usual * drawn), 'eggs');
  const was = Math.round(100 * Math.exp(sum(logs) / logs.length));
  return {
    values: { ownEggsPerHen: eggs },
    words: [
      `Your hens laid ${was} % of the plan (${logs.length === 1 ? 'one flock' : `${logs.length} flocks`}): planned with ${eggs} eggs in the first year, usual is ${Math.round(usual)}.`,
    ],
  };
}

type Share = { readonly planned: number; readonly actual: number };

function shareOf({ lines }: HowItWent, of: string): Share | undefined {
  const { planned, actual } = lines.find(({ id }) => id === of) ?? {};
  return planned === undefined || actual === undefined || planned <= 0 || actual <= 0
    ? undefined
    : { planned, actual };
}

const ratio = ({ planned, actual }: Share): number => actual / planned;
const ofBatches = (n: number): string => (n === 1 ? 'one batch' : `${n} batches`);
const clamp = (value: number, of: keyof typeof LIMITS): number =>
  Math.min(LIMITS[of][1], Math.max(LIMITS[of][0], value));
const tenth = (value: number): number => Math.round(10 * value) / 10;
const hundredth = (value: number): number => Math.round(100 * value) / 100;
const sum = (numbers: readonly number[]): number => numbers.reduce((all, each) => all + each, 0);
