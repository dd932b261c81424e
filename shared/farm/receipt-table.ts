import Big from 'big.js';
import { isPlainDate, type PlainDate } from '../calendar/plain-date.js';
import { isPrice } from '../money/money.js';
import { fromShown, type UnitSystem } from '../units/unit.js';
import type { Product } from './product.js';
import type { Bought } from './season-facts.js';

/** A line of a table of receipts, ready to be told. */
export interface ReadReceipt {
  readonly on: PlainDate;
  readonly details: Bought;
}

/** What a table of receipts holds, and what of it cannot be read, each with its line. */
export interface ReadReceipts {
  readonly lines: readonly ReadReceipt[];
  readonly problems: readonly string[];
}

type Column = 'date' | 'from' | 'name' | 'amount' | 'money' | 'weight';

/** Words at the head of a column. */
const HEADS: Readonly<Record<Column, RegExp>> = {
  date: /^(date|day|when)\b/,
  from: /^(from|seller|supplier|store|shop|where)\b/,
  name: /^(what|feed|product|name|item|description)\b/,
  amount: /^(bags?|bales?|how many|number|count|amount|quantity|qty)\b/,
  money: /^(paid|cost|price|total|money|sum)\b/,
  weight: /^(weight|one bag|bag of|each|lb|kg)\b/,
};
/** The order of columns without heads. */
const USUAL: readonly Column[] = ['date', 'from', 'name', 'amount', 'money', 'weight'];
/** More lines are told in several goes. */
export const MOST_LINES = 200;

interface Known {
  readonly products: readonly Product[];
  readonly units: UnitSystem;
  readonly today: PlainDate;
}

/**
 * Reads a table of receipts as it is copied from a spreadsheet: a line a feed, with the day, the
 * seller, the feed, the bags and what they cost together. With a line of heads columns may stand in
 * any order. Nothing of a table is told before all of it can be read.
 */
export function readReceipts(rows: readonly (readonly string[])[], known: Known): ReadReceipts {
  const filled = rows.map((cells, k) => ({ cells: cells.map((cell) => cell.trim()), line: k + 1 }));
  const all = filled.filter(({ cells }) => cells.some((cell) => cell !== ''));
  const heads = headsOf(all[0]?.cells ?? []);
  const body = heads ? all.slice(1) : all;
  if (MOST_LINES < body.length)
    return {
      lines: [],
      problems: [`These are ${body.length} lines: paste ${MOST_LINES} at most.`],
    };
  const problems: string[] = [];
  const lines: ReadReceipt[] = [];
  for (const { cells, line } of body) {
    const at = (column: Column): string => cells[(heads ?? USUAL).indexOf(column)] ?? '';
    const read = readLine(at, known);
    if ('problem' in read) problems.push(`Line ${line}: ${read.problem}`);
    else lines.push(read);
  }
  return { lines, problems };
}

/** The columns of a line of heads; undefined where the first line is one of goods already. */
function headsOf(cells: readonly string[]): (Column | undefined)[] | undefined {
  const found = cells.map((cell) =>
    (Object.keys(HEADS) as Column[]).find((column) => HEADS[column].test(cell.toLowerCase())),
  );
  return found.includes('date') && found.includes('name') ? found : undefined;
}

function readLine(
  at: (column: Column) => string,
  { products, units, today }: Known,
): ReadReceipt | { problem: string } {
  const on = readDate(at('date'), units);
  if (!on) return { problem: `“${at('date')}” is no day. Write it such as 2027-04-21.` };
  if (today < on) return { problem: `${on} has not happened yet: check the year.` };
  const name = at('name');
  if (name === '') return { problem: 'it names no feed.' };
  const amount = Number(at('amount').replace(',', '.'));
  if (!(0 < amount && amount <= 10_000))
    return { problem: `“${at('amount')}” is no number of bags. Give how many were bought.` };
  const money = readMoney(at('money'));
  if (money === undefined)
    return { problem: `“${at('money')}” is no price. Write what all of it cost, such as 147.60.` };
  const product = products.find((each) => each.name.toLowerCase() === name.toLowerCase());
  const weight = readWeight(at('weight'), units);
  if (Number.isNaN(weight))
    return { problem: `“${at('weight')}” is no weight of one bag. Give it in whole numbers.` };
  const eachKg = weight ?? (product && 'bagKg' in product ? product.bagKg : undefined);
  return {
    on,
    details: {
      what: product?.kind === 'hay' || product?.kind === 'minerals' ? product.kind : kindOf(name),
      name: product?.name ?? name,
      amount,
      ...(eachKg === undefined ? {} : { eachKg }),
      ...(money === '' ? {} : { money }),
      ...(at('from') === '' ? {} : { from: at('from') }),
    },
  };
}

const kindOf = (name: string): Bought['what'] =>
  /\bhay\b/i.test(name) ? 'hay' : /\b(minerals?|salt)\b/i.test(name) ? 'minerals' : 'feed';

/** A day as it is written in a country: year first anywhere, else month or day first. */
function readDate(text: string, units: UnitSystem): PlainDate | undefined {
  if (isPlainDate(text)) return text;
  const parts = /^(\d{1,2})[./-](\d{1,2})[./-](\d{4})$/.exec(text);
  if (!parts) return undefined;
  const [, a, b, year] = parts as unknown as [string, string, string, string];
  const [month, day] = units === 'us' ? [a, b] : [b, a];
  const date = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  return isPlainDate(date) ? date : undefined;
}

/** Money without its sign; empty where none is given, undefined where it cannot be read. */
function readMoney(text: string): string | undefined {
  const bare = text.replace(/[^\d.,-]/g, '');
  if (bare === '') return text === '' ? '' : undefined;
  const point = /^\d+(,\d{1,2})$/.test(bare) ? bare.replace(',', '.') : bare.replace(/,/g, '');
  return isPrice(point) && new Big(point).gt(0) ? point : undefined;
}

/** The weight of one bag in kg: undefined where none is given, NaN where it cannot be read. */
function readWeight(text: string, units: UnitSystem): number | undefined {
  if (text === '') return undefined;
  const parts = /^([\d.,]+)\s*(kg|lbs?)?$/i.exec(text);
  const value = Number(parts?.[1]?.replace(',', '.'));
  if (!parts || !(0 < value)) return NaN;
  const unit = parts[2]?.toLowerCase();
  const kg = fromShown(value, 'kg', unit === undefined ? units : unit === 'kg' ? 'metric' : 'us');
  return kg < 0.1 || 1500 < kg ? NaN : kg;
}
