import type { Unit } from '../units/unit.js';
import { isWeaker, type Formula, type Mark, type Sourced } from './formula.js';

/** Where an input keeps the sources of its row; no text that is sent or kept holds it. */
const ROW_SOURCES = Symbol('sources of the row');

/** One input of a formula: a number with its unit, or a word such as the name of a table. */
export interface QuantityInput {
  readonly label: string;
  readonly symbol?: string;
  readonly unit: Unit;
  readonly value: number | string;
  /** How well the input is supported, where that is known; a result is no better. */
  readonly mark?: Mark;
  /** Sources of the row it was read from: they go to the result's own, and are not sent twice. */
  readonly [ROW_SOURCES]?: readonly string[];
  /** Set when the input itself lies outside the range that its source covers. */
  readonly outside?: string;
}

/** A range that sources or an unsettled coefficient leave open. */
export interface Spread {
  readonly low: number;
  readonly high: number;
  readonly because: string;
}

/** A computed number or date that knows how it came about. */
export interface Quantity {
  readonly label: string;
  readonly value: number | string;
  readonly unit: Unit;
  /** Id of the formula, looked up in `FORMULAS`. */
  readonly formula: string;
  readonly inputs: readonly QuantityInput[];
  readonly sources: readonly string[];
  readonly mark: Mark;
  readonly spread?: Spread;
  /** Set when an input lies outside the range that its source covers. */
  readonly outside?: string;
}

/** A quantity whose value is a number. */
export interface NumberQuantity extends Quantity {
  readonly value: number;
}

export interface QuantityOptions {
  /** In place of the formula's. */
  readonly sources?: readonly string[];
  /** A result is no better supported than this, nor than its formula, its inputs and its rows. */
  readonly mark?: Mark;
  /** Rows of tables that the value rests on beside its inputs. */
  readonly rows?: readonly Sourced[];
  readonly spread?: Spread | undefined;
  readonly outside?: string | undefined;
}

export const input = (
  label: string,
  value: number | string,
  unit: Unit,
  symbol?: string,
): QuantityInput =>
  symbol === undefined
    ? { label, unit, value: tidy(value) }
    : { label, symbol, unit, value: tidy(value) };

/** A value of a table as an input: it hands on the mark and the sources of its row. */
export function fromTable(
  { mark, sources }: Sourced,
  label: string,
  value: number | string,
  unit: Unit,
  symbol?: string,
): QuantityInput {
  // Written out twice: a plan makes hundreds, and spreads cost more than the sums.
  const tidied = tidy(value);
  return symbol === undefined
    ? { label, unit, value: tidied, mark, [ROW_SOURCES]: sources }
    : { label, symbol, unit, value: tidied, mark, [ROW_SOURCES]: sources };
}

/** A judgment as an input, by its own name. */
export const fromJudgement = (
  judged: Sourced & { readonly name: string; readonly value: number; readonly unit: Unit },
  symbol?: string,
): QuantityInput => fromTable(judged, judged.name, judged.value, judged.unit, symbol);

/** What the farm itself measured, counted or logged, as an input. */
export const fromFarm = (
  label: string,
  value: number | string,
  unit: Unit,
  symbol?: string,
): QuantityInput =>
  symbol === undefined
    ? { label, unit, value: tidy(value), mark: 'own-record' }
    : { label, symbol, unit, value: tidy(value), mark: 'own-record' };

/** A row of the farm: it may name those of its own fields that nobody has said. */
interface SaidRow {
  readonly assumed?: readonly string[];
  readonly estimated?: readonly string[];
}
type FieldOf<Row> = Extract<Exclude<keyof Row, keyof SaidRow>, string>;
type PathOf<Row> = FieldOf<Row> | `${FieldOf<Row>}.${string}`;

/**
 * A field of a row of the farm as an input, or a value made of several: the household's own, but
 * where the row says that it was assumed or estimated.
 */
export function fromRow<Row extends SaidRow>(
  row: Row,
  paths: PathOf<Row> | readonly PathOf<Row>[],
  ...[label, value, unit, symbol]: Parameters<typeof input>
): QuantityInput {
  const told = fromFarm(label, value, unit, symbol);
  const isIn = (list: readonly string[] | undefined): boolean =>
    list !== undefined &&
    (typeof paths === 'string' ? list.includes(paths) : paths.some((path) => list.includes(path)));
  if (isIn(row.assumed)) return { ...told, mark: 'assumed' };
  return isIn(row.estimated) ? { ...told, mark: 'estimate' } : told;
}

/** A value that the user may have given; else the table's stands in, with the mark of its row. */
export const givenOrTable = (
  isGiven: boolean,
  row: Sourced,
  ...[label, value, unit, symbol]: Parameters<typeof input>
): QuantityInput =>
  isGiven ? fromFarm(label, value, unit, symbol) : fromTable(row, label, value, unit, symbol);

/**
 * A computed quantity as the input of another: it hands on its mark and its "outside the range", so
 * that a total is never better supported than its parts.
 */
export function from(
  { label, value, unit, mark, outside }: Quantity,
  symbol?: string,
  as: string = label,
): QuantityInput {
  return {
    label: as,
    unit,
    value,
    mark,
    ...(symbol === undefined ? {} : { symbol }),
    ...(outside === undefined ? {} : { outside }),
  };
}

/**
 * Builds a number that explains itself. Its sources are those of the formula, unless others are
 * given, with those of the rows it was fed with; its mark is the weakest of all of these.
 */
export function quantity(
  label: string,
  value: number,
  unit: Unit,
  formula: Formula,
  inputs: readonly QuantityInput[],
  options: QuantityOptions = {},
): NumberQuantity {
  // Whole coins stay what they are: a sum of lines is the total, however large.
  const isCoins = unit === 'money' && Number.isSafeInteger(value);
  return built(label, isCoins ? value : round6(value), unit, formula, inputs, options);
}

/** Builds a date that explains itself. */
export function datedFact(
  label: string,
  date: string,
  formula: Formula,
  inputs: readonly QuantityInput[],
  options: QuantityOptions = {},
): Quantity {
  return built(label, date, 'date', formula, inputs, options);
}

/** Builds a finding in words that explains itself. */
export function worded(
  label: string,
  words: string,
  formula: Formula,
  inputs: readonly QuantityInput[],
  options: QuantityOptions = {},
): Quantity {
  return built(label, words, 'text', formula, inputs, options);
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

function built<V extends number | string>(
  label: string,
  value: V,
  unit: Unit,
  formula: Formula,
  inputs: readonly QuantityInput[],
  { sources = formula.sources, mark, rows = [], spread, outside }: QuantityOptions,
): Quantity & { readonly value: V } {
  // Built by assignment: a plan makes hundreds, and conditional spreads cost more than the sums.
  const result: Writable<Quantity & { readonly value: V }> = {
    label,
    value,
    unit,
    formula: formula.id,
    inputs,
    sources: withRowSources(sources, rows, inputs),
    mark: weakestOf(
      weakestOf(mark && isWeaker(mark, formula.mark) ? mark : formula.mark, rows),
      inputs,
    ),
  };
  if (spread) result.spread = tidySpread(spread);
  const beyond = outside ?? outsideOf(inputs);
  if (beyond !== undefined) result.outside = beyond;
  return result;
}

function outsideOf(inputs: readonly QuantityInput[]): string | undefined {
  for (const { outside } of inputs) if (outside !== undefined) return outside;
  return undefined;
}

/** The weakest of a mark and those that are known of parts. */
export function weakestOf(mark: Mark, parts: readonly { readonly mark?: Mark }[]): Mark {
  let weakest = mark;
  for (const each of parts)
    if (each.mark !== undefined && isWeaker(each.mark, weakest)) weakest = each.mark;
  return weakest;
}

/** Several rows as one support: the weakest of their marks, all of their sources. */
export const together = (rows: readonly Sourced[]): Sourced => ({
  mark: weakestOf('own-record', rows),
  sources: allSources([], rows),
});

/** Sources with those of rows, each once. */
export function allSources(
  own: readonly string[],
  rows: readonly { readonly sources: readonly string[] }[],
): readonly string[] {
  let all: string[] | undefined;
  for (const { sources } of rows) all = added(own, all, sources);
  return all ?? own;
}

/** Sources with those of rows and of inputs that were read from rows, each once. */
export function withRowSources(
  own: readonly string[],
  rows: readonly Sourced[],
  inputs: readonly Partial<QuantityInput>[],
): readonly string[] {
  const all = allSources(own, rows);
  let more: string[] | undefined;
  for (const { [ROW_SOURCES]: sources } of inputs) if (sources) more = added(all, more, sources);
  return more ?? all;
}

/** A list is copied only when something is to be added: most have nothing. */
function added(
  own: readonly string[],
  before: string[] | undefined,
  sources: readonly string[],
): string[] | undefined {
  let all = before;
  for (const id of sources) {
    if ((all ?? own).includes(id)) continue;
    all ??= [...own];
    all.push(id);
  }
  return all;
}

/** Below this a power of ten overflows; nothing on a farm is as small. */
const SMALLEST = 1e-300;

/** Six significant digits: more than any source has, and short enough to send and to read. */
export function round6(value: number): number {
  if (Math.abs(value) < SMALLEST) return 0;
  if (!Number.isFinite(value)) return value;
  const digits = 5 - Math.floor(Math.log10(Math.abs(value)));
  // A power of ten with a negative exponent is not exact, so large values are divided instead.
  if (digits < 0) return Math.round(value / 10 ** -digits) * 10 ** -digits;
  const ten = TENS[digits] ?? 10 ** digits;
  return Math.round(value * ten) / ten;
}

/** Powers of ten that are exact; a plan rounds thousands of values. */
const TENS = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

const tidySpread = ({ low, high, because }: Spread): Spread => ({
  low: round6(low),
  high: round6(high),
  because,
});

const tidy = (value: number | string): number | string =>
  typeof value === 'number' ? round6(value) : value;
