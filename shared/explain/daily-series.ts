import type { Unit } from '../units/unit.js';
import { isWeaker, weakestMark, type Formula, type Mark, type Sourced } from './formula.js';
import {
  withRowSources,
  input,
  round6,
  weakestOf,
  type Quantity,
  type QuantityInput,
} from './quantity.js';

/** An input that changes from day to day: the value of another series on the same day. */
export interface SeriesInput {
  readonly label: string;
  readonly symbol?: string;
  readonly series: string;
  /** That of the other series, which the day finds by itself. */
  readonly mark?: never;
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
  /** Rows of tables that the values rest on beside their inputs. */
  readonly rows?: readonly Sourced[];
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
  const { rows = [], mark = formula.mark } = options;
  const ofRows = weakestOf(isWeaker(mark, formula.mark) ? mark : formula.mark, rows);
  return {
    id,
    label,
    unit,
    formula: formula.id,
    values: rounded,
    inputs,
    sources: withRowSources(options.sources ?? formula.sources, rows, inputs),
    mark: weakestOf(ofRows, inputs),
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
      ? [{ ...input(each.label, otherValue, other.unit, each.symbol), mark: markOf(all, other) }]
      : [];
  });
  const { label, unit, formula, sources, outside } = series;
  const mark = weakestMark(series.mark, ...inputs.flatMap((each) => each.mark ?? []));
  const day = { label, value: round6(value), unit, formula, inputs, sources, mark };
  return outside && outside.fromDay <= dayIndex ? { ...day, outside: outside.text } : day;
}

/** Mark of a series, the series that it is fed with included. */
function markOf(all: readonly DailySeries[], { mark, inputs }: DailySeries): Mark {
  const fed = inputs.flatMap((each) =>
    'series' in each ? all.filter(({ id }) => id === each.series) : [],
  );
  return weakestMark(mark, ...fed.map((series) => markOf(all, series)));
}

/** Daily values are drawn and listed by the hundred: five decimals are plenty and cheap to make. */
const round5 = (value: number): number => Math.round(value * 1e5) / 1e5;
