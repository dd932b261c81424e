import Big from 'big.js';
import { from, fromFarm, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import type { Product, ProductKind } from '../../farm/product.js';
import { costMinor } from '../../money/money.js';
import { formatPrice, minorDigits } from '../../units/format.js';
import type { BatchPlan } from '../batch-plan.js';
import type { PlanContext } from '../context.js';
import type { Fetching } from './fetching.js';
import { costFormulas } from './cost-formulas.js';

/** A cost that no bill of a batch has, because the household has to say what it is. */
export interface OwnCost {
  readonly label: string;
  readonly cost: NumberQuantity;
}

const ofKind = <K extends ProductKind>(products: readonly Product[], kind: K) =>
  products.filter((p): p is Extract<Product, { kind: K }> => p.kind === kind);

/** What the household reckons an hour of its own work at, decimal text; undefined for nothing. */
export const hourRate = ({ products }: Pick<PlanContext, 'products'>): string | undefined =>
  ofKind(products, 'own-hour')[0]?.price;

/** All hours of a plan at the household's rate; undefined where it reckons none. */
export function ownHours(context: PlanContext, plan: BatchPlan): OwnCost | undefined {
  const rate = hourRate(context);
  if (rate === undefined) return undefined;
  const hours = plan.tasks.hoursInAll;
  const { currency } = context.farm;
  const label = 'Your own hours';
  return {
    label,
    cost: quantity(label, costMinor(rate, hours.value, currency), 'money', costFormulas.ownHours, [
      from(hours, 'h'),
      fromFarm('An hour', formatPrice(rate, currency), 'text', 'rate'),
    ]),
  };
}

/** Trips and shares of gear, as far as the household said what they cost. */
export const besideBill = (
  context: PlanContext,
  plan: BatchPlan,
  fetching?: Fetching,
): readonly OwnCost[] => [
  ...(fetching ? fetchedOf(context, plan, fetching) : tripsOf(context, plan)),
  ...gearOf(context),
];

/** Its share of the farm's trips for feed by weight, and its own one to the processor. */
function fetchedOf(
  { products, farm, batch }: PlanContext,
  { feed }: BatchPlan,
  { perKg, batches }: Fetching,
): OwnCost[] {
  const each = batches[batch.id ?? ''] ?? perKg;
  const [trip] = ofKind(products, 'trip');
  const label = 'Fetching the feed';
  const fetched = {
    label,
    cost: quantity(
      label,
      Math.round(each.value * feed.total.value),
      'money',
      costFormulas.fetched,
      [from(feed.total, 'F'), from(each, 'c')],
    ),
  };
  const isHired = batch.purpose === 'meat' && batch.processing === 'hired';
  return [fetched, ...(trip && isHired ? [tripCost(trip, farm.currency, [0, 1])] : [])];
}

function tripsOf({ products, farm, batch }: PlanContext, plan: BatchPlan): OwnCost[] {
  const [trip] = ofKind(products, 'trip');
  if (!trip) return [];
  const days = new Set(
    plan.feed.phases.flatMap(({ deliveries }) => deliveries.map(({ buyBy }) => buyBy.value)),
  );
  const toProcessor = batch.purpose === 'meat' && batch.processing === 'hired' ? 1 : 0;
  return [tripCost(trip, farm.currency, [days.size, toProcessor])];
}

const tripCost = (
  { name, price }: Extract<Product, { kind: 'trip' }>,
  currency: string,
  [forFeed, toProcessor]: readonly [number, number],
): OwnCost => ({
  label: name,
  cost: quantity(
    name,
    costMinor(price, forFeed + toProcessor, currency),
    'money',
    costFormulas.trips,
    [
      input('Days to fetch feed', forFeed, 'count'),
      input('To the processor', toProcessor, 'count'),
      fromFarm('A trip', formatPrice(price, currency), 'text'),
    ],
  ),
});

function gearOf({ products, farm, batch }: PlanContext): OwnCost[] {
  const digits = 10 ** minorDigits(farm.currency);
  return ofKind(products, 'gear')
    .filter(({ usedFor = batch.purpose }) => usedFor === batch.purpose)
    .map(({ name, price, years, batchesAYear }) => ({
      label: `Share of ${name}`,
      cost: quantity(
        `Share of ${name}`,
        new Big(price)
          .times(digits)
          .div(years)
          .div(batchesAYear)
          .round(0, Big.roundHalfUp)
          .toNumber(),
        'money',
        costFormulas.gear,
        [
          fromFarm('Its price new', formatPrice(price, farm.currency), 'text'),
          fromFarm('Years it lasts', years, 'count'),
          fromFarm('Batches a year', batchesAYear, 'count'),
        ],
      ),
    }));
}

/** What a kilogram of birds of a dressed weight brings, minor units; undefined without a price. */
export type PriceByWeight = (dressedKg: number) => number | undefined;

/** Prices of dressed meat by the size of birds: the breed's own rows where there are any. */
export function meatPrices({
  products,
  batch,
  farm,
}: Pick<PlanContext, 'products' | 'batch' | 'farm'>): PriceByWeight {
  const all = ofKind(products, 'meat');
  const own = all.filter(({ strainId }) => strainId === batch.strainId);
  const rows = (0 < own.length ? own : all.filter(({ strainId }) => strainId === undefined)).map(
    ({ fromDressedKg = 0, price }) => ({
      from: fromDressedKg,
      minor: new Big(price).times(10 ** minorDigits(farm.currency)).toNumber(),
    }),
  );
  rows.sort((a, b) => b.from - a.from);
  return (dressedKg) => rows.find(({ from: least }) => least <= dressedKg + 1e-9)?.minor;
}
