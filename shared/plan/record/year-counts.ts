import Big from 'big.js';
import type { CattleLeft } from '../../farm/cattle-left.js';
import { countedFrom } from '../../farm/egg-count.js';
import {
  holding,
  treatmentsOf,
  type FactOf,
  type ToldFact,
  type ToldKind,
} from '../../farm/told-fact.js';
import type { Treatment } from '../../farm/treated.js';
import { minorDigits } from '../../units/format.js';
import { outUntil } from '../medicines.js';
import { rainTold, type RainTold } from './rain-told.js';

/** What left the place and what came in within a calendar year, as it was told. */
export interface YearCounts {
  readonly year: number;
  readonly birds: {
    readonly came: number;
    readonly died: number;
    readonly processed: number;
    readonly sold: number;
    readonly given: number;
  };
  /** Birds processed of each batch, the most first. */
  readonly processedOf: readonly { readonly batchId: string; readonly birds: number }[];
  /** Those kept out for a medicine are not among those counted. */
  readonly eggs: {
    readonly counted: number;
    readonly sold: number;
    readonly given: number;
    readonly keptOut: number;
  };
  /** Without what was kept out for a medicine. */
  readonly milkL: number;
  readonly milkKeptOutL: number;
  /** Times that milk was told while some of them had a medicine, and not how much was kept out. */
  readonly milkNotSaid: number;
  readonly calves: number;
  /** Left out where the gauge was never read. */
  readonly rain?: RainTold;
  /** Head that died or were put down, were sold, slaughtered at home, or given away. */
  readonly cattle: {
    readonly died: number;
    readonly sold: number;
    readonly slaughtered: number;
    readonly given: number;
  };
  /** Smallest coins of the farm's currency. */
  readonly money: { readonly taken: number; readonly spent: number };
  /** How much of what was sold or bought was told without its money. */
  readonly withoutMoney: { readonly sales: number; readonly purchases: number };
}

/**
 * Counts what was told of a calendar year. What was taken back or changed does not count; money is
 * added exactly and is whole coins.
 *
 * @param facts of the farm, of any year; medicines of the year before reach into this one
 */
export function yearCounts(year: number, facts: readonly ToldFact[], currency: string): YearCounts {
  const held = holding(facts).filter(({ on }) => on.slice(0, 4) === `${year}`);
  const of = <Kind extends ToldKind>(kind: Kind): FactOf<Kind>[] =>
    held.filter((fact): fact is FactOf<Kind> => fact.kind === kind);
  const [gone, eggsGone, bought] = [of('gone'), of('eggs-gone'), of('bought')];
  const left = of('cattle-left');
  const sales = [...gone, ...eggsGone, ...left].filter(({ details }) => details.how === 'sold');
  const birdsThat = (how: 'sold' | 'given'): number =>
    total(gone, ({ details }) => (details.how === how ? details.birds : 0));
  const eggsThat = (how: 'sold' | 'given'): number =>
    total(eggsGone, ({ details }) => (details.how === how ? details.eggs : 0));
  const headThat = (...how: readonly CattleLeft['how'][]): number =>
    total(left, ({ details }) => (how.includes(details.how) ? details.head : 0));
  const processed = of('processed');
  const rain = rainTold(of('rained'));
  const treatments = treatmentsOf(facts.filter((fact) => fact.kind === 'treated'));
  const [counted, milked] = [of('eggs-counted'), of('milked')];
  const eggsOut = total(counted, (fact) => (areEggsOut(fact, treatments) ? fact.details.eggs : 0));
  const milkOutL = total(milked, (fact) => milkOutOf(fact, treatments));
  return {
    year,
    birds: {
      came: total(of('arrived'), ({ details }) => details.birds - (details.dead ?? 0)),
      died: total(of('died'), ({ details }) => details.birds),
      processed: total(processed, ({ details }) => details.birds),
      sold: birdsThat('sold'),
      given: birdsThat('given'),
    },
    processedOf: byBatch(processed),
    eggs: {
      counted: total(counted, ({ details }) => details.eggs) - eggsOut,
      sold: eggsThat('sold'),
      given: eggsThat('given'),
      keptOut: eggsOut,
    },
    milkL: total(milked, ({ details }) => details.liters) - milkOutL,
    milkKeptOutL: milkOutL,
    milkNotSaid: milked.filter((fact) => isNotSaid(fact, treatments)).length,
    calves: total(of('calved'), ({ details }) => details.calves),
    ...(rain ? { rain } : {}),
    cattle: {
      died: headThat('died', 'put-down'),
      sold: headThat('sold'),
      slaughtered: headThat('slaughtered'),
      given: headThat('given'),
    },
    money: { taken: moneyOf(sales, currency), spent: moneyOf(bought, currency) },
    withoutMoney: { sales: unpriced(sales), purchases: unpriced(bought) },
  };
}

/** Eggs of a count of which a day lies within the days of a medicine: nobody can tell them apart. */
const areEggsOut = (
  { about, on, details: { days } }: FactOf<'eggs-counted'>,
  treatments: readonly Treatment[],
): boolean =>
  treatments.some((treatment) => {
    const until = treatment.about === about ? outUntil(treatment, 'eggs') : undefined;
    const from = countedFrom({ date: on, days });
    return until !== undefined && treatment.date <= on && from <= until;
  });

/** What was said to be kept out; where every cow had the medicine, all of it. */
function milkOutOf(fact: FactOf<'milked'>, treatments: readonly Treatment[]): number {
  const { liters, keptOutL = 0 } = fact.details;
  return outOfMilk(fact, treatments).some(isOfAll) ? liters : keptOutL;
}

const isNotSaid = (fact: FactOf<'milked'>, treatments: readonly Treatment[]): boolean => {
  const out = outOfMilk(fact, treatments);
  return 0 < out.length && !out.some(isOfAll) && fact.details.keptOutL === undefined;
};

/** Medicines for which some of a milking is kept out. */
const outOfMilk = (
  { about, on }: FactOf<'milked'>,
  treatments: readonly Treatment[],
): Treatment[] =>
  treatments.filter(
    (each) => each.about === about && each.date <= on && on <= (outUntil(each, 'milk') ?? ''),
  );

const isOfAll = ({ cowId, head }: Treatment): boolean => cowId === undefined && head === undefined;

function byBatch(processed: readonly FactOf<'processed'>[]): YearCounts['processedOf'] {
  const birds = new Map<string, number>();
  for (const { about, details } of processed)
    birds.set(about, (birds.get(about) ?? 0) + details.birds);
  return [...birds]
    .map(([batchId, n]) => ({ batchId, birds: n }))
    .sort((a, b) => b.birds - a.birds || (a.batchId < b.batchId ? -1 : 1));
}

type WithMoney = { readonly details: { readonly money?: string | undefined } };

const moneyOf = (facts: readonly WithMoney[], currency: string): number =>
  Number(
    facts
      .reduce((sum, { details }) => sum.plus(details.money ?? 0), new Big(0))
      .times(10 ** minorDigits(currency))
      .round(0, Big.roundHalfUp),
  );

const unpriced = (facts: readonly WithMoney[]): number =>
  facts.filter(({ details }) => details.money === undefined).length;

const total = <T>(list: readonly T[], of: (each: T) => number): number =>
  list.reduce((sum, each) => sum + of(each), 0);
