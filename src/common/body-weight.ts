import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';

/** How much of a body may be looked at before others have to wait too long for their answers. */
export interface BodyLimits {
  /** Fields and objects, counted together. */
  readonly fields: number;
  readonly entriesOfList: number;
  readonly depth: number;
}

/** What is checked on the thread that answers requests: about 20 ms of it at most. */
export const LIGHT: BodyLimits = { fields: 2000, entriesOfList: 20_000, depth: 24 };
/** What is checked in a thread of the pool: a household with everything it may hold. */
export const LARGE: BodyLimits = { ...LIGHT, fields: 60_000 };

/**
 * Fields and objects of a body, counted together; lists of plain values count by their fields only.
 *
 * @throws FieldError naming the place when the body is over its limits, or when a field is called
 *   as something that every object has, such as `valueOf`: libraries drop those or stumble over them
 */
export function weightOf(body: unknown, limits: BodyLimits, path = ''): number {
  let weight = 0;
  const open: { value: object; path: string; depth: number }[] = [];
  const look = (value: unknown, at: string, name: string | number, depth: number): void => {
    if (typeof value !== 'object' || value === null) return;
    open.push({ value, path: at === '' ? String(name) : `${at}.${name}`, depth });
  };
  if (typeof body === 'object' && body !== null) open.push({ value: body, path, depth: 0 });
  for (let next = open.pop(); next; next = open.pop()) {
    const { value, path: at, depth } = next;
    if (limits.depth < depth) throw tooDeep(at, limits.depth);
    if (Array.isArray(value)) {
      if (limits.entriesOfList < value.length) throw tooLong(at, value.length, limits);
      value.forEach((entry, i) => look(entry, at, i, depth + 1));
      continue;
    }
    const names = Object.keys(value);
    weight += 1 + names.length;
    if (limits.fields < weight) throw tooMany(at, names, limits);
    for (const name of names) {
      const inner = (value as Record<string, unknown>)[name];
      if (name in Object.prototype) throw ofEveryObject(at === '' ? name : `${at}.${name}`, inner);
      look(inner, at, name, depth + 1);
    }
  }
  return weight;
}

const MOST_NAMED = 10;
const MOST_PATH = 200;

const problemAt = (path: string, problem: Omit<FieldProblem, 'field'>): FieldError =>
  new FieldError([{ field: path.slice(0, MOST_PATH) || 'body', ...problem }]);

function tooMany(path: string, names: readonly string[], { fields }: BodyLimits): FieldError {
  const first = names.slice(0, MOST_NAMED).map((name) => JSON.stringify(name.slice(0, 40)));
  const more = MOST_NAMED < names.length ? ' …' : '';
  return problemAt(path, {
    code: 'out-of-bounds',
    given: `an object with ${names.length} fields`,
    max: fields,
    unit: 'fields in the whole body',
    fix: `Send less at once, and only fields that the API document names. This object begins with ${first.join(', ')}${more}.`,
  });
}

const ofEveryObject = (path: string, given: unknown): FieldError =>
  problemAt(path, {
    code: 'not-allowed',
    given,
    allowed: [],
    fix: 'Every object of the language has something of that name: remove the field, or give it another name.',
  });

const tooLong = (path: string, length: number, { entriesOfList }: BodyLimits): FieldError =>
  problemAt(path, {
    code: 'out-of-bounds',
    given: length,
    max: entriesOfList,
    unit: 'entries',
    fix: 'No list is as long as this one: send less at once.',
  });

const tooDeep = (path: string, depth: number): FieldError =>
  problemAt(path, {
    code: 'not-allowed',
    given: 'lists or objects within each other',
    allowed: [`values nested up to ${depth} deep`],
    fix: 'Nothing here is nested as deep: check the brackets.',
  });
