import type { NumberQuantity } from '../../explain/quantity.js';
import { formatAbout, formatValue, type Reader } from '../../units/format.js';
import type { ColumnNumbers } from './column-numbers.js';

/** Shares by which a number must differ to be worth a word. */
const WORTH = 0.01;

/** Money to the cent; of all else nobody knows a difference to its last digit. */
const difference = (off: number, unit: NumberQuantity['unit'], reader: Reader): string =>
  unit.startsWith('money')
    ? formatValue(off, unit, reader)
    : `about ${formatAbout(off, unit, reader)}`;

/** How a choice differs from the first column, the cost before all else. */
export function saidBeside(
  first: ColumnNumbers,
  other: ColumnNumbers,
  reader: Reader,
): readonly string[] {
  const isMeat = first.yields.unit === 'kg';
  const by = (
    a: NumberQuantity | undefined,
    b: NumberQuantity | undefined,
    words: (much: string, isMore: boolean) => string,
  ): string[] => {
    if (!a || !b) return [];
    const off = b.value - a.value;
    if (Math.abs(off) <= WORTH * Math.max(Math.abs(a.value), 1e-9)) return [];
    return [words(difference(Math.abs(off), a.unit, reader), 0 < off)];
  };
  const lines = [
    ...by(first.each, other.each, (much, isMore) =>
      isMeat
        ? `${much} ${isMore ? 'dearer' : 'cheaper'}, dressed`
        : `${much} a dozen ${isMore ? 'dearer' : 'cheaper'}`,
    ),
    ...by(first.yields, other.yields, (much, isMore) =>
      isMeat ? `${much} ${isMore ? 'more' : 'less'} meat` : `${much} ${isMore ? 'more' : 'fewer'}`,
    ),
    ...(first.each && other.each
      ? by(first.costs, other.costs, (much, isMore) => `${much} ${isMore ? 'more' : 'less'} in all`)
      : []),
    ...by(first.hours, other.hours, (much, isMore) => `${much} ${isMore ? 'more' : 'less'} work`),
    ...by(
      first.freezer,
      other.freezer,
      (much, isMore) => `${much} ${isMore ? 'more' : 'less'} freezer at once`,
    ),
    ...(first.coldNights &&
    other.coldNights &&
    0.5 <= Math.abs(other.coldNights.value - first.coldNights.value)
      ? [
          `nights ${other.coldNights.value < first.coldNights.value ? 'kinder' : 'colder'} when they go out`,
        ]
      : []),
  ];
  return lines.length === 0 ? ['much the same'] : lines;
}
