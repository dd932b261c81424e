import type { PlainDate } from '../calendar/plain-date.js';
import type { Formula } from '../explain/formula.js';
import {
  datedFact,
  from as fromQuantity,
  fromFarm,
  fromTable,
  input,
  quantity,
  worded,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import { costMinor } from '../money/money.js';
import { layFormulas } from '../poultry/lay.js';
import { layCycleFormulas } from '../poultry/lay-cycles.js';
import { formatPrice } from '../units/format.js';
import type { PlanContext } from './context.js';
import { feedOfHens } from './feed-of-hens.js';
import { hensFeedInputs } from './used-feed.js';
import type { LayDays } from './lay-days.js';
import { eggsOver, monthsOf, rowsOn } from './lay-months.js';
import { LAY_YEAR_DAYS } from './laying-years.js';
import { bagOf } from './prices.js';

export const layYearFormulas = {
  feedCost: {
    id: 'feed-cost-per-dozen',
    title: 'Feed cost of a dozen eggs',
    words: 'Feed per dozen eggs times the price of a kilogram of the hens’ feed. Feed alone.',
    symbols: 'c = f_dozen·price ÷ bag',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  pays: {
    id: 'flock-pays-until',
    title: 'Hens pay for their feed until',
    words:
      'The first month from which the feed of the next twelve months costs more than the eggs of those months bring at your price. Feed alone: no litter, lamp, or hours.',
    symbols: 'Σ₁₂ C_feed > Σ₁₂ E·p ÷ 12',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** One laying year of the flock. */
export interface LayYear {
  readonly year: number;
  readonly from: PlainDate;
  readonly eggs: NumberQuantity;
  readonly eggsPerHen: NumberQuantity;
  readonly feedPerDozen: NumberQuantity;
  /** Where the price of the hens' feed is known. */
  readonly feedCostPerDozen?: NumberQuantity;
}

export interface LayYears {
  readonly years: readonly LayYear[];
  /** About when each molt begins. */
  readonly molts: readonly Quantity[];
  /** Where feed and eggs have a price: the month from which the flock no longer pays, or words. */
  readonly paysUntil?: Quantity;
}

/** Eggs, feed and what they are worth over every laying year that the table knows. */
export function layYears(context: PlanContext, lay: LayDays): LayYears {
  const { kg } = feedOfHens(context, lay.firstDay, lay.endDay);
  const { shares } = context.tables.laying.years;
  const years = shares.map((_, k) => yearOf(context, lay, kg, k));
  const paysUntil = paidUntil(context, lay, kg);
  return {
    years,
    molts: lay.molts.map((day) => moltOn(context, day)),
    ...(paysUntil ? { paysUntil } : {}),
  };
}

const moltOn = ({ life, tables, dateOf }: PlanContext, day: number): Quantity =>
  datedFact('Molt begins about', dateOf(day), layCycleFormulas.molt, [
    input('Age', life.arrivalAgeDays + day, 'day'),
    fromTable(
      tables.laying.molt,
      'Days after the day shortens fastest',
      tables.laying.molt.afterEquinoxDays,
      'day',
    ),
  ]);

function yearOf(context: PlanContext, lay: LayDays, kg: Float64Array, k: number): LayYear {
  const { life, tables, dateOf, farm } = context;
  const from = lay.firstDay + k * LAY_YEAR_DAYS;
  const span = { from, to: from + LAY_YEAR_DAYS };
  const rows = [...rowsOn(lay, span), life.losses];
  const eggs = eggsOver(lay.planned, lay, span);
  let perHen = 0;
  for (let i = span.from; i < span.to; i++) perHen += lay.planned[i]!;
  const fedKg = sumOf(kg, from - lay.firstDay, span.to - lay.firstDay);
  const later = tables.laying.years;
  const typed = k === 1 ? later : undefined;
  const feedPerDozen = quantity(
    `Feed per dozen eggs, year ${k + 1}`,
    perDozenKg(fedKg, eggs),
    'kg',
    layFormulas.feedPerDozen,
    [
      input('Feed of the hens', fedKg, 'kg', 'F'),
      ...hensFeedInputs(life),
      input('Eggs', eggs, 'eggs', 'E'),
    ],
    { rows: [...rows, ...life.feedRows, layFormulas.layerEnergy] },
  );
  const price = priceOfFeed(context);
  return {
    year: k + 1,
    from: dateOf(from),
    eggs: quantity(
      `Eggs in laying year ${k + 1}`,
      eggs,
      'eggs',
      layFormulas.eggs,
      [
        input('Hens at its beginning', lay.hens[from]!, 'count', 'N'),
        input('Days', LAY_YEAR_DAYS, 'day'),
      ],
      { rows },
    ),
    eggsPerHen: quantity(
      `Eggs of a hen that lives, year ${k + 1}`,
      perHen,
      'eggs',
      layFormulas.henDay,
      [input('Share of the first year', later.shares[k]!, 'share')],
      {
        rows: rowsOn(lay, span),
        spread: typed && {
          low: (perHen * typed.low) / typed.shares[k]!,
          high: (perHen * typed.high) / typed.shares[k]!,
          because: typed.because ?? 'flocks differ',
        },
      },
    ),
    feedPerDozen,
    ...(price === undefined
      ? {}
      : {
          feedCostPerDozen: quantity(
            `Feed cost of a dozen, year ${k + 1}`,
            costMinor(price.perBag, feedPerDozen.value / price.bagKg, farm.currency),
            'money',
            layYearFormulas.feedCost,
            [
              fromQuantity(feedPerDozen, 'f_dozen'),
              fromFarm('A bag of the hens’ feed', formatPrice(price.perBag, farm.currency), 'text'),
              input('One bag', price.bagKg, 'kg'),
              ...hensFeedInputs(life),
            ],
          ),
        }),
  };
}

interface FeedPrice {
  readonly perBag: string;
  readonly bagKg: number;
}

/** Price of the feed that laying hens get, the batch's or the place's; undefined when none is given. */
function priceOfFeed(context: PlanContext): FeedPrice | undefined {
  const { price, bagKg } = bagOf(context, context.life.program.phases.at(-1)!.id);
  return price && { perBag: price.price, bagKg };
}

const MONTHS_AHEAD = 12;

function paidUntil(context: PlanContext, lay: LayDays, kg: Float64Array): Quantity | undefined {
  const { batch, farm, life, tables, dateOf } = context;
  const price = priceOfFeed(context);
  const dozen = batch.prices?.eggDozen;
  if (price === undefined || dozen === undefined) return undefined;
  const months = monthsOf(lay.firstDay, lay.endDay, dateOf);
  const gains = months.map(({ from, to }) => {
    const fedKg = sumOf(kg, from - lay.firstDay, to - lay.firstDay);
    const eggs = eggsOver(lay.planned, lay, { from, to });
    return (
      costMinor(dozen, eggs / 12, farm.currency) -
      costMinor(price.perBag, fedKg / price.bagKg, farm.currency)
    );
  });
  const turns = months.findIndex(
    (_, m) =>
      m + MONTHS_AHEAD <= gains.length &&
      gains.slice(m, m + MONTHS_AHEAD).reduce((sum, each) => sum + each, 0) < 0,
  );
  const inputs = [
    fromFarm('A dozen eggs', formatPrice(dozen, farm.currency), 'text', 'p'),
    fromFarm('A bag of the hens’ feed', formatPrice(price.perBag, farm.currency), 'text'),
    input('One bag', price.bagKg, 'kg'),
  ];
  const rows = [
    ...lay.rows,
    ...lay.laterRows,
    life.losses,
    ...life.feedRows,
    layFormulas.layerEnergy,
  ];
  const label = 'Hens pay for their feed until';
  const say = (words: string): Quantity =>
    worded(label, words, layYearFormulas.pays, inputs, { rows });
  if (turns < 0) return say(`past laying year ${tables.laying.years.shares.length}`);
  return turns === 0
    ? say('not even in the first year')
    : datedFact(label, dateOf(months[turns]!.from), layYearFormulas.pays, inputs, { rows });
}

/** Feed for a dozen eggs, kg; none where no hen is left to lay or to eat. */
export const perDozenKg = (fedKg: number, eggs: number): number =>
  eggs === 0 ? 0 : (12 * fedKg) / eggs;

function sumOf(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i]!;
  return sum;
}
