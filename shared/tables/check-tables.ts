import { problemsOfField } from '../farm/check-row.js';
import type { Field } from '../farm/field.js';
import type { FieldProblem } from '../problems/field-problem.js';
import { TABLE_FIELDS } from './table-descriptions.js';
import { TABLE_FILES, type Tables } from './tables.js';

/**
 * What is wrong in the published tables: a field that is missing, unknown or out of its bounds, a
 * source or row that is named and not there, two rows of one id, a low above its high, points that
 * do not ascend. Each is named by its file and the ids of its rows.
 */
export function problemsOfTables(tables: Readonly<Record<string, unknown>>): FieldProblem[] {
  const names = Object.keys(TABLE_FIELDS) as (keyof Tables)[];
  const shapes = names.flatMap((name) => {
    const found = problemsOfField(TABLE_FIELDS[name], tables[name], '');
    return found.map((problem) => inFile(name, tables[name], problem));
  });
  // What a broken table refers to cannot be looked up.
  if (0 < shapes.length) return shapes;
  const idsOf = idsIn(tables);
  return names.flatMap((name) => {
    const found: FieldProblem[] = [];
    visit({ field: TABLE_FIELDS[name], value: tables[name], path: '' }, (part) => {
      found.push(
        ...unknownRow(part, idsOf),
        ...sameIds(part),
        ...lowAboveHigh(part),
        ...notAscending(part),
      );
    });
    return found.map((problem) => inFile(name, tables[name], problem));
  });
}

interface Part {
  readonly field: Field;
  readonly value: unknown;
  readonly path: string;
}

/** Looks at a value that is as described, and at everything within it that hangs on other values. */
function visit(part: Part, look: (part: Part) => void): void {
  const { field, value, path } = part;
  look(part);
  if (field.kind !== 'list' && field.kind !== 'record' && field.kind !== 'row') return;
  // Asked before anything is gone through: most of what tables hold stands for itself.
  if (field.kind !== 'row' && !hangsOnOthers(field.of)) return;
  for (const [name, each] of Object.entries(value as Readonly<Record<string, unknown>>)) {
    if (each === undefined) continue;
    const of = field.kind === 'row' ? field.row.fields[name]! : field.of;
    if (hangsOnOthers(of)) visit({ field: of, value: each, path: `${path}.${name}` }, look);
  }
}

/** Whether a value of this kind may contradict another one, or hold values that may. */
function hangsOnOthers(field: Field): boolean {
  switch (field.kind) {
    case 'word':
      return field.word.refersTo !== undefined;
    case 'list':
      return field.of.kind === 'row' || hangsOnOthers(field.of);
    case 'record':
      return hangsOnOthers(field.of);
    case 'row': {
      const { fields } = field.row;
      return (
        PAIRS.some(([, high]) => Object.hasOwn(fields, high)) ||
        Object.values(fields).some(hangsOnOthers)
      );
    }
    default:
      return false;
  }
}

/** Ids of the rows of a table, or of a list within one, by a path such as `processing.dressing`. */
const idsIn = (tables: Readonly<Record<string, unknown>>) => {
  const known = new Map<string, ReadonlySet<string>>();
  return (path: string): ReadonlySet<string> => {
    let ids = known.get(path);
    if (!ids) {
      const rows = path
        .split('.')
        .reduce<unknown>((inner, name) => (inner as Record<string, unknown>)[name], tables);
      ids = new Set(
        Array.isArray(rows)
          ? rows.map((row: { id: string }) => row.id)
          : Object.keys(rows as object),
      );
      known.set(path, ids);
    }
    return ids;
  };
};

function unknownRow(
  { field, value, path }: Part,
  idsOf: (path: string) => ReadonlySet<string>,
): FieldProblem[] {
  const table = field.kind === 'word' ? field.word.refersTo : undefined;
  if (table === undefined || idsOf(table).has(String(value))) return [];
  const allowed = [...idsOf(table)].slice(0, 20);
  const fix = `Name a row of ${table}, or add it there.`;
  return [{ field: path, code: 'not-allowed', given: value, allowed, fix }];
}

function sameIds({ field, value, path }: Part): FieldProblem[] {
  if (field.kind !== 'list' || field.of.kind !== 'row') return [];
  const ids = (value as { id?: string }[]).map((row) => row.id);
  return ids.flatMap((id, i) =>
    id === undefined || ids.indexOf(id) === i
      ? []
      : [{ field: `${path}.${i}.id`, code: 'conflict', given: id, fix: 'Give each its own id.' }],
  );
}

const PAIRS = [
  ['low', 'value'],
  ['value', 'high'],
  ['low', 'high'],
  ['lowC', 'highC'],
  ['proteinPercentLow', 'proteinPercentHigh'],
] as const;

function lowAboveHigh({ field, value, path }: Part): FieldProblem[] {
  if (field.kind !== 'row') return [];
  const numbers = value as Readonly<Record<string, number | undefined>>;
  return PAIRS.flatMap(([low, high]): FieldProblem[] =>
    typeof numbers[low] === 'number' && numbers[high]! < numbers[low]
      ? [
          {
            field: `${path}.${low}`,
            code: 'out-of-bounds',
            given: numbers[low],
            max: numbers[high]!,
            boundBy: `${path}.${high}`,
            fix: `It is above ${high}: correct one of the two.`,
          },
        ]
      : [],
  );
}

/** Fields by which the points of a curve stand in order. */
const ORDERS = ['ageDays', 'ageWeeks', 'airC', 'dayH', 'fromDay'] as const;

function notAscending({ field, value, path }: Part): FieldProblem[] {
  if (field.kind !== 'list' || field.of.kind !== 'row') return [];
  const { fields } = field.of.row;
  if (areChosenAmong(fields)) return [];
  const points = value as Readonly<Record<string, unknown>>[];
  return ORDERS.filter((order) => Object.hasOwn(fields, order)).flatMap((order) =>
    points.flatMap((point, i): FieldProblem[] => {
      const [before, own] = [points[i - 1]?.[order], point[order]];
      return typeof before !== 'number' || typeof own !== 'number' || before < own
        ? []
        : [
            {
              field: `${path}.${i}.${order}`,
              code: 'out-of-bounds',
              given: own,
              min: before,
              fix: 'Points stand in order, each above the one before.',
            },
          ];
    }),
  );
}

/** Rows of which one is the default are chosen among: they make no curve. */
const areChosenAmong = (fields: Readonly<Record<string, unknown>>): boolean =>
  Object.hasOwn(fields, 'default');

/** The problem with its file, and rows by their ids. */
function inFile(name: keyof Tables, value: unknown, problem: FieldProblem): FieldProblem {
  const at = (path: string): string => `seeds/${TABLE_FILES[name]}: ${byIds(value, path)}`;
  const { boundBy } = problem;
  return {
    ...problem,
    field: at(problem.field),
    ...(boundBy === undefined ? {} : { boundBy: at(boundBy) }),
  };
}

function byIds(value: unknown, path: string): string {
  let inner = value;
  return path
    .split('.')
    .filter((name) => name !== '')
    .map((name) => {
      inner = (inner as Record<string, unknown> | undefined)?.[name];
      const id = (inner as { id?: unknown } | undefined)?.id;
      return /^\d+$/.test(name) && typeof id === 'string' ? id : name;
    })
    .join('.');
}
