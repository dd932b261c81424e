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
import { holding, type FactOf } from '../../farm/told-fact.js';
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
      'Head by day times what one animal eats a day, less what is left of the bags you told, in whole bags. Calves at foot eat little and count like the others.',
    symbols: 'b = ⌈(Σ head·g − S) ÷ bag⌉',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** What is bought for cattle in the year, beside what they graze. */
export interface HerdPurchase {
  readonly kind: 'hay' | 'minerals';
  readonly name: string;
  /** Of one bag or block; left out of bales. */
  readonly eachKg?: number;
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

interface Asked {
  readonly picture: FarmPicture;
  readonly tables: Tables;
  readonly plan: PasturePlan;
  /** What was told as bought, of the whole farm. */
  readonly bought: readonly FactOf<'bought'>[];
  /** Days from today on which somebody goes for feed anyway, in order. */
  readonly tripDays: readonly number[];
}

/**
 * Hay, minerals and salt that are to be bought for the herds of a farm. A bag or block is taken along
 * on a trip for feed that is made not long before it is due.
 */
export const herdPurchases = (
  asked: Omit<Asked, 'plan'> & { readonly plan: PasturePlan | undefined },
): HerdPurchase[] => {
  const { plan } = asked;
  return plan === undefined
    ? []
    : [...hayOf(asked.picture, asked.tables, plan), ...mineralsOf({ ...asked, plan })];
};

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
      paid: paidByWinter(plan, { on, ahead, minor, bales: amount.value }),
    },
  ];
}

/** What is fed before turn-out is bought first; the rest before the herds come off the grass. */
function paidByWinter(
  { hay: { byWinter }, keyDates, to }: PasturePlan,
  { on, ahead, minor, bales }: { on: PlainDate; ahead: number; minor: number; bales: number },
): HerdPurchase['paid'] {
  const first = Math.min(bales, byWinter?.balesUntilOut.value ?? bales);
  const off = keyDates.herds.map(({ lastGrazing }) => String(lastGrazing?.value ?? to)).sort()[0];
  const later = addDays(off ?? to, -ahead);
  if (first === bales || later <= on) return [{ on, amount: bales, minor }];
  const firstMinor = Math.round((minor * first) / bales);
  return [
    ...(0 < first ? [{ on, amount: first, minor: firstMinor }] : []),
    { on: later, amount: bales - first, minor: minor - firstMinor },
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

function mineralsOf(asked: Asked): HerdPurchase[] {
  const { picture, plan } = asked;
  const { today } = picture;
  const heads = headByDay(today, plan);
  if (heads.every((head) => head === 0)) return [];
  return picture.products
    .filter((each): each is MineralsProduct => each.kind === 'minerals')
    .map((product) => mineralsBought(product, asked, heads));
}

function mineralsBought(
  product: MineralsProduct,
  { picture, tables, plan, bought, tripDays }: Asked,
  heads: readonly number[],
): HerdPurchase {
  const { today, farm } = picture;
  const { eatenGPerDay, bagKg, name, price } = product;
  const usual = tables.judgements.buying.mineralsGPerDay;
  const kgPerDay = (eatenGPerDay ?? usual.value) / 1000;
  const headDays = heads.reduce((sum, head) => sum + head, 0);
  const leftKg = leftOfTold(product, kgPerDay, { today, plan, bought });
  const bags = Math.max(0, Math.ceil((headDays * kgPerDay - leftKg) / bagKg - 1e-9));
  const amount = quantity(name, bags, 'bags', herdCostFormulas.minerals, [
    input('Head, each day of the year added up', headDays, 'count', 'Σ head'),
    eatenGPerDay === undefined
      ? fromJudgement(usual, 'g')
      : fromFarm('One animal eats a day', eatenGPerDay, 'g', 'g'),
    fromFarm(`One bag of ${name}`, bagKg, 'kg', 'bag'),
    ...(leftKg === 0 ? [] : [fromFarm('Left of what you told', leftKg, 'kg', 'S')]),
  ]);
  const minorOf = (count: number): number => costMinor(price, count, farm.currency);
  const cost = quantity(name, minorOf(bags), 'money', billFormulas.line, [
    from(amount, 'n'),
    priceInput({ price, product: name }, farm.currency),
  ]);
  const paid: HerdPurchase['paid'][number][] = [];
  let eaten = 0;
  heads.forEach((head, day) => {
    // One is due on the day on which those before it are eaten.
    while (paid.length < bags && leftKg + paid.length * bagKg <= eaten && 0 < head) {
      const minor = minorOf(paid.length + 1) - minorOf(paid.length);
      paid.push({ on: addDays(today, takenAlong(day, tripDays)), amount: 1, minor });
    }
    eaten += head * kgPerDay;
  });
  return { kind: 'minerals', name, eachKg: bagKg, amount, cost, paid };
}

/** The day of the last trip before something is due, or that day itself. */
const takenAlong = (due: number, tripDays: readonly number[]): number =>
  tripDays.findLast((day) => day <= due && due - day <= MOST_DAYS_AHEAD) ?? due;

/** Nobody thinks further ahead of a block of salt. */
const MOST_DAYS_AHEAD = 45;

/** What is left of the bags and blocks that were told as bought, kg. */
function leftOfTold(
  { name, bagKg }: MineralsProduct,
  kgPerDay: number,
  { today, plan, bought }: Pick<Asked, 'plan' | 'bought'> & { today: PlainDate },
): number {
  const mine = holding(bought)
    .filter(({ on, details }) => details.what === 'minerals' && on <= today)
    .filter(({ details }) => details.name?.trim().toLowerCase() === name.trim().toLowerCase())
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  let leftKg = 0;
  mine.forEach(({ on, details }, k) => {
    leftKg += details.amount * (details.eachKg ?? bagKg);
    const until = mine[k + 1]?.on ?? today;
    const heads = headByDay(on, plan, daysBetween(on, until));
    leftKg = Math.max(0, leftKg - kgPerDay * heads.reduce((sum, head) => sum + head, 0));
  });
  return leftKg;
}

/** Head by day from a day on: before and after the days of the plan as at their ends. */
function headByDay(
  since: PlainDate,
  { from: first, herds }: PasturePlan,
  days = YEAR_DAYS,
): number[] {
  const skip = daysBetween(first, since);
  return Array.from({ length: days }, (_, k) => {
    let sum = 0;
    for (const { groups } of herds)
      for (const { headByDay: head } of groups)
        sum += head[Math.min(head.length - 1, Math.max(0, skip + k))] ?? 0;
    return sum;
  });
}
