import { addDays, isPlainDate, type PlainDate } from '../calendar/plain-date.js';
import type { FieldProblem } from '../problems/field-problem.js';
import { problemsOfBound } from './bounds.js';
import { FARM_GROUND, type ToldFact, type ToldKind } from './told-fact.js';

/** What a farm knows that facts can be about. */
export interface ToldOn {
  readonly today: PlainDate;
  readonly paddockIds: readonly string[];
  readonly herdIds: readonly string[];
}

/** What is said of a fact by whoever tells it. */
export type Said = Pick<ToldFact, 'kind' | 'about' | 'on'> & {
  readonly details: Readonly<Record<string, unknown>>;
};

/** A kind of told fact: which fields its details have, what it is about, what it takes the place of. */
interface KindOfFact {
  readonly fields: readonly string[];
  readonly problemsOf: (said: Said, farm: ToldOn) => FieldProblem[];
  /** Of the facts of the same kind about the same thing, which one it replaces. */
  readonly replaces: 'the-last' | 'the-one-of-that-day' | 'none';
  /** How far back it can lie when it is told, days. */
  readonly oldestDays: number;
}

/** A longer time ago is a slip of the pen: a year typed wrong. */
const LONG_AGO_DAYS = 20 * 366;
/** Older readings say nothing of a season. */
export const OLDEST_READING_DAYS = 5 * 366;

/** Every kind of fact that can be told. A new kind is a row here and a type in `told-fact.ts`. */
export const TOLD_KINDS: Readonly<Record<ToldKind, KindOfFact>> = {
  'work-progress': {
    fields: ['doneOn', 'notBefore', 'hours', 'hoursDone', 'reckonedHours', 'kind'],
    replaces: 'the-last',
    oldestDays: LONG_AGO_DAYS,
    problemsOf: ({ about, details }, { today }) => [
      ...(isWorkKey(about) ? [] : [notAKey(about)]),
      ...dateProblem('details.doneOn', details['doneOn'], today),
      ...dateProblem('details.notBefore', details['notBefore']),
      ...problemsOfBound('details.hours', details['hours'], 'jobHours'),
      ...problemsOfBound('details.hoursDone', details['hoursDone'], 'jobHours'),
      ...problemsOfBound('details.reckonedHours', details['reckonedHours'], 'reckonedHours'),
      ...(details['kind'] === undefined || isText(details['kind'], 120)
        ? []
        : [notText('details.kind', details['kind'])]),
    ],
  },
  'grass-reading': {
    fields: ['heightCm'],
    replaces: 'the-one-of-that-day',
    oldestDays: OLDEST_READING_DAYS,
    problemsOf: ({ about, details }, { paddockIds }) => [
      ...among('about', about, paddockIds, 'Name a paddock of this farm.'),
      ...problemsOfBound('details.heightCm', details['heightCm'] ?? null, 'heightCm'),
    ],
  },
  'ground-check': {
    fields: ['isWorkable'],
    replaces: 'the-one-of-that-day',
    oldestDays: LONG_AGO_DAYS,
    problemsOf: ({ about, details }) => [
      ...among('about', about, [FARM_GROUND], 'The ground is that of the whole farm.'),
      ...yesNo('details.isWorkable', details['isWorkable'] ?? null),
    ],
  },
  'herd-move': {
    fields: ['paddockId', 'isTyped', 'isSinceUnknown'],
    replaces: 'none',
    oldestDays: LONG_AGO_DAYS,
    problemsOf: ({ about, details }, { herdIds, paddockIds }) => [
      ...among('about', about, herdIds, 'Name a herd of this farm.'),
      ...(details['paddockId'] === undefined && details['isTyped'] === true
        ? []
        : among(
            'details.paddockId',
            details['paddockId'],
            paddockIds,
            'Name a paddock of this farm.',
          )),
      ...yesNo('details.isTyped', details['isTyped']),
      ...yesNo('details.isSinceUnknown', details['isSinceUnknown']),
    ],
  },
};

/** What is wrong with what is said, by the path of the field within the fact. */
export function toldProblems(said: Said, farm: ToldOn): FieldProblem[] {
  const kind = TOLD_KINDS[said.kind];
  return [
    ...dateProblem('on', said.on, farm.today, addDays(farm.today, -kind.oldestDays)),
    ...Object.keys(said.details)
      .filter((name) => !kind.fields.includes(name))
      .map((name) => ({
        field: `details.${name}`,
        code: 'not-allowed' as const,
        given: said.details[name],
        allowed: [],
        fix: `A fact of this kind holds: ${kind.fields.join(', ')}.`,
      })),
    ...kind.problemsOf(said, farm),
  ];
}

/**
 * Whether text has the shape of a key of work: `own/`, `batch/` or `herd/`, an id, and for the last
 * two the work itself. The batch may be long gone: what was done for it is history.
 */
export const isWorkKey = (text: string): boolean =>
  /^(own\/[A-Za-z0-9-]{1,64}|(batch|herd)\/[A-Za-z0-9-]{1,64}\/[A-Za-z0-9/.-]{1,120})$/.test(text);

export const notAKey = (given: string, field = 'about'): FieldProblem => ({
  field,
  code: 'not-allowed',
  given,
  allowed: ['own/ID', 'batch/ID/WORK', 'herd/ID/WORK'],
  fix: 'Use the key as the plan of work gave it.',
});

const isText = (value: unknown, most: number): boolean =>
  typeof value === 'string' && value.trim() !== '' && value.length <= most;

const notText = (field: string, given: unknown): FieldProblem => ({
  field,
  code: 'not-allowed',
  given,
  allowed: ['text'],
  fix: 'Give it as the plan of work did, or leave it out.',
});

function dateProblem(
  field: string,
  given: unknown,
  max?: PlainDate,
  min?: PlainDate,
): FieldProblem[] {
  if (given === undefined) return [];
  if (!isPlainDate(given)) {
    return [{ field, code: 'not-a-date', given, fix: 'Write year-month-day, such as 2027-04-21.' }];
  }
  if (max !== undefined && max < given) {
    return [
      {
        field,
        code: 'out-of-bounds',
        given,
        max,
        fix: 'This has not happened yet: give the day on which it did.',
      },
    ];
  }
  return min !== undefined && given < min
    ? [{ field, code: 'out-of-bounds', given, min, fix: 'This is very long ago: check the year.' }]
    : [];
}

const among = (
  field: string,
  given: unknown,
  allowed: readonly string[],
  fix: string,
): FieldProblem[] =>
  typeof given === 'string' && allowed.includes(given)
    ? []
    : [{ field, code: given === undefined ? 'missing' : 'not-allowed', given, allowed, fix }];

const yesNo = (field: string, given: unknown): FieldProblem[] =>
  given === undefined || typeof given === 'boolean'
    ? []
    : [
        {
          field,
          code: given === null ? 'missing' : 'not-allowed',
          given,
          allowed: ['true', 'false'],
          fix: 'Write true or false.',
        },
      ];
