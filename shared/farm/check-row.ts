import { isBlank, type FieldProblem } from '../problems/field-problem.js';
import { problemsOfNumber } from './bounds.js';
import type {
  Field,
  ListField,
  OneOfField,
  OutlineField,
  RowDescription,
  RowRule,
  TextField,
} from './field.js';

/** Whether fields that no description names are refused, or passed over. */
export type Unknown = 'refused' | 'passed';

/** Unknown fields that are named; a body may hold any number of them. */
const MOST_NAMED = 20;

/**
 * What is wrong with any value at all, taken for a row of this kind.
 *
 * @param at path of the row with a dot behind it, or nothing
 * @param unknown rows that the program made itself may hold more than is described
 */
export function problemsOfRow(
  described: RowDescription,
  given: unknown,
  at = '',
  unknown: Unknown = 'refused',
): FieldProblem[] {
  if (!isObject(given)) return [notAnObject(at.slice(0, -1), given)];
  const problems = unknown === 'refused' ? unknownFields(described, given, at) : [];
  for (const name of Object.keys(described.fields))
    problems.push(...problemsOfFieldIn(described, name, given, at, unknown));
  return problems;
}

/** The same for one field of a row, with the rules that are named at it. */
export function problemsOfFieldIn(
  described: RowDescription,
  name: string,
  row: object,
  at = '',
  unknown: Unknown = 'refused',
): FieldProblem[] {
  const problems = ownProblems(described, name, row, at, unknown);
  if (0 < problems.length) return problems;
  // Looked through one by one: plans check hundreds of fields, and most have no rule.
  for (const rule of described.rules) {
    if (rule.of[0] !== name) continue;
    if (rule.of.some((other) => 0 < ownProblems(described, other, row, at, unknown).length))
      continue;
    problems.push(...(rule as RowRule<unknown>).find(row, at));
  }
  return problems;
}

const ownProblems = (
  { fields }: RowDescription,
  name: string,
  row: object,
  at: string,
  unknown: Unknown,
): FieldProblem[] =>
  problemsOfField(fields[name]!, (row as Record<string, unknown>)[name], `${at}${name}`, unknown);

/** Problems of the fields by themselves, and of those in order by themselves whatever else is found. */
export function besides(
  own: readonly FieldProblem[],
  others: readonly FieldProblem[],
): FieldProblem[] {
  const wrong = new Set(own.map(({ field }) => field));
  return [...own, ...others.filter(({ field }) => !wrong.has(field))];
}

/** What is wrong with one value, taken for this field. */
export function problemsOfField(
  field: Field,
  given: unknown,
  path: string,
  unknown: Unknown = 'refused',
): FieldProblem[] {
  if (given === undefined && field.isOptional) return [];
  // Of a row that may be of several kinds, the kind is what is missing.
  if (given === undefined || (given === null && field.kind !== 'one-of')) {
    const fix = field.kind === 'text' && field.label === NAME ? NAME_IT : fixOf(field);
    return [{ field: path, code: 'missing', given, fix }];
  }
  switch (field.kind) {
    case 'number':
      return problemsOfNumber(path, given, field.bounds);
    case 'text':
      return isText(field, given) ? [] : [wrongText(field, given, path)];
    case 'choice':
      return typeof given === 'string' && field.allowed.includes(given)
        ? []
        : [notAllowed(path, given, field.allowed, fixOf(field))];
    case 'yes-no':
      return typeof given === 'boolean'
        ? []
        : [notAllowed(path, given, ['true', 'false'], fixOf(field))];
    case 'word':
      return field.word.holds(given) ? [] : [{ field: path, given, ...field.word.wrong }];
    case 'list':
      return problemsOfList(field, given, path, unknown);
    case 'record':
      return !isObject(given) || field.most < Object.keys(given).length
        ? [notAllowed(path, given, [`up to ${field.most} values by name`], fixOf(field))]
        : Object.entries(given).flatMap(([name, each]) =>
            problemsOfField(field.of, each, `${path}.${name}`, unknown),
          );
    case 'outline':
      return problemsOfOutline(field, given, path);
    case 'row':
      return problemsOfRow(field.row, given, `${path}.`, unknown);
    case 'one-of':
      return problemsOfOneOf(field, given, `${path}.`, unknown);
  }
}

/** What is wrong with a row that may be of several kinds. */
export function problemsOfOneOf(
  field: OneOfField,
  given: unknown,
  at = '',
  unknown: Unknown = 'refused',
): FieldProblem[] {
  const kind = isObject(given) ? (given as Record<string, unknown>)[field.by] : undefined;
  const described = rowOfKind(field, kind);
  return described
    ? problemsOfRow(described, given, at, unknown)
    : [notAllowed(`${at}${field.by}`, kind, Object.keys(field.rows), 'Choose one of these kinds.')];
}

/** The description of one kind of row, or undefined when there is no such kind. */
export const rowOfKind = ({ rows }: OneOfField, kind: unknown): RowDescription | undefined =>
  typeof kind === 'string' && Object.hasOwn(rows, kind) ? rows[kind] : undefined;

function problemsOfList(
  field: ListField,
  given: unknown,
  path: string,
  unknown: Unknown,
): FieldProblem[] {
  if (!Array.isArray(given)) return [notAllowed(path, given, [listText(field)], fixOf(field))];
  if (given.length < field.least || field.most < given.length) {
    return [
      {
        field: path,
        code: 'out-of-bounds',
        given: given.length,
        min: field.least,
        max: field.most,
        unit: field.what,
        fix: fixOf(field),
      },
    ];
  }
  return given.flatMap((each: unknown, i) =>
    problemsOfField(field.of, each, `${path}.${i}`, unknown),
  );
}

function problemsOfOutline(field: OutlineField, given: unknown, path: string): FieldProblem[] {
  if (!Array.isArray(given) || field.most < given.length) {
    const allowed = [`a list of up to ${field.most} corners`];
    return [notAllowed(path, given, allowed, fixOf(field))];
  }
  return given.flatMap((corner: unknown, i) =>
    isCorner(corner)
      ? []
      : [notAllowed(`${path}.${i}`, corner, ['[longitude, latitude]'], fixOf(field))],
  );
}

/** Degrees east and north; a height may stand behind them, as in GeoJSON. */
const isCorner = (value: unknown): boolean =>
  Array.isArray(value) &&
  2 <= value.length &&
  value.length <= 3 &&
  value.every((each) => typeof each === 'number' && Number.isFinite(each)) &&
  Math.abs(value[0] as number) <= 180 &&
  Math.abs(value[1] as number) <= 90;

function unknownFields({ fields }: RowDescription, given: object, at: string): FieldProblem[] {
  return Object.keys(given)
    .filter((name) => !Object.hasOwn(fields, name))
    .map((name) => [name, (given as Record<string, unknown>)[name]] as const)
    .filter(([, value]) => value !== undefined)
    .slice(0, MOST_NAMED)
    .map(([name, value]) =>
      notAllowed(`${at}${name}`, value, [], 'Remove the field or check its spelling.'),
    );
}

// oxlint-disable-next-line no-control-regex -- control characters are what is looked for
const CONTROL = /[\u0000-\u001f\u007f]/;

const isText = ({ most, hasLines }: TextField, value: unknown): boolean =>
  typeof value === 'string' &&
  value.trim().length > 0 &&
  value.length <= most &&
  !CONTROL.test(hasLines ? value.replaceAll(/[\r\n\t]/g, ' ') : value);

/** What a row is called by, in every description. */
const NAME = 'Name';
const NAME_IT = 'Give it a name.';

const wrongText = (field: TextField, given: unknown, path: string): FieldProblem => ({
  field: path,
  code: 'out-of-bounds',
  given,
  min: 1,
  max: field.most,
  unit: 'characters',
  fix: field.label === NAME && isBlank(given) ? NAME_IT : fixOf(field),
});

const isObject = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const notAnObject = (path: string, given: unknown): FieldProblem =>
  notAllowed(path, given, ['an object'], 'Give this part as an object in braces.');

const notAllowed = (
  field: string,
  given: unknown,
  allowed: readonly string[],
  fix: string,
): FieldProblem => ({ field, code: 'not-allowed', given, allowed, fix });

const listText = ({ least, most, what }: ListField): string =>
  least === most ? `a list of ${most} ${what}` : `a list of up to ${most} ${what}`;

/** What to do about a field that is missing or of another kind. */
export function fixOf(field: Field): string {
  switch (field.kind) {
    case 'number':
      return field.bounds.fix;
    case 'word':
      return field.word.wrong.fix;
    case 'choice':
      return 'Choose one of these.';
    case 'yes-no':
      return 'Write true or false.';
    case 'text':
      return field.hasLines
        ? `Write 1 to ${field.most} characters; leave the field out when there is nothing to say.`
        : `Write 1 to ${field.most} characters in one line.`;
    case 'list':
      return field.least === field.most
        ? `Give ${listText(field)} in square brackets, ${field.most === 12 ? 'January' : 'Monday'} first.`
        : field.least === 0
          ? 'Give a list in square brackets.'
          : 'Give a list in square brackets, with at least one in it.';
    case 'record':
      return 'Give values by name, in braces.';
    case 'outline':
      return 'Give each corner as [longitude, latitude], in order around the ground.';
    case 'row':
    case 'one-of':
      return 'Give this part as an object in braces.';
  }
}
