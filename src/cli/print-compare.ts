import type { BatchChoice } from '../../shared/farm/batch-choice.js';
import type { Farm } from '../../shared/farm/farm.js';
import type { ChoiceColumn, Comparison } from '../../shared/plan/compare/compare-choices.js';
import type { Quantity } from '../../shared/explain/quantity.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { drawTable, paragraph, section, tablesFor } from './text.js';

/** What is no number goes on as it was typed: the check of the choices names it, with its bounds. */
const numberOf = (word: string): number => {
  const typed = Number(word);
  return Number.isNaN(typed) ? (word as unknown as number) : typed;
};

/** What can be varied, by the word for it. */
const VARIED: Readonly<Record<string, (word: string) => BatchChoice>> = {
  birds: (word) => ({ wantedBirds: numberOf(word) }),
  breed: (word) => ({ strainId: word }),
  feeds: (word) => ({ feedProgramId: word }),
  arrival: (word) => ({ arrivalDate: word }),
  age: (word) => ({ leaveAgeDays: numberOf(word) }),
  mix: (word) => ({ ownMixPerBag: word }),
  two: (word) => ({ twoWeeksApart: numberOf(word) }),
};

/** Choices as they are typed: what is varied, then one word a column. */
export function choicesOf([what = '', ...words]: readonly string[]): readonly BatchChoice[] {
  const choice = VARIED[what];
  if (choice && 0 < words.length) return words.map(choice);
  const allowed = Object.keys(VARIED);
  const fix = 'Say what to vary, then one value a column: compare birds 25 50 100.';
  throw new FieldError([
    choice
      ? { field: `compare.${what}`, code: 'missing', given: undefined, fix }
      : { field: 'compare', code: 'not-allowed', given: what, allowed, fix },
  ]);
}

/** Ways to raise a batch side by side: the differences in words, then the numbers. */
export function printComparison(
  { columns, isWithoutTold }: Comparison,
  farm: Farm,
  today: string,
): string {
  const { show } = tablesFor({ ...farm, today });
  const row = (label: string, of: (column: ChoiceColumn) => Quantity | undefined): string[] => [
    label,
    ...columns.map((column) => show(of(column))),
  ];
  const hasMeat = columns[0]?.yields?.unit === 'kg';
  return [
    ...columns
      .slice(1)
      .map(({ label, said, leftOut = [], notPlanned }) =>
        paragraph(`${label}: ${notPlanned ?? `${[...said, ...leftOut].join(', ')}.`}`),
      ),
    ...(isWithoutTold ? ['What was told of the batch so far is in none of them.'] : []),
    section(
      'Side by side',
      drawTable(
        ['', ...columns.map(({ label }) => label)],
        [
          row(hasMeat ? 'costs, dressed' : 'costs, a dozen', ({ each }) => each),
          row('costs in all', ({ costs }) => costs),
          row(hasMeat ? 'meat' : 'eggs', ({ yields }) => yields),
          row('birds', ({ birds }) => birds),
          row('work', ({ hours }) => hours),
          row('feed', ({ feed }) => feed),
          row('freezer at once', ({ freezer }) => freezer),
          row('birds lost', ({ lost }) => lost),
          row('as many as you want', ({ enough }) => enough),
          row('nights too cold of the first week out', ({ coldNights }) => coldNights),
          ['does not fit', ...columns.map(({ doesNotFit }) => doesNotFit.join('\n') || '–')],
        ],
      ),
    ),
  ].join('\n');
}
