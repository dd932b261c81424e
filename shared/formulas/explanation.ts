import type { Tables } from '../tables/tables.js';
import type { Source } from '../tables/source.js';
import { formatInput, formatValue, type Reader } from '../units/format.js';
import { inOwnUnits } from '../units/own-units.js';
import { MARK_MEANING } from '../explain/formula.js';
import { FORMULAS } from './formulas.js';
import {
  knownBetterUnmoved,
  NOTHING_MOVES,
  openThingOf,
  sayMoved,
} from '../plan/open/open-things.js';
import type { Quantity } from '../explain/quantity.js';

/** A quantity opened up: what a person reads, whether on the page, in the API or in the terminal. */
export interface Explanation {
  readonly label: string;
  readonly value: string;
  readonly formulaTitle: string;
  readonly words: string;
  readonly symbols: string;
  readonly inputs: readonly {
    readonly label: string;
    readonly symbol?: string;
    readonly value: string;
    /** How well it is supported, where that is known. */
    readonly mark?: string;
  }[];
  readonly mark: string;
  readonly markMeaning: string;
  readonly spread?: string;
  readonly outside?: string;
  /** What moves it most, as far as its range and its formula say. */
  readonly movedBy: string;
  /** When it is known better, or that it never is. */
  readonly knownBetter: string;
  readonly sources: readonly (Source & { readonly id: string })[];
}

export function explain(
  quantity: Quantity,
  tables: Pick<Tables, 'sources'>,
  reader: Reader,
): Explanation {
  const formula = FORMULAS.get(quantity.formula);
  if (!formula) throw new Error(`No formula "${quantity.formula}".`);
  const show = (value: number) => formatValue(value, quantity.unit, reader);
  const own = (text: string) => inOwnUnits(text, reader.units);
  const { spread, outside } = quantity;
  const open = openThingOf(quantity);
  return {
    label: own(quantity.label),
    value: formatValue(quantity.value, quantity.unit, reader),
    formulaTitle: own(formula.title),
    words: own(formula.words),
    symbols: formula.symbols,
    inputs: quantity.inputs.map(({ label, symbol, value, unit, mark }) => ({
      label: own(label),
      ...(symbol === undefined ? {} : { symbol }),
      value: own(formatInput(value, unit, reader)),
      ...(mark === undefined ? {} : { mark }),
    })),
    mark: quantity.mark,
    markMeaning: MARK_MEANING[quantity.mark],
    ...(spread
      ? { spread: `${show(spread.low)} to ${show(spread.high)}: ${own(spread.because)}` }
      : {}),
    ...(outside === undefined ? {} : { outside: own(outside) }),
    movedBy: open ? sayMoved(open, reader) : NOTHING_MOVES,
    knownBetter: open?.knownBetter ?? knownBetterUnmoved(quantity.formula),
    sources: [...new Set(quantity.sources)].flatMap((id) => {
      const source = tables.sources[id];
      return source ? [{ id, ...source }] : [];
    }),
  };
}
