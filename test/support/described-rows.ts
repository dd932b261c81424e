import fc from 'fast-check';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { Field, RowDescription, RowRule, WordForm } from '../../shared/farm/field.js';

type Row = Record<string, unknown>;

const WORDS: Record<WordForm['name'], fc.Arbitrary<string>> = {
  // Days close together, so that one often comes after another as the rules ask.
  date: fc.integer({ min: 0, max: 20 }).map((days) => addDays('2027-04-21', days)),
  instant: fc.integer({ min: 0, max: 4e12 }).map((ms) => new Date(ms).toISOString()),
  'month-day': fc.constantFrom('01-01', '02-29', '12-31'),
  id: fc.stringMatching(/^[A-Za-z0-9-]{1,64}$/),
  'work-key': fc.stringMatching(/^[A-Za-z0-9/.-]{1,200}$/),
  price: fc.stringMatching(/^\d{1,9}(\.\d{1,6})?$/),
  'time-zone': fc.constantFrom('America/New_York', 'Europe/Berlin', 'UTC'),
  country: fc.constant('US'),
  region: fc.constantFrom('VT', 'NY'),
  currency: fc.constantFrom('USD', 'EUR', 'JPY'),
  'of-tables': fc.constant('fast-meat'),
};

/** Names of values in a record; the library that reads bodies drops those of an object's own. */
const PHASE = WORDS.id.filter((name) => !(name in {}));

/** A value as a field is described. */
export function valueOf(field: Field): fc.Arbitrary<unknown> {
  switch (field.kind) {
    case 'text':
      return fc.stringMatching(new RegExp(`^[A-Za-zäß鶏][A-Za-z ]{0,${field.most - 1}}$`));
    case 'number': {
      const { min, max, integer } = field.bounds;
      const inside = integer ? fc.integer({ min, max }) : fc.double({ min, max, noNaN: true });
      return fc.oneof(inside, fc.constantFrom(min, max));
    }
    case 'choice':
      return fc.constantFrom(...field.allowed);
    case 'yes-no':
      return fc.boolean();
    case 'word':
      return WORDS[field.word.name];
    case 'list':
      return fc.array(valueOf(field.of), {
        minLength: field.least,
        maxLength: Math.min(field.most, field.least + 3),
      });
    case 'record':
      return fc.dictionary(PHASE, valueOf(field.of), { maxKeys: 3 });
    case 'outline':
      return fc.array(
        fc.tuple(
          fc.double({ min: -180, max: 180, noNaN: true }),
          fc.double({ min: -90, max: 90, noNaN: true }),
        ),
        { maxLength: 4 },
      );
    case 'row':
      return rowOf(field.row);
    case 'one-of':
      return fc.oneof(...Object.values(field.rows).map(rowOf));
  }
}

/** A row as it is described, its rules kept. */
export const rowOf = (described: RowDescription): fc.Arbitrary<Row> =>
  fc
    .record(
      Object.fromEntries(
        Object.entries(described.fields).map(([name, field]) => [name, valueOf(field)]),
      ),
      {
        requiredKeys: Object.keys(described.fields).filter(
          (name) => !described.fields[name]!.isOptional,
        ),
      },
    )
    .map(sortedMonths)
    .filter((row) =>
      described.rules.every((rule) => (rule as RowRule<unknown>).find(row, '').length === 0),
    );

/** Twelve lows below twelve highs hardly ever come by chance. */
function sortedMonths(row: Row): Row {
  const { monthlyMinC: a, monthlyMaxC: b } = row as {
    monthlyMinC?: number[];
    monthlyMaxC?: number[];
  };
  return a && b
    ? {
        ...row,
        monthlyMinC: a.map((low, i) => Math.min(low, b[i]!)),
        monthlyMaxC: b.map((high, i) => Math.max(high, a[i]!)),
      }
    : row;
}

/** A value in a row, by its path, and what it may not be. */
export interface Spoiling {
  readonly path: string;
  readonly value: unknown;
}

/** Ways to spoil a row in one place each, none of them by a rule between fields. */
export const spoilingsOf = (described: RowDescription, row: Row, at = ''): Spoiling[] =>
  Object.entries(described.fields).flatMap(([name, field]) => [
    ...(field.isOptional ? [] : [{ path: `${at}${name}`, value: undefined }]),
    ...(row[name] === undefined ? [] : spoilings(field, row[name], `${at}${name}`)),
  ]);

/** Ways to spoil one value or something within it. */
export function spoilings(field: Field, value: unknown, path: string): Spoiling[] {
  const here = [...wrongFor(field), null].map((wrong) => ({ path, value: wrong }));
  switch (field.kind) {
    case 'row':
      return [...here, ...spoilingsOf(field.row, value as Row, `${path}.`)];
    case 'list':
      return [
        ...here,
        ...(value as unknown[]).flatMap((each, i) => spoilings(field.of, each, `${path}.${i}`)),
      ];
    case 'record':
      return [
        ...here,
        ...Object.entries(value as Row).flatMap(([name, each]) =>
          spoilings(field.of, each, `${path}.${name}`),
        ),
      ];
    default:
      return here;
  }
}

function wrongFor(field: Field): unknown[] {
  switch (field.kind) {
    case 'text':
      return ['', 'x'.repeat(field.most + 1), 7, ['A']];
    case 'number': {
      const { min, max, integer } = field.bounds;
      return [min - 1, max + 1, '3', true, [3], ...(integer ? [min + 0.5] : [])];
    }
    case 'choice':
      return ['none of these', 3];
    case 'yes-no':
      return ['true', 1];
    case 'word':
      return [
        ...(field.word.holds(7) ? [] : [7]),
        true,
        ...(field.word.schema.pattern || field.word.schema.format ? ['!'] : []),
      ];
    case 'list':
      return ['text', {}, ...(field.least === 0 ? [] : [[]])];
    case 'record':
      return ['text', ['text']];
    case 'outline':
      return ['text', { 0: 1 }];
    case 'row':
    case 'one-of':
      return ['text', 3, []];
  }
}

/** A copy of a row in which one value is another; undefined takes it out. */
export function spoiled(row: Row, { path, value }: Spoiling): Row {
  const copy = structuredClone(row);
  const names = path.split('.');
  let parent = copy;
  for (;;) {
    const name = firstName(parent, names);
    names.splice(0, name.split('.').length);
    if (0 < names.length) {
      parent = parent[name] as Row;
      continue;
    }
    if (value === undefined) delete parent[name];
    else parent[name] = value;
    return copy;
  }
}

/** The first name of a path: names of a record may hold dots themselves. */
function firstName(row: Row, names: readonly string[]): string {
  const starts = names.map((_, i) => names.slice(0, i + 1).join('.'));
  return starts.find((name) => Object.hasOwn(row, name)) ?? starts[0]!;
}
