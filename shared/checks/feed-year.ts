import { planBuying } from '../buying/plan-buying.js';
import { costMinor } from '../money/money.js';
import { feedPerGain } from '../poultry/feed-per-gain.js';
import type { Given, Topic } from './given.js';

const CURRENCY = 'USD';

/**
 * A flock's feed as a source prints it, bought as a farm buys it: whole bags of each feed, one trip
 * after the other. Feeds are `kg1`, `kg2`: of one bird a day, over so many days each.
 */
function bought(given: Given) {
  const birds = given.number('birds');
  const weeks = given.numberOr('weeks', undefined);
  const days = weeks === undefined ? given.number('days') : 7 * weeks;
  const changes = given.numberOr('startedWeeks', weeks ?? 0);
  const perDay = Array.from({ length: days }, (_, day) =>
    weeks === undefined ? given.number('kgPerDay') : given.number(`week${Math.floor(day / 7) + 1}`),
  );
  const isFirst = (day: number): boolean => weeks === undefined || day < 7 * changes;
  const { keepsDays, bagKg } = { keepsDays: days, bagKg: given.number('bagKg') };
  const item = (price: string, has: (day: number) => boolean) => ({
    needKg: Float64Array.from(perDay, (kg, day) => (has(day) ? birds * kg : 0)),
    stock: [],
    offers: [
      {
        ...{ supplier: 0, bagKg, keepsDays, breaks: [] },
        costOf: (bags: number) => costMinor(price, bags, CURRENCY),
      },
    ],
  });
  return planBuying({
    days,
    suppliers: [{ tripCost: 0, days: new Uint8Array(days).fill(1) }],
    items: [
      item(given.textOr('firstPrice', '1'), isFirst),
      item(given.textOr('thenPrice', '1'), (day) => !isFirst(day)),
    ],
    storeKg: Infinity,
    handDays: 0,
  });
}

/** Feed as it is bought and turned into weight. */
export const feedYearChecks: Topic = {
  title: 'Feed bought, and what it makes',
  by: {
    'bags-bought': (given) => bought(given).purchases.reduce((sum, { bags }) => sum + bags, 0),
    'money-of-bags': (given) => bought(given).feedCost,
    'feed-per-gain': ({ number }) =>
      feedPerGain({
        feedKg: number('feedKg'),
        startKg: number('startKg'),
        endKg: number('endKg'),
      })!,
  },
};
