import { isPlainDate } from '../calendar/plain-date.js';
import { formatDate } from '../units/dates.js';
import { formatBound, formatTyped, type Reader } from '../units/format.js';
import { labelAfter, SHOWN, storedLabel, type Unit } from '../units/unit.js';

/** One thing that is wrong with one field, as data. Wording is made in this file only. */
export interface FieldProblem {
  /** Path of the field, such as `batch.wantedBirds` or `facilities.2.lengthM`. */
  readonly field: string;
  readonly code:
    | 'out-of-bounds'
    | 'not-a-number'
    | 'not-a-date'
    | 'not-allowed'
    | 'missing'
    | 'conflict'
    | 'unreadable';
  readonly given: unknown;
  readonly min?: number | string;
  readonly max?: number | string;
  readonly allowed?: readonly string[];
  readonly unit?: string;
  /** Path of another field, when the bound is what that field holds. */
  readonly boundBy?: string;
  /** What to do, as an instruction. */
  readonly fix: string;
}

/** As many as anybody reads at once. */
const MOST_IN_MESSAGE = 50;

/** Raised when input cannot be planned at all. Carries every problem found, not just the first. */
export class FieldError extends Error {
  constructor(readonly problems: readonly FieldProblem[]) {
    super(problems.slice(0, MOST_IN_MESSAGE).map(describeProblem).join(' '));
    this.name = 'FieldError';
  }
}

/** Says what was given, what is allowed and what to do. */
export function describeProblem(problem: FieldProblem): string {
  return `${problem.field} ${whatIsWrong(problem)}. ${problem.fix}`;
}

/** How a form calls its fields, by their paths. */
export interface FieldWords {
  /** The label printed at a field; undefined for a field that the form does not have. */
  readonly labelOf: (field: string) => string | undefined;
  /** The unit that a number is shown in: acres, where square meters are stored. */
  readonly unitOf?: ((field: string) => Unit | undefined) | undefined;
}

/** How a form names its fields, and the units it is read in. */
export interface FormWords extends FieldWords {
  readonly reader: Reader;
}

/**
 * The same for somebody at a form: with the label printed at the field, and with values and bounds
 * in the farm's units.
 */
export function describeForForm(
  problem: FieldProblem,
  { labelOf, unitOf }: FieldWords,
  reader: Reader,
): string {
  const label = labelOf(problem.field) ?? problem.field;
  const isMeasured = problem.unit !== undefined && problem.unit in SHOWN;
  const unit = (isMeasured ? unitOf?.(problem.field) : undefined) ?? problem.unit;
  const { code, given } = problem;
  const wrong = (): string => {
    switch (code) {
      case 'not-a-number':
        return typeof given === 'number' || given === null
          ? 'cannot be read as a number'
          : `is ${shown(given)}, which is not a number`;
      case 'not-allowed':
        return `is ${shown(given)}, which cannot be chosen here`;
      case 'out-of-bounds':
        return outsideForForm(unit === undefined ? problem : { ...problem, unit }, labelOf, reader);
      case 'conflict':
        return `is ${forPerson(given, unit, reader)}, which contradicts another field`;
      default:
        return whatIsWrong(problem);
    }
  };
  return `${label} ${wrong()}. ${problem.fix}`;
}

function outsideForForm(
  { given, min, max, unit, boundBy }: FieldProblem,
  labelOf: (field: string) => string | undefined,
  reader: Reader,
): string {
  const say = (value: unknown, end?: 'min' | 'max') => forPerson(value, unit, reader, end);
  if (Array.isArray(given)) return 'holds a value that cannot be used';
  if (unit === 'whole') {
    return `is ${say(given)}, but must be a whole number from ${say(min)} to ${say(max)}`;
  }
  if (boundBy !== undefined) {
    const other = labelOf(boundBy) ?? boundBy;
    return max === undefined
      ? `${say(given)} is below ${other} ${say(min)}`
      : `${say(given)} is above ${other} ${say(max)}`;
  }
  const low = min === undefined ? undefined : say(min, 'min');
  const high = max === undefined ? undefined : say(max, 'max');
  if (unit === 'characters') {
    if (isBlank(given)) return 'is empty';
    return `is ${shown(given)}, but must be ${boundsText(low, high, ' characters')}`;
  }
  if (isPlainDate(given) && (low === undefined || high === undefined)) {
    return `is ${say(given)}, but must be ${low === undefined ? `no later than ${high}` : `no sooner than ${low}`}`;
  }
  const isNegative =
    unit !== 'degC' &&
    typeof given === 'number' &&
    given < 0 &&
    typeof min === 'number' &&
    0 <= min;
  return `is ${say(given)}, but must ${isNegative ? 'not be negative: ' : 'be '}${boundsText(low, high, '')}`;
}

/** Nothing at all, or nothing that can be seen. */
export const isBlank = (given: unknown): boolean =>
  typeof given === 'string' && given.trim() === '';

/** A value or a bound as a person of this farm reads it. */
function forPerson(
  value: unknown,
  unit: string | undefined,
  reader: Reader,
  end?: 'min' | 'max',
): string {
  if (typeof value === 'string') {
    if (isPlainDate(value)) return formatDate(value, reader);
    return end === undefined ? shown(value) : value;
  }
  if (typeof value !== 'number') return shown(value);
  if (unit === undefined || !(unit in SHOWN)) return formatTyped(value, 'count', reader);
  return end === undefined
    ? formatTyped(value, unit as Unit, reader)
    : formatBound(value, unit as Unit, reader, end);
}

function whatIsWrong({ code, given, min, max, allowed, unit }: FieldProblem): string {
  const value = shown(given);
  switch (code) {
    case 'missing':
      return 'is missing';
    case 'not-a-number':
      return `is ${value}, which is not a number`;
    case 'not-a-date':
      return `is ${value}, which is not a calendar date`;
    case 'not-allowed':
      return allowed === undefined || allowed.length === 0
        ? `is ${value}, which is not known here`
        : `is ${value}, but must be one of: ${allowed.join(', ')}`;
    case 'unreadable':
      return typeof given === 'string' ? `cannot be read: ${given}` : 'cannot be read';
    case 'conflict':
      return `is ${value}, which contradicts another field`;
    case 'out-of-bounds': {
      if (unit === 'characters' && isBlank(given)) return 'is empty';
      const tail = unitText(unit);
      const givenTail =
        typeof given === 'number' && unit !== 'whole' ? unitText(unit, String(given)) : '';
      return `is ${value}${givenTail}, but must be ${boundsText(min, max, tail)}`;
    }
  }
}

function boundsText(
  min: number | string | undefined,
  max: number | string | undefined,
  tail: string,
): string {
  if (min !== undefined && max !== undefined) return `from ${min} to ${max}${tail}`;
  if (min !== undefined) return `at least ${min}${tail}`;
  return `at most ${max}${tail}`;
}

/** Values nested without end cannot be written out. */
function jsonOf(given: unknown): string | undefined {
  try {
    return JSON.stringify(given) ?? String(given);
  } catch {
    return undefined;
  }
}

/** What was given, small enough to send back: short values as they are, long ones cut. */
export function givenForAnswer(given: unknown): unknown {
  if (given === undefined || given === null) return null;
  if (typeof given === 'string') return given.slice(0, MOST_GIVEN);
  const json = jsonOf(given);
  return json !== undefined && json.length <= MOST_GIVEN ? given : shown(given);
}

const MOST_GIVEN = 200;

/** A stored unit is shown by its label, as it stands after the number; any other word as it is. */
function unitText(unit: string | undefined, number = ''): string {
  if (unit === undefined) return '';
  if (unit === 'whole') return ', without decimals';
  if (unit === 'share') return number === '' ? ', where 1 is all of it' : '';
  const label = unit in SHOWN ? storedLabel(unit as Unit) : unit;
  return label === '' ? '' : ` ${labelAfter(number, label)}`;
}

function shown(given: unknown): string {
  if (given === undefined) return 'missing';
  const text =
    typeof given === 'string' ? `"${given}"` : (jsonOf(given) ?? 'nested too deep to show');
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
