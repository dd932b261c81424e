import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import {
  from,
  fromFarm,
  fromJudgement,
  input,
  quantity,
  type NumberQuantity,
} from '../../explain/quantity.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { HayProduct, MineralsProduct } from '../../farm/product.js';
import { costMinor } from '../../money/money.js';
import type { Tables } from '../../tables/tables.js';
import { billFormulas } from '../bill.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import { priceInput } from '../prices.js';
import { YEAR_DAYS } from './year-buying.js';

export const herdCostFormulas = {
  minerals: {
    id: 'minerals-of-year',
    title: 'Minerals and salt of the year',
    words:
      'Head by day times what one animal eats a day, in whole bags. Calves at foot eat little and count like the others.',
    symbols: 'b = ⌈Σ head·g ÷ bag⌉',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** What is bought for cattle in the year, beside what they graze. */
export interface HerdPurchase {
  readonly kind: 'hay' | 'minerals';
  readonly name: string;
  readonly amount: NumberQuantity;
  /** Left out where no price is known. */
  readonly cost?: NumberQuantity;
  /** When it is paid: dates and smallest coins, in order. */
  readonly paid: readonly {
    readonly on: PlainDate;
    readonly amount: number;
    readonly minor: number;
  }[];
}

/** A herd that is fed more than this share of its need by hand is on hay. */
const ON_HAY = 0.5;

/** Hay, minerals and salt that are to be bought for the herds of a farm. */
export const herdPurchases = (
  picture: FarmPicture,
  tables: Tables,
  pasture: PasturePlan | undefined,
): HerdPurchase[] =>
  pasture === undefined
    ? []
    : [...hayOf(picture, tables, pasture), ...mineralsOf(picture, tables, pasture)];

function hayOf(picture: FarmPicture, tables: Tables, plan: PasturePlan): HerdPurchase[] {
  const amount = plan.hay.balesToBuy;
  if (amount.value <= 0) return [];
  const [product] = picture.products
    .filter((each): each is HayProduct => each.kind === 'hay')
    .sort((a, b) => Number(a.price) - Number(b.price));
  const { currency } = picture.farm;
  const ahead = tables.judgements.buying.hayAheadDays.value;
  const first = addDays(hayFrom(picture.today, plan), -ahead);
  const on = first < picture.today ? picture.today : first;
  const minor = product ? costMinor(product.price, amount.value, currency) : 0;
  return [
    {
      kind: 'hay',
      name: product?.name ?? 'Hay',
      amount,
      ...(product
        ? {
            cost: quantity('Hay to buy', minor, 'money', billFormulas.line, [
              from(amount, 'n'),
              priceInput({ price: product.price, product: product.name }, currency),
            ]),
          }
        : {}),
      paid: [{ on, amount: amount.value, minor }],
    },
  ];
}

/** The day on which hay of one's own is gone or, where nobody counted it, from which herds are on hay. */
function hayFrom(today: PlainDate, { from: first, to, hay, herds }: PasturePlan): PlainDate {
  if (hay.runsOut) return String(hay.runsOut.value);
  if (hay.untilPlan) return today;
  const days = daysBetween(first, to) + 1;
  for (let day = Math.max(0, daysBetween(first, today)); day < days; day++) {
    const need = herds.reduce((sum, { needByDay }) => sum + needByDay[day]!, 0);
    const fed = herds.reduce((sum, { hayByDay }) => sum + hayByDay[day]!, 0);
    if (0 < need && ON_HAY * need < fed) return addDays(first, day);
  }
  return addDays(to, 1);
}

function mineralsOf(picture: FarmPicture, tables: Tables, plan: PasturePlan): HerdPurchase[] {
  const { today, farm } = picture;
  const heads = headByDay(today, plan);
  const headDays = heads.reduce((sum, head) => sum + head, 0);
  if (headDays === 0) return [];
  return picture.products
    .filter((each): each is MineralsProduct => each.kind === 'minerals')
    .map((product): HerdPurchase => {
      const { eatenGPerDay, bagKg, name, price } = product;
      const usual = tables.judgements.buying.mineralsGPerDay;
      const kgPerDay = (eatenGPerDay ?? usual.value) / 1000;
      const bags = Math.ceil((headDays * kgPerDay) / bagKg - 1e-9);
      const amount = quantity(name, bags, 'bags', herdCostFormulas.minerals, [
        input('Head, each day of the year added up', headDays, 'count', 'Σ head'),
        eatenGPerDay === undefined
          ? fromJudgement(usual, 'g')
          : fromFarm('One animal eats a day', eatenGPerDay, 'g', 'g'),
        fromFarm(`One bag of ${name}`, bagKg, 'kg', 'bag'),
      ]);
      const cost = quantity(
        name,
        costMinor(price, bags, farm.currency),
        'money',
        billFormulas.line,
        [from(amount, 'n'), priceInput({ price, product: name }, farm.currency)],
      );
      return { kind: 'minerals', name, amount, cost, paid: paidBags() };

      /** A bag is bought on the day on which the one before it is eaten. */
      function paidBags() {
        const paid: { on: PlainDate; amount: number; minor: number }[] = [];
        let eaten = 0;
        heads.forEach((head, day) => {
          while (paid.length < bags && paid.length * bagKg <= eaten && 0 < head) {
            const minor =
              costMinor(price, paid.length + 1, farm.currency) -
              costMinor(price, paid.length, farm.currency);
            paid.push({ on: addDays(today, day), amount: 1, minor });
          }
          eaten += head * kgPerDay;
        });
        return paid;
      }
    });
}

/** Head by day for a year from today: before and after the days of the plan as at their ends. */
function headByDay(today: PlainDate, { from: first, herds }: PasturePlan): number[] {
  const skip = daysBetween(first, today);
  return Array.from({ length: YEAR_DAYS }, (_, k) => {
    let sum = 0;
    for (const { groups } of herds)
      for (const { headByDay: head } of groups)
        sum += head[Math.min(head.length - 1, Math.max(0, skip + k))] ?? 0;
    return sum;
  });
}
