import { BOUNDS } from '../../shared/farm/bounds.js';
import type { FieldProblem } from '../../shared/problems/field-problem.js';

/** A column whose name carries its unit, and what makes SI of its numbers. */
export interface Column {
  readonly name: string;
  readonly toSi: (value: number) => number;
}

/** What a cell holds, or what is wrong with it. */
export type Cell<T> = { readonly value: T } | { readonly problem: FieldProblem };

/**
 * mm. The most rain ever measured in 24 hours, 7 to 8 January 1966 at Foc-Foc, La Réunion (WMO,
 * World Weather and Climate Extremes Archive).
 */
export const MOST_RAIN_MM = 1825;

/** A temperature, °C. */
export function temperatureIn(text: string, { name, toSi }: Column, at: string): Cell<number> {
  const field = `${at}.${name}`;
  const given = numberIn(text);
  if (!Number.isFinite(given)) {
    return {
      problem: {
        field,
        code: 'not-a-number',
        given: text,
        fix: 'Give a number, or remove the row of a day without a reading.',
      },
    };
  }
  const { min, max } = BOUNDS.airC;
  const value = toSi(given);
  if (min <= value && value <= max) return { value };
  return {
    problem: {
      field,
      code: 'out-of-bounds',
      given,
      min: `${min} °C`,
      max: `${max} °C`,
      fix: 'Check the unit in the column’s name.',
    },
  };
}

/** Rain, mm; null where none was measured. A trace (T, as weather services write it) counts as 0. */
export function rainIn(text: string, { name, toSi }: Column, at: string): Cell<number | null> {
  const field = `${at}.${name}`;
  if (text === '') return { value: null };
  if (/^t(race)?$/i.test(text)) return { value: 0 };
  const given = numberIn(text);
  if (!Number.isFinite(given)) {
    return {
      problem: {
        field,
        code: 'not-a-number',
        given: text,
        fix: 'Give a number, T for a trace, or nothing where rain was not measured.',
      },
    };
  }
  const value = toSi(given);
  if (0 <= value && value <= MOST_RAIN_MM) return { value };
  return {
    problem: {
      field,
      code: 'out-of-bounds',
      given,
      min: '0 mm',
      max: `${MOST_RAIN_MM} mm`,
      fix: 'No day on Earth had more rain, and none less than nothing. Leave the cell empty where rain was not measured, and check the unit in the column’s name.',
    },
  };
}

/** A number with a point or, with one or two digits after it, a comma; otherwise NaN. */
function numberIn(text: string): number {
  const plain = /^[+-]?\d+,\d{1,2}$/.test(text) ? text.replace(',', '.') : text;
  return plain === '' ? Number.NaN : Number(plain);
}
