import type { Quantity } from '../../../../shared/explain/quantity.js';
import { formatValue, type Reader } from '../../../../shared/units/format.js';

/** A number as it is read at arm's length: its figures, and the unit to be set small. */
export interface BriefNumber {
  readonly figures: string;
  readonly unit: string;
}

/** Whole from 10 on, one decimal below: a feed scoop knows no more. */
export function briefNumber({ value, unit }: Quantity, reader: Reader): BriefNumber {
  const text = formatValue(value, unit, reader);
  const [, figures = text, rest = ''] = /^(-?[\d,.]+)\s*(.*)$/.exec(text) ?? [];
  const number = Number(figures.replaceAll(',', ''));
  if (!Number.isFinite(number) || !figures.includes('.')) return { figures, unit: rest };
  const rounded = 10 <= Math.abs(number) ? Math.round(number) : Math.round(10 * number) / 10;
  return { figures: String(rounded), unit: rest };
}
