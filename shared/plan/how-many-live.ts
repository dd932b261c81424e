import { isStarted } from '../farm/batch-origin.js';
import type { Batch } from '../farm/batch.js';
import { expectedBirds } from '../farm/head-count.js';
import { orderChances, survivingShare, type LossRates, type OrderOdds } from '../poultry/losses.js';
import type { Tables } from '../tables/tables.js';
import { flockTold, type FlockTold } from './flock-told.js';
import type { Conditions } from './how-they-grow.js';

/** What the birds that are there may come to. */
export interface OddsNow {
  readonly odds: OrderOdds;
  readonly there: number;
}

/** Days of a chick's life over which the losses of its first week are spread. */
const FIRST_WEEK_DAYS = 7;

/**
 * Share of those placed that usually lives, by day after arrival. Of grown birds the losses of
 * chicks are the seller's: what is lost begins at their age, or with a loss that was typed for
 * their time here.
 */
export function survivalOf(
  batch: Batch,
  rates: LossRates,
  { arrivalAgeDays, countedDay }: { readonly arrivalAgeDays: number; readonly countedDay: number },
): (day: number) => number {
  if (!isStarted(batch)) return (day) => survivingShare(rates, day);
  const isTyped = batch.laterLossPercent !== undefined;
  const from = isTyped ? FIRST_WEEK_DAYS : arrivalAgeDays;
  const here = isTyped
    ? { ...rates, laterToDay: FIRST_WEEK_DAYS + Math.max(1, countedDay) }
    : rates;
  const alreadyLost = survivingShare(here, from);
  return (day) => survivingShare(here, from + day) / alreadyLost;
}

/** Chance of a bird that comes to be of the sex that is wanted: of grown ones it can be seen. */
export const sexShareOf = (batch: Batch, { orders }: Tables, femaleShare: number): number =>
  batch.purpose === 'meat' || isStarted(batch)
    ? 1
    : batch.sex === 'pullets'
      ? orders.sexing.share
      : femaleShare;

/** What was told of a batch that says how many came, or of which that was told. */
export function toldOf(batch: Batch, { headChanges, today }: Conditions): FlockTold | undefined {
  if (!headChanges || headChanges.length === 0 || today === undefined) return undefined;
  return flockTold(batch, headChanges, { today, placed: expectedBirds(batch) });
}

/**
 * What the birds there are may come to: those that went count toward the number wanted, those that
 * died are known, and only the days to come are left to chance.
 */
export function oddsNow(
  odds: OrderOdds,
  told: FlockTold,
  {
    placed,
    usual,
    countedDay,
  }: { placed: number; usual: (day: number) => number; countedDay: number },
): OddsNow {
  const to = Math.min(told.knownTo, countedDay);
  const left = told.left[told.knownTo]!;
  const there = told.isCounted ? placed - told.died[told.knownTo]! - left : placed - left;
  return {
    there: Math.max(0, there),
    odds: {
      ...odds,
      wanted: Math.max(0, odds.wanted - left),
      survivingShare: usual(countedDay) / (told.isCounted ? usual(to) : 1),
    },
  };
}

export const chanceOf = ({ odds, there }: OddsNow): number =>
  odds.wanted < 1 ? 1 : there < 1 ? 0 : orderChances(odds).enough(there);
