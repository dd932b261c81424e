import {
  datedFact,
  from,
  fromFarm,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../../explain/quantity.js';
import { layFormulas } from '../../poultry/lay.js';
import { formatPrice } from '../../units/format.js';
import type { BatchPlan } from '../batch-plan.js';
import type { PlanContext } from '../context.js';
import { feedOfHens } from '../feed-of-hens.js';
import { hensFeedInputs } from '../used-feed.js';
import { eggsOver, rowsOn } from '../lay-months.js';
import { costMinor } from '../../money/money.js';
import { LAY_YEAR_DAYS } from '../laying-years.js';
import { bagOf, type BagOfFeed } from '../prices.js';
import { costFormulas } from './cost-formulas.js';
import { billByDay } from './weeks-of-bill.js';

/** A quarter of a laying year. */
export interface LayQuarter {
  readonly from: Quantity;
  /** Age of the hens at its beginning, in whole weeks. */
  readonly ageWeeks: number;
  readonly eggs: NumberQuantity;
  readonly feed: NumberQuantity;
  /** Where the hens’ feed has a price. */
  readonly feedCost?: NumberQuantity;
  /** Raising them included, up to the end of it; where that is known. */
  readonly soFar?: NumberQuantity;
}

export interface LayAges {
  readonly quarters: readonly LayQuarter[];
  /** The quarter up to whose end a dozen has cost least, raising the hens included. */
  readonly cheapest?: NumberQuantity;
  readonly keepUntil?: Quantity;
  /** Eggs that ten hens must lay in a day to pay for what they eat, at the household’s price. */
  readonly paysFrom?: NumberQuantity;
  readonly said: readonly string[];
}

const QUARTER_DAYS = LAY_YEAR_DAYS / 4;
const HENS = 10;

/** What a dozen costs as hens grow old, and when they no longer pay; undefined without hens. */
export function layAges(context: PlanContext, plan: BatchPlan): LayAges | undefined {
  const { lay, life, farm, dateOf } = context;
  const { laying } = plan;
  if (!lay || !laying) return undefined;
  const { kg } = feedOfHens(context, lay.firstDay, lay.endDay);
  const bag = bagOf(context, life.program.phases.at(-1)!.id);
  const raising = plan.bill.perBird && raisingOf(context, plan, lay.firstDay);
  const count = Math.floor((lay.endDay - lay.firstDay) / QUARTER_DAYS);
  let [costSoFar, dozensSoFar] = [raising?.value ?? 0, 0];
  const quarters = Array.from({ length: count }, (_, k): LayQuarter => {
    const span = {
      from: lay.firstDay + k * QUARTER_DAYS,
      to: lay.firstDay + (k + 1) * QUARTER_DAYS,
    };
    const options = {
      rows: [...rowsOn(lay, span), life.losses, ...life.feedRows, layFormulas.layerEnergy],
    };
    const age = input('Age', life.arrivalAgeDays + span.from, 'day');
    const eggs = quantity(
      'Eggs in the quarter',
      eggsOver(lay.planned, lay, span),
      'eggs',
      layFormulas.eggs,
      [age],
      options,
    );
    const feed = quantity(
      'Feed in the quarter',
      sumOf(kg, span.from - lay.firstDay, span.to - lay.firstDay),
      'kg',
      layFormulas.feedPerDozen,
      [age, ...hensFeedInputs(life)],
      options,
    );
    const quarter = {
      from: datedFact('From', dateOf(span.from), costFormulas.layQuarter, [age]),
      ageWeeks: Math.floor((life.arrivalAgeDays + span.from) / 7),
      eggs,
      feed,
    };
    if (bag.price === undefined || eggs.value <= 0) return quarter;
    const cost = costMinor(bag.price.price, feed.value / bag.bagKg, farm.currency);
    costSoFar += cost;
    dozensSoFar += eggs.value / 12;
    return {
      ...quarter,
      feedCost: quantity(
        'Feed cost of a dozen',
        cost / (eggs.value / 12),
        'money',
        costFormulas.layQuarter,
        [from(feed, 'F'), from(eggs, 'E'), ...priceInputs(bag, farm.currency)],
      ),
      ...(raising
        ? {
            soFar: quantity(
              'A dozen so far, raising them included',
              costSoFar / dozensSoFar,
              'money',
              costFormulas.layAll,
              [
                from(raising, 'C_raising'),
                input('Feed since the first egg', costSoFar - raising.value, 'money'),
                input('Dozens so far', dozensSoFar, 'count'),
              ],
              options,
            ),
          }
        : {}),
    };
  });
  return {
    quarters,
    ...cheapestOf(quarters),
    ...paysFromOf(context, kg, bag),
    said: saidOf(context, plan, quarters, { kg, bag }),
  };
}

/** What the bill has in it up to the first egg. */
function raisingOf(context: PlanContext, plan: BatchPlan, firstDay: number): NumberQuantity {
  const byDay = billByDay(context, plan);
  return quantity(
    'To raise them to the first egg',
    sumOf(byDay, 0, firstDay),
    'money',
    costFormulas.soFar,
    [from(plan.bill.total, 'C'), input('Days to the first egg', firstDay, 'day')],
  );
}

const priceInputs = ({ price, bagKg, bagInput }: BagOfFeed, currency: string) => [
  ...(price
    ? [fromFarm('A bag of the hens’ feed', formatPrice(price.price, currency), 'text')]
    : []),
  { ...bagInput, value: bagKg },
];

function cheapestOf(quarters: readonly LayQuarter[]): Pick<LayAges, 'cheapest' | 'keepUntil'> {
  let best: number | undefined;
  quarters.forEach(({ soFar }, k) => {
    if (soFar && (best === undefined || soFar.value < quarters[best]!.soFar!.value)) best = k;
  });
  // The last quarter that the table knows says nothing of the one after it.
  if (best === undefined || best === quarters.length - 1) return {};
  return { cheapest: quarters[best]!.soFar!, keepUntil: quarters[best + 1]!.from };
}

function paysFromOf(
  { batch, life, lay, farm }: PlanContext,
  kg: Float64Array,
  bag: BagOfFeed,
): Pick<LayAges, 'paysFrom'> {
  const dozen = batch.prices?.eggDozen;
  if (dozen === undefined || bag.price === undefined || !(0 < Number(dozen))) return {};
  const fedKg = sumOf(kg, 0, kg.length);
  const henDays = sumOf(lay!.hens, lay!.firstDay, lay!.endDay);
  const aDayKg = (HENS * fedKg) / henDays;
  const eggs =
    (costMinor(bag.price.price, (1000 * aDayKg) / bag.bagKg, farm.currency) * 12) /
    costMinor(dozen, 1000, farm.currency);
  return {
    paysFrom: quantity(
      'Eggs that ten hens must lay in a day to pay for their feed',
      eggs,
      'eggs',
      costFormulas.layPays,
      [
        input('Feed of ten hens in a day, average of all their years', aDayKg, 'kg', 'F'),
        ...hensFeedInputs(life),
        ...priceInputs(bag, farm.currency),
        fromFarm('A dozen eggs', formatPrice(dozen, farm.currency), 'text', 'p'),
      ],
      { rows: [...life.feedRows, layFormulas.layerEnergy] },
    ),
  };
}

function saidOf(
  context: PlanContext,
  { laying }: BatchPlan,
  quarters: readonly LayQuarter[],
  { kg, bag }: { kg: Float64Array; bag: BagOfFeed },
): readonly string[] {
  const { say, batch, farm } = context;
  const costs = laying!.years.flatMap(({ feedCostPerDozen }) =>
    feedCostPerDozen ? [say(feedCostPerDozen.value, 'money')] : [],
  );
  if (costs.length === 0)
    return ['No price of the hens’ feed yet, so no cost of a dozen. Give it under Prices.'];
  const { cheapest, keepUntil } = cheapestOf(quarters);
  const { paysFrom } = paysFromOf(context, kg, bag);
  const { paysUntil } = laying!;
  const dozen = batch.prices?.eggDozen;
  return [
    `Feed for a dozen eggs costs about ${costs.slice(0, 1).join('')} in their first year, then ${costs.slice(1).join(', ')} year by year.`,
    ...(cheapest && keepUntil
      ? [
          `With what it took to raise them a dozen is cheapest if you keep them until about ${say(String(keepUntil.value), 'date')}: ${say(cheapest.value, 'money')}.`,
        ]
      : []),
    ...(paysUntil && dozen !== undefined
      ? [
          paysUntil.unit === 'date'
            ? `At ${formatPrice(dozen, farm.currency)} a dozen they stop paying for their feed about ${say(String(paysUntil.value), 'date')}.`
            : `At ${formatPrice(dozen, farm.currency)} a dozen they pay for their feed ${String(paysUntil.value)}.`,
        ]
      : []),
    ...(paysFrom
      ? [
          `Ten hens pay for their feed while they give more than about ${say(Math.round(paysFrom.value), 'eggs')} a day.`,
        ]
      : []),
  ];
}

function sumOf(values: ArrayLike<number>, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i]!;
  return sum;
}
