import Big from 'big.js';
import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import { bagPrice } from '../../farm/feed-product.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { FeedProduct, Product } from '../../farm/product.js';
import type { Supplier } from '../../farm/supplier.js';
import { holding, type FactOf } from '../../farm/told-fact.js';
import { costMinor } from '../../money/money.js';
import { minorDigits } from '../../units/format.js';

/** What animals eat, as receipts name it. */
export type ReceiptKind = 'feed' | 'hay' | 'minerals';

/** One line of a receipt, as it was told, with what the place knows of it. */
export interface ReceiptLine {
  readonly on: PlainDate;
  readonly what: ReceiptKind;
  readonly name: string;
  readonly product?: Product;
  readonly amount: number;
  /** Of one bag or bale; left out where nobody knows it. */
  readonly eachKg?: number;
  /** Paid for all of it, smallest coins. */
  readonly minor: number;
  /** Nobody told the money: it is that of the price list. */
  readonly isListPrice?: true;
  readonly isUnpriced?: true;
  /** Left out where nobody said from whom. */
  readonly supplier?: Supplier;
  readonly from?: string;
}

/** Receipts of so many days up to today. */
export const RECEIPT_DAYS = 365;
const KINDS: ReadonlySet<string> = new Set<ReceiptKind>(['feed', 'hay', 'minerals']);

const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/** Lines of the receipts of a year up to today that hold, the oldest first. */
export function receiptLines(
  { products, suppliers = [], farm, today }: FarmPicture,
  bought: readonly FactOf<'bought'>[],
): ReceiptLine[] {
  const first = addDays(today, -RECEIPT_DAYS);
  return holding(bought)
    .filter(({ on, details }) => KINDS.has(details.what) && first < on && on <= today)
    .map(({ on, details }): ReceiptLine => {
      const what = details.what as ReceiptKind;
      const name = details.name?.trim() ?? UNNAMED[what];
      const product = products.find((each) => each.kind === what && same(each.name, name));
      const eachKg = details.eachKg ?? weightOf(product);
      const from = details.from?.trim();
      const supplier = suppliers.find((each) =>
        from === undefined ? each.id === supplierOf(product) : same(each.name, from),
      );
      return {
        ...{ on, what, amount: details.amount },
        name: product?.name ?? name,
        ...(product ? { product } : {}),
        ...(eachKg === undefined ? {} : { eachKg }),
        ...paidFor(details.money, product, details.amount, farm.currency),
        ...(supplier ? { supplier } : {}),
        ...(supplier ? { from: supplier.name } : from === undefined ? {} : { from }),
      };
    })
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
}

const UNNAMED: Readonly<Record<ReceiptKind, string>> = {
  feed: 'Feed without a name',
  hay: 'Hay',
  minerals: 'Minerals',
};

const weightOf = (product: Product | undefined): number | undefined =>
  product?.kind === 'feed' || product?.kind === 'minerals' ? product.bagKg : undefined;

const supplierOf = (product: Product | undefined): string | undefined =>
  product?.kind === 'feed' ? product.supplierId : undefined;

function paidFor(
  money: string | undefined,
  product: Product | undefined,
  amount: number,
  currency: string,
): Pick<ReceiptLine, 'minor' | 'isListPrice' | 'isUnpriced'> {
  if (money !== undefined) return { minor: costMinor(money, 1, currency) };
  if (!product) return { minor: 0, isUnpriced: true };
  return { minor: listMinor(product, amount, currency), isListPrice: true };
}

/** What so much costs by the price list of the place today, smallest coins. */
export const listMinor = (product: Product, amount: number, currency: string): number =>
  costMinor(
    product.kind === 'feed' ? bagPrice(product, Math.floor(amount)) : product.price,
    amount,
    currency,
  );

/** Money of a line for one bag or bale, decimal text. */
export const eachPaid = ({ minor, amount }: ReceiptLine, currency: string): string =>
  new Big(minor)
    .div(10 ** minorDigits(currency))
    .div(amount)
    .toFixed(minorDigits(currency));

/** A drive to a seller, or a delivery: all that was bought there on a day. */
export interface ReceiptTrip {
  readonly on: PlainDate;
  readonly from: string | undefined;
  readonly supplier?: Supplier;
  readonly lines: readonly ReceiptLine[];
  readonly kg: number;
  /** Smallest coins; 0 where nobody said what a trip costs. */
  readonly minor: number;
}

/** The trips that were made, by day and seller. What nobody said from whom is taken to be one trip a day. */
export function receiptTrips(
  { products, farm }: FarmPicture,
  lines: readonly ReceiptLine[],
): ReceiptTrip[] {
  const trip = products.find(({ kind }) => kind === 'trip')?.price;
  const byKey = new Map<string, ReceiptLine[]>();
  for (const line of lines) {
    const key = `${line.on} ${line.from?.toLowerCase() ?? ''}`;
    byKey.set(key, [...(byKey.get(key) ?? []), line]);
  }
  return [...byKey.values()].map((mine) => {
    const { on, from, supplier } = mine[0]!;
    const price = supplier?.tripCost ?? (supplier?.comes === 'delivered' ? undefined : trip);
    return {
      ...{ on, from, lines: mine },
      ...(supplier ? { supplier } : {}),
      kg: mine.reduce((sum, { eachKg = 0, amount }) => sum + eachKg * amount, 0),
      minor: price === undefined ? 0 : costMinor(price, 1, farm.currency),
    };
  });
}

/** A line of a feed that the place sells or a household named, with what a bag weighs. */
export const isBagged = (
  line: ReceiptLine,
): line is ReceiptLine & { readonly eachKg: number; readonly product?: FeedProduct } =>
  line.what === 'feed' && line.eachKg !== undefined && !line.isUnpriced;
