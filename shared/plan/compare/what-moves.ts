import { from, quantity, type NumberQuantity, type QuantityInput } from '../../explain/quantity.js';
import { FieldError } from '../../problems/field-problem.js';
import { tablesIn } from '../../tables/in-own-units.js';
import { planBatch, type BatchPlan } from '../batch-plan.js';
import { compareFormulas } from './compare-formulas.js';
import { feedPriceSpread } from './feed-price-spread.js';
import {
  plannedSpreads,
  scaledSpreads,
  type Asked,
  type PlannedSpread,
  type ScaledSpread,
} from './stated-spreads.js';

/** What a bill comes to, in all and for a kilogram dressed or a dozen. */
interface Outcome {
  readonly bill: NumberQuantity;
  /** Left out where something that the batch is made of has no price. */
  readonly each?: NumberQuantity;
}

/** One input, and the bill at either end of what sources state of it. */
export interface MovedBill {
  readonly what: string;
  readonly because: string;
  readonly low: Outcome;
  readonly high: Outcome;
}

export interface WhatMoves {
  /** What moves it most stands first. */
  readonly inputs: readonly MovedBill[];
  /** As planned, with the range that all of these leave together. */
  readonly bill: NumberQuantity;
  readonly each?: NumberQuantity;
}

/**
 * What of a batch's bill is open and how far, by what sources state of each input alone, and by how
 * far the household says that a price may move. What else it typed, weighed or counted is taken as it
 * is.
 *
 * @param asked with the plan that is made of it
 */
export function whatMoves(asked: Asked): WhatMoves {
  const tables = tablesIn(asked.picture.farm.units, asked.tables);
  const own = { ...asked, tables };
  const as = outcomeOf(asked.plan);
  const inputs = [
    ...plannedSpreads(own).flatMap((spread) => moved(spread, plannedEnds(spread, own))),
    ...[...scaledSpreads(own), ...feedPriceSpread(own)].flatMap((spread) =>
      moved(spread, scaledEnds(spread, as)),
    ),
  ].sort((a, b) => widthOf(b, as) - widthOf(a, as));
  return {
    inputs,
    bill: joined(
      as.bill,
      inputs.flatMap(({ low, high }) => [[low.bill, high.bill] as const]),
    ),
    ...(as.each
      ? {
          each: joined(
            as.each,
            inputs.flatMap(({ low, high }) =>
              low.each && high.each ? [[low.each, high.each] as const] : [],
            ),
          ),
        }
      : {}),
  };
}

interface End {
  readonly input: QuantityInput;
  readonly billMinor: number;
  readonly each: NumberQuantity | undefined;
  readonly eachMinor: number | undefined;
}

function outcomeOf({ bill }: BatchPlan): Outcome {
  const each = bill.perKgDressed ?? bill.perDozen;
  return { bill: bill.total, ...(each ? { each } : {}) };
}

/** An end that nothing can be planned with is left out. */
const plannedEnds = ({ ends }: PlannedSpread, { tables, batch }: Asked): readonly End[] =>
  ends.flatMap(({ input, picture }) => {
    try {
      const { bill, each } = outcomeOf(planBatch(picture(), tables, batch.id));
      return [{ input, billMinor: bill.value, each, eachMinor: each?.value }];
    } catch (error) {
      if (error instanceof FieldError) return [];
      throw error;
    }
  });

const scaledEnds = ({ ends }: ScaledSpread, { bill, each }: Outcome): readonly End[] =>
  ends.map(({ input, addsMinor, yieldFactor }) => ({
    input,
    billMinor: bill.value + addsMinor,
    each,
    eachMinor:
      each && (each.value * ((bill.value + addsMinor) / Math.max(1, bill.value))) / yieldFactor,
  }));

function moved(
  { what, because, rows }: PlannedSpread | ScaledSpread,
  ends: readonly End[],
): MovedBill[] {
  if (ends.length === 0) return [];
  const outcome = (label: string, end: End): Outcome => ({
    bill: quantity(
      `${what}: the bill ${label}`,
      end.billMinor,
      'money',
      compareFormulas.moved,
      [end.input],
      { rows },
    ),
    ...(end.each && end.eachMinor !== undefined
      ? {
          each: quantity(
            `${what}: ${end.each.unit === 'moneyPerKg' ? 'dressed' : 'a dozen'} ${label}`,
            end.eachMinor,
            end.each.unit,
            compareFormulas.moved,
            [end.input],
            { rows },
          ),
        }
      : {}),
  });
  const by = (end: End): number => end.eachMinor ?? end.billMinor;
  const sorted = [...ends].sort((a, b) => by(a) - by(b));
  return [
    {
      what,
      because,
      low: outcome('at best', sorted[0]!),
      high: outcome('at worst', sorted.at(-1)!),
    },
  ];
}

/** How far an input moves what a kilogram or a dozen costs, else the bill; as it is included. */
function widthOf({ low, high }: MovedBill, as: Outcome): number {
  const [a, b, c] = as.each
    ? [low.each?.value ?? as.each.value, high.each?.value ?? as.each.value, as.each.value]
    : [low.bill.value, high.bill.value, as.bill.value];
  return (Math.max(a, b, c) - Math.min(a, b, c)) / Math.max(1, c);
}

/**
 * The range of all inputs together: they are taken to have nothing to do with each other, so that
 * each side is the root of the sum of the squares of what each does to it.
 */
function joined(
  as: NumberQuantity,
  ends: readonly (readonly [NumberQuantity, NumberQuantity])[],
): NumberQuantity {
  const side = (sign: 1 | -1): number =>
    Math.sqrt(
      ends.reduce((sum, [low, high]) => {
        const off = Math.max(0, ...[low, high].map(({ value }) => sign * (value - as.value)));
        return sum + off * off;
      }, 0),
    );
  return quantity(
    as.label,
    as.value,
    as.unit,
    compareFormulas.joined,
    [from(as, 'C'), ...ends.flatMap((pair) => pair.map((end) => from(end)))],
    {
      spread: {
        low: as.value - side(-1),
        high: as.value + side(1),
        because: 'sources leave its inputs open, each by itself',
      },
    },
  );
}
