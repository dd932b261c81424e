import { MONTHS } from '../../../../shared/farm/field.js';
import { readTyped } from '../../../../shared/units/typed.js';
import type { Unit, UnitSystem } from '../../../../shared/units/unit.js';

/** A column of the climate table, as a paste fills it. */
export interface PastedColumn {
  readonly unit: Unit;
  readonly values: readonly (number | undefined)[];
}

/**
 * What a paste of several cells makes of the columns from the one it was pasted into: lines go down
 * the months and cells to the right; twelve cells in one line are the twelve months. Lines of
 * words, such as a head, and the names of months before a line are left out. Undefined for a paste of one cell, which its box takes.
 *
 * @param month the box it was pasted into, January is 0
 */
export function pastedMonths(
  text: string,
  month: number,
  { columns, units }: { columns: readonly PastedColumn[]; units: UnitSystem },
): (number | undefined)[][] | undefined {
  const lines = text
    .trim()
    .split(/\r?\n/)
    .map((line) => line.split(/\t|;| {2,}/));
  const isOneLine = lines.length === 1 && lines[0]!.length === MONTHS.length;
  const cells = isOneLine ? lines[0]!.map((each) => [each]) : lines;
  if (cells.flat().length < 2) return undefined;
  const rows = cells
    .filter((row) => row.some((cell) => isNumber(cell, units)))
    .map((row) => row.slice(row.findIndex((cell) => cell.trim() === '' || isNumber(cell, units))));
  return columns.map(({ unit, values }, column) => {
    const filled = MONTHS.map((_, k) => values[k]);
    rows.forEach((row, k) => {
      const read = readTyped(row[column] ?? '', { unit, system: units });
      if (read.is === 'value' && month + k < filled.length) filled[month + k] = read.stored;
    });
    return filled;
  });
}

const isNumber = (cell: string, system: UnitSystem): boolean =>
  readTyped(cell, { unit: 'ratio', system }).is === 'value';
