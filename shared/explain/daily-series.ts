import type { Unit } from '../units/unit.js';
import { weakestMark, type Formula, type Mark } from './formula.js';
import { input, round6, type Quantity, type QuantityInput } from './quantity.js';

/** An input that changes from day to day: the value of another series on the same day. */
export interface SeriesInput {
  readonly label: string;
  readonly symbol?: string;
  readonly series: string;
}

/** One value a day from arrival on, sharing one formula. Any day of it can explain itself. */
export interface DailySeries {
  readonly id: string;
  readonly label: string;
  readonly unit: Unit;
  readonly formula: string;
  readonly values: readonly number[];
  readonly inputs: readonly (QuantityInput | SeriesInput)[];
  readonly sources: readonly string[];
  readonly mark: Mark;
  /** Set when the series runs past the range of its source: from which day, and what to say. */
  readonly outside?: { readonly fromDay: number; readonly text: string };
}

interface SeriesOptions {
  readonly sources?: readonly string[];
  readonly mark?: Mark;
  readonly outside?: DailySeries['outside'] | undefined;
}

export function dailySeries(
  id: string,
  label: string,
  unit: Unit,
  formula: Formula,
  values: ArrayLike<number>,
  inputs: readonly (QuantityInput | SeriesInput)[],
  options: SeriesOptions = {},
): DailySeries {
  const rounded = new Array<number>(values.length);
  for (let i = 0; i < values.length; i++) rounded[i] = round5(values[i] as number);
  return {
    id,
    label,
    unit,
    formula: formula.id,
    values: rounded,
    inputs,
    sources: options.sources ?? formula.sources,
    mark: options.mark ?? formula.mark,
    ...(options.outside ? { outside: options.outside } : {}),
  };
}

/** One day of a series as a quantity with that day's inputs filled in. */
export function quantityOfDay(
  all: readonly DailySeries[],
  seriesId: string,
  dayIndex: number,
): Quantity | undefined {
  const series = all.find((s) => s.id === seriesId);
  const value = series?.values[dayIndex];
  if (!series || value === undefined) return undefined;
  const inputs = series.inputs.flatMap((each): QuantityInput[] => {
    if (!('series' in each)) return [each];
    const other = all.find((s) => s.id === each.series);
    const otherValue = other?.values[dayIndex];
    return other && otherValue !== undefined
      ? [{ ...input(each.label, otherValue, other.unit, each.symbol), mark: other.mark }]
      : [];
  });
  const { label, unit, formula, sources, outside } = series;
  const mark = weakestMark(series.mark, ...inputs.flatMap((each) => each.mark ?? []));
  const day = { label, value: round6(value), unit, formula, inputs, sources, mark };
  return outside && outside.fromDay <= dayIndex ? { ...day, outside: outside.text } : day;
}

/** Daily values are drawn and listed by the hundred: five decimals are plenty and cheap to make. */
const round5 = (value: number): number => Math.round(value * 1e5) / 1e5;
