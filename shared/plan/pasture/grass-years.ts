import type { Formula } from '../../explain/formula.js';
import {
  from,
  fromTable,
  input,
  quantity,
  together,
  type NumberQuantity,
} from '../../explain/quantity.js';
import type { FarmPicture } from '../../farm/picture.js';
import { seededRandom } from '../../schedule/random.js';
import type { Tables } from '../../tables/tables.js';
import { drawnRun } from '../../weather/drawn-year.js';
import { seasonFeed } from './season-feed.js';
import { balesOf, chooseMoves } from './surplus.js';
import { hayByWinter, type HayByWinter } from './hay-by-winter.js';
import { hayToBuy } from './hay-part.js';
import { pastureContext } from './pasture-context.js';
import { believed } from './believed.js';
import { pastureOfFarm } from './pasture-of-farm.js';

export const grassYearsFormulas = {
  fed: {
    id: 'fed-in-years',
    title: 'Fed by hand, by years of weather',
    words:
      'The season walked in years of weather that are drawn from what is usual there, day after day. Each move is decided by what is known on its morning: what stands, and the usual growth of the days to come, never the weather that the year will bring. The drawn days follow each other, but whole dry months come seldomer than in truth, so that bad years are worse than this.',
    symbols: 'F_p: F(year) ≤ F_p in p of the years',
    sources: ['RICHARDSON', 'JOUVEN_2006'],
    mark: 'estimate',
  },
  buy: {
    id: 'hay-to-buy-sure',
    title: 'Hay to buy, by years of weather',
    words:
      'What each of the drawn years would have had to buy, as hay to buy is reckoned for the usual weather: what that year feeds until there is grass again, less what lies in store and what it makes. Enough in eight of ten of them. Twenty years tell such an amount no better than the range beside it, nine times in ten.',
    symbols: 'H_8: H_buy(year) ≤ H_8 in 8 of 10 years',
    sources: ['RICHARDSON', 'JOUVEN_2006', 'ARITHMETIC'],
    mark: 'estimate',
  },
} satisfies Record<string, Formula>;

/** Said wherever the years stand. */
export const GRASS_YEARS =
  'Years are drawn day by day from what is usual here, and each move is decided by what is known on its morning. A plan by the usual weather feeds less than most years do: a dry month costs more than a wet one saves.';

/** What a season feeds by hand in so many drawn years. */
export interface GrassYears {
  readonly years: number;
  /** Enough in five, eight and nine of ten years, dry matter. */
  readonly fed: readonly { readonly inTen: number; readonly kg: NumberQuantity }[];
  /** Hay to buy that does in eight of ten years, with how well so few years tell it. */
  readonly toBuy: NumberQuantity;
  readonly balesToBuy: NumberQuantity;
  /** Where some is to be bought for this winter, and some for the next. */
  readonly byWinter?: HayByWinter;
  readonly mown: NumberQuantity;
  /** Days on which the herds are short on grass, in the middle year and in the worst of ten. */
  readonly shortDays: NumberQuantity;
}

const YEARS = 20;
const SEED = 20_06;
const TENTHS = [5, 8, 9] as const;
const SURE_TENTHS = 8;
/**
 * Ranks of drawn years, over all of them, between which the amount that does in eight of ten lies
 * nine times in ten: of 20, the 13th and the 19th, by the binomial distribution.
 */
const SURE_RANKS = { low: 13 / 20, high: 19 / 20 };

/**
 * A farm's season in years of weather as they unfold.
 *
 * @throws FieldError as `planPasture` does
 */
export function grassYears(picture: FarmPicture, tables: Tables, years = YEARS): GrassYears {
  const { request } = believed(pastureOfFarm(picture, tables));
  const random = seededRandom(SEED);
  const { work } = tables;
  const habit = { ...work.wetDay, dayToDay: work.dayToDay.value };
  const seasons = Array.from({ length: years }, () => {
    const context = pastureContext(request, (dayOfYear) =>
      drawnRun(request.climate, dayOfYear, habit, random),
    );
    const chosen = chooseMoves(context);
    const feed = seasonFeed(context, chosen.books);
    const mownKg = chosen.books.cuts.reduce((sum, { kg }) => sum + kg, 0);
    const buy = hayToBuy(context, chosen, feed);
    return { fedKg: feed.allKg, shortDays: feed.shortDays, mownKg, buy, context };
  });
  const atShare = (of: (season: (typeof seasons)[number]) => number, share: number): number => {
    const sorted = seasons.map(of).sort((a, b) => a - b);
    return sorted[Math.min(years - 1, Math.max(0, Math.ceil(share * years - 1e-9) - 1))]!;
  };
  const at = (of: (season: (typeof seasons)[number]) => number, inTen: number): number =>
    atShare(of, inTen / 10);
  const { context } = seasons[0]!;
  const rows = [together([context.order, work.wetDay, work.dayToDay])];
  const inputs = [
    input('Years drawn', years, 'count'),
    fromTable(work.dayToDay, 'Likeness of one day to the last', work.dayToDay.value, 'share'),
  ];
  const store = seasons[0]!.buy.inStore;
  const inStore = store ? from(store, 'H_store') : input('In store, nothing typed', 0, 'kg');
  const of = (label: string, value: number, unit: 'kg' | 'day'): NumberQuantity =>
    quantity(label, value, unit, grassYearsFormulas.fed, inputs, { rows });
  const buyKg = ({ buy }: (typeof seasons)[number]): number => buy.allKg;
  const toBuy = quantity(
    `Hay to buy, for ${SURE_TENTHS} of 10 years`,
    at(buyKg, SURE_TENTHS),
    'kg',
    grassYearsFormulas.buy,
    [...inputs, inStore],
    {
      rows,
      spread: {
        low: atShare(buyKg, SURE_RANKS.low),
        high: atShare(buyKg, SURE_RANKS.high),
        because: `${years} drawn years tell it no better`,
      },
    },
  );
  const untilOut = quantity(
    `Hay to buy until turn-out, for ${SURE_TENTHS} of 10 years`,
    at(({ buy }) => buy.untilOutKg ?? 0, SURE_TENTHS),
    'kg',
    grassYearsFormulas.buy,
    [...inputs, inStore],
    { rows },
  );
  const isOut = seasons.every(({ buy }) => buy.untilOutKg === undefined);
  const byWinter = isOut ? undefined : hayByWinter(context, toBuy, untilOut);
  return {
    years,
    toBuy,
    ...(byWinter ? { byWinter } : {}),
    balesToBuy: balesOf(context, toBuy, `Bales to buy, for ${SURE_TENTHS} of 10 years`),
    fed: TENTHS.map((inTen) => ({
      inTen,
      kg: of(
        `Feed by hand that does in ${inTen} of 10 years, dry matter`,
        at((s) => s.fedKg, inTen),
        'kg',
      ),
    })),
    mown: of(
      'Mown for hay in the middle year, dry matter',
      at((s) => s.mownKg, 5),
      'kg',
    ),
    shortDays: of(
      'Days short on grass in the worst of ten',
      at((s) => s.shortDays, 9),
      'day',
    ),
  };
}
