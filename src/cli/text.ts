import Table from 'cli-table3';
import { explain } from '../../shared/formulas/explanation.js';
import { isQuantity } from '../../shared/explain/quantities-in.js';
import type { Quantity } from '../../shared/explain/quantity.js';
import type { PlanIssue } from '../../shared/problems/plan-issue.js';
import type { Tables } from '../../shared/tables/tables.js';
import { formatValue, type Reader } from '../../shared/units/format.js';

export type Cell = string | number | Quantity | undefined;
export type Fact = Quantity | [Quantity, said: string];

/** Numbers whose label or formula holds a text, opened to their formula, inputs and sources. */
export function explanationsText(
  quantities: readonly Quantity[],
  tables: Pick<Tables, 'sources'>,
  reader: Reader,
  search: string,
): string {
  const wanted = search.toLowerCase();
  const found = quantities.filter(
    (q) => q.label.toLowerCase().includes(wanted) || q.formula.includes(wanted),
  );
  if (found.length === 0) return `No number of this plan has "${search}" in its label.`;
  return found
    .map((q) => {
      const e = explain(q, tables, reader);
      return [
        `${e.label}: ${e.value}  [${e.mark}]`,
        `  ${e.formulaTitle}: ${e.words}`,
        `  ${e.symbols}`,
        ...e.inputs.map(
          (i) =>
            `    ${i.symbol ? `${i.symbol} = ` : ''}${i.value}  (${i.label})${i.mark ? ` [${i.mark}]` : ''}`,
        ),
        ...(e.spread ? [`  Range: ${e.spread}`] : []),
        ...(e.outside ? [`  Outside the table's range: ${e.outside}`] : []),
        `  What moves it most: ${e.movedBy}`,
        `  Known better: ${e.knownBetter}`,
        ...e.sources.map(
          (s) => `  Source: ${s.publisher}, ${s.title}${s.year ? `, ${s.year}` : ''} [${s.mark}]`,
        ),
      ].join('\n');
    })
    .join('\n\n');
}

/** Tables of a farm's numbers, in its units and currency. */
export function tablesFor(reader: Reader) {
  const show = (cell: Cell): string => {
    if (cell === undefined) return '–';
    if (typeof cell === 'object' && isQuantity(cell))
      return formatValue(cell.value, cell.unit, reader);
    return String(cell);
  };
  const table = (head: string[], rows: Cell[][]): string =>
    drawTable(
      head,
      rows.map((row) => row.map(show)),
    );
  /** A line a number: what it is, its value or how that is said, its range, and its mark. */
  const facts = (...quantities: (Fact | undefined)[]): string =>
    table(
      ['', '', 'range', 'basis'],
      quantities.flatMap((fact) => {
        if (!fact) return [];
        const [q, said] = Array.isArray(fact) ? fact : [fact, fact];
        return [[q.label, said, rangeText(q, reader), q.mark]];
      }),
    );
  return { table, facts, show };
}

export function rangeText({ spread, unit, outside }: Quantity, reader: Reader): string {
  if (outside) return 'outside table';
  if (!spread || spread.low === spread.high) return '';
  return `${formatValue(spread.low, unit, reader)} – ${formatValue(spread.high, unit, reader)}`;
}

const LEVEL_WORDS = { stop: 'STOP', act: 'Act ', note: 'Note' } as const;
export const issuesText = ({ issues }: { readonly issues: readonly PlanIssue[] }): string =>
  issues
    .map((i) =>
      paragraph(`${LEVEL_WORDS[i.level]}  ${i.text}${i.mark ? ` [${i.mark}]` : ''}`, '      '),
    )
    .join('\n');

export const cautionsText = (
  keys: readonly string[],
  { cautions }: Pick<Tables, 'cautions'>,
): string =>
  keys.map((key) => paragraph(`${cautions[key]!.title}. ${cautions[key]!.text}`)).join('\n');

export const title = (text: string): string => `${text}\n${'='.repeat(text.length)}`;
export const section = (heading: string, body: string): string =>
  `\n${paragraph(heading)}\n${body}`;

/** Columns of the terminal that printed lines keep to. */
const LINE_WIDTH = 100;

/** A text broken between words, with what stands before every line but the first. */
export function paragraph(text: string, before = ''): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line.trim() !== '' && LINE_WIDTH < line.length + 1 + word.length) {
      lines.push(line);
      line = before + word;
    } else {
      line = lines.length === 0 && line === '' ? word : `${line} ${word}`;
    }
  }
  return [...lines, line].join('\n');
}

export function drawTable(head: string[], rows: string[][]): string {
  const table = new Table({
    head,
    style: { head: [], border: [], compact: true },
    wordWrap: true,
    colWidths: columnWidths([head, ...rows]),
  });
  table.push(...rows);
  return table.toString();
}

/** A blank on both sides of a cell. */
const PADDING = 2;

/** A date with its year: cells up to this long are not broken while there are longer ones. */
const SHORT_CELL = 'Wed, Apr 21, 2027'.length;
const NARROWEST_TEXT = 14;

/** As wide as the content, or with the widest columns narrowed until the table fits the line. */
function columnWidths(rows: readonly string[][]): number[] {
  const widths = rows[0]!.map(
    (_, k) =>
      PADDING + Math.max(...rows.flatMap((row) => row[k]!.split('\n').map((line) => line.length))),
  );
  const room = LINE_WIDTH - widths.length - 1;
  const isText = widths.map((width) => PADDING + SHORT_CELL < width);
  while (room < widths.reduce((sum, width) => sum + width, 0)) {
    const texts = widths.map((width, k) => (isText[k] && NARROWEST_TEXT < width ? width : 0));
    const narrowed = texts.some((width) => 0 < width) ? texts : widths;
    widths[narrowed.indexOf(Math.max(...narrowed))]! -= 1;
  }
  return widths;
}
