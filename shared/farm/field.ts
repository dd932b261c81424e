import type { Bounds } from './bounds.js';
import { WEEKDAYS } from '../units/dates.js';
import type { FieldProblem } from '../problems/field-problem.js';

declare const HELD: unique symbol;

/** What a field holds, known to the compiler only. */
export interface Holds<T> {
  readonly [HELD]?: T;
}

interface Common {
  /** What is printed at the field, and what its problems call it. */
  readonly label: string;
  /** May be left out. Null is not the same: it is refused, so that nothing is lost in silence. */
  readonly isOptional?: boolean;
}

/** What is wrong with a value, before its path and the value are known. */
export type ProblemPart = Omit<FieldProblem, 'field' | 'given'>;

/** Text of 1 to `most` characters, not only blanks. */
export interface TextField extends Common {
  readonly kind: 'text';
  readonly most: number;
  readonly hasLines: boolean;
}

/** A number within bounds, stored in the SI unit that the bounds name. */
export interface NumberField extends Common {
  readonly kind: 'number';
  readonly bounds: Bounds;
}

export interface ChoiceField extends Common {
  readonly kind: 'choice';
  readonly allowed: readonly string[];
}

export interface YesNoField extends Common {
  readonly kind: 'yes-no';
}

/** Text of a form of its own, such as a date or an id. */
export interface WordField extends Common {
  readonly kind: 'word';
  readonly word: WordForm;
}

export interface WordForm {
  readonly name:
    | 'date'
    | 'instant'
    | 'month-day'
    | 'id'
    | 'work-key'
    | 'price'
    | 'time-zone'
    | 'currency'
    | 'country'
    | 'region'
    | 'of-tables';
  readonly holds: (value: unknown) => boolean;
  readonly wrong: ProblemPart;
  /** The table whose row it names. */
  readonly refersTo?: string;
  /** What the API document says of it. */
  readonly schema: {
    readonly format?: string;
    readonly pattern?: string;
    readonly example: string;
  };
}

/** Entries of one kind: up to `most` of them, or exactly so many. */
export interface ListField<F extends Field = Field> extends Common {
  readonly kind: 'list';
  readonly of: F;
  readonly least: number;
  readonly most: number;
  /** What the entries are called. */
  readonly what: string;
  /** The label of one entry, by its place from 0. */
  readonly labelOfEntry?: (index: number) => string;
}

/** Values of one kind by names that are not known beforehand. */
export interface RecordField extends Common {
  readonly kind: 'record';
  readonly of: Field;
  readonly most: number;
}

/** Corners of a piece of ground: pairs of degrees east and north. */
export interface OutlineField extends Common {
  readonly kind: 'outline';
  readonly most: number;
}

/** A row within a row. */
export interface RowField extends Common {
  readonly kind: 'row';
  readonly row: RowDescription;
  /** Said behind the labels of its fields: the R-value “of the walls”. */
  readonly called?: string;
}

/** One of several kinds of row, told apart by one of its fields. */
export interface OneOfField extends Common {
  readonly kind: 'one-of';
  readonly by: string;
  readonly rows: Readonly<Record<string, RowDescription>>;
}

/** All that is known of one field of a row. */
export type Field =
  | TextField
  | NumberField
  | ChoiceField
  | YesNoField
  | WordField
  | ListField
  | RecordField
  | OutlineField
  | RowField
  | OneOfField;

export type Fields = Readonly<Record<string, Field>>;

/**
 * Something that must hold between fields of a row. It is looked at when every field that it looks
 * at is in order by itself, and named at the first of them.
 */
export interface RowRule<Row = never> {
  readonly name: string;
  readonly of: readonly string[];
  readonly find: (row: Row, at: string) => readonly FieldProblem[];
}

/** Everything that is known of a kind of row: its fields, and what must hold between them. */
export interface RowDescription<F extends Fields = Fields> {
  /** Name of the kind, as the API document calls it. */
  readonly name: string;
  readonly fields: F;
  readonly rules: readonly RowRule[];
}

export type HeldBy<F> = F extends Holds<infer T> ? T : never;
type OptionalNames<F extends Fields> = {
  [K in keyof F]: F[K] extends { readonly isOptional: true } ? K : never;
}[keyof F];

/** The values that fields describe. */
export type ValuesOf<F extends Fields> = {
  readonly [K in keyof F as K extends OptionalNames<F> ? never : K]: HeldBy<F[K]>;
} & {
  readonly [K in keyof F as K extends OptionalNames<F> ? K : never]?: HeldBy<F[K]>;
} extends infer Both
  ? { readonly [K in keyof Both]: Both[K] }
  : never;

/** The type of a row with this description. */
export type RowOf<D extends { readonly fields: Fields }> = ValuesOf<D['fields']>;

/** The type of a row that is kept, and so has an id. */
export type SavedRowOf<D extends { readonly fields: Fields }> = Omit<RowOf<D>, 'id'> & {
  readonly id: string;
};

/** Describes a kind of row. */
export const row = <const F extends Fields>(
  name: string,
  fields: F,
  rules: readonly RowRule<ValuesOf<F>>[] = [],
): RowDescription<F> => ({ name, fields, rules });

/** The same field, but it may be left out. */
export const optional = <F extends Field>(field: F): F & { readonly isOptional: true } => ({
  ...field,
  isOptional: true,
});

/** One line of text. */
export const text = (label: string, most = 80): TextField & Holds<string> => ({
  kind: 'text',
  label,
  most,
  hasLines: false,
});

/** Text that may run over several lines. */
export const longText = (label: string, most = 1000): TextField & Holds<string> => ({
  kind: 'text',
  label,
  most,
  hasLines: true,
});

export const number = (label: string, bounds: Bounds): NumberField & Holds<number> => ({
  kind: 'number',
  label,
  bounds,
});

export const choice = <const T extends string>(
  label: string,
  allowed: readonly T[],
): ChoiceField & Holds<T> => ({ kind: 'choice', label, allowed });

export const yesNo = (label: string): YesNoField & Holds<boolean> => ({ kind: 'yes-no', label });

export const word = <T = string>(label: string, form: WordForm): WordField & Holds<T> => ({
  kind: 'word',
  label,
  word: form,
});

/** Up to `most` entries of one kind, at least `least`. */
export const list = <F extends Field>(
  label: string,
  of: F,
  most: number,
  what: string,
  least = 0,
): ListField<F> & Holds<readonly HeldBy<F>[]> => ({ kind: 'list', label, of, least, most, what });

/** Exactly so many numbers within the same bounds. */
const numbers = (
  label: string,
  bounds: Bounds,
  labels: readonly string[],
): ListField<NumberField> & Holds<readonly number[]> => ({
  kind: 'list',
  label,
  of: number(label, bounds),
  least: labels.length,
  most: labels.length,
  what: 'numbers',
  labelOfEntry: (index) => labels[index] ?? label,
});

export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** Twelve numbers, January first; `what` is what each of them is called after its month. */
export const twelveMonths = (label: string, what: string, bounds: Bounds) =>
  numbers(
    label,
    bounds,
    MONTHS.map((month) => `${month} ${what}`),
  );

/** Seven numbers, Monday first. */
export const sevenDays = (label: string, bounds: Bounds) => numbers(label, bounds, WEEKDAYS);

/** Values by names that are not known beforehand, such as prices by feed. */
export const record = <F extends Field>(
  label: string,
  of: F,
  most: number,
): RecordField & Holds<Readonly<Record<string, HeldBy<F>>>> => ({
  kind: 'record',
  label,
  of,
  most,
});

export type Outline = readonly (readonly [longitudeDeg: number, latitudeDeg: number])[];

export const outline = (label: string, most: number): OutlineField & Holds<Outline> => ({
  kind: 'outline',
  label,
  most,
});

/** A row within a row; `called` is said behind the labels of its fields. */
export const nested = <F extends Fields>(
  label: string,
  described: RowDescription<F>,
  called?: string,
): RowField & Holds<ValuesOf<F>> => ({
  kind: 'row',
  label,
  row: described,
  ...(called === undefined ? {} : { called }),
});

/** Up to `most` rows of one kind; `noun` is what one of them is called. */
export const rows = <F extends Fields>(
  label: string,
  described: RowDescription<F>,
  most: number,
  noun: string,
): ListField<RowField> & Holds<readonly ValuesOf<F>[]> => ({
  ...list(label, nested(label, described), most, 'objects'),
  labelOfEntry: (index) => `${noun} ${index + 1}`,
});

/** One of several kinds of row, told apart by one of its fields. */
export const oneOf = <R extends Readonly<Record<string, RowDescription>>>(
  label: string,
  by: string,
  described: R,
): OneOfField & Holds<{ [K in keyof R]: RowOf<R[K]> }[keyof R]> => ({
  kind: 'one-of',
  label,
  by,
  rows: described,
});
