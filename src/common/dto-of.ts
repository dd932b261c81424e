import { ApiExtraModels, ApiProperty, type ApiPropertyOptions } from '@nestjs/swagger';
import { ValidateBy, type ValidationArguments } from 'class-validator';
import { problemsOfFieldIn } from '../../shared/farm/check-row.js';
import { OWN } from '../../shared/farm/words.js';
import type { Fields, RowDescription, ValuesOf } from '../../shared/farm/field.js';
import { describeProblem, type FieldProblem } from '../../shared/problems/field-problem.js';
import { rowsWithin, schemaOf, type NameOf } from './schema-of.js';

/** Lists of a DTO may be changed by whoever holds it; nothing else differs from the row. */
export type Sent<T> = T extends readonly [infer A, infer B]
  ? [A, B]
  : T extends readonly (infer Each)[]
    ? Sent<Each>[]
    : T extends object
      ? { -readonly [K in keyof T]: Sent<T[K]> }
      : T;

type Class<T> = new () => T;

/** What a rule of class-validator carries along: the problems it stands for, with their paths. */
export interface Finding {
  readonly problemsIn: (row: object, at: string) => readonly FieldProblem[];
}

/** Name of the one rule that every field of a described class has. */
export const DESCRIBED = 'described';

/** How rows are called as a client sends them. */
export const sentNames: NameOf = ({ name }) => `${name}Dto`;
const sent = new Map<RowDescription, Class<object>>();
const answered = new Map<RowDescription, Class<object>>();

/**
 * The class of a row as a client sends it: rules for class-validator and properties for the API
 * document, both made from the row's description. A class that extends it has the same name.
 */
export const dtoOf = <F extends Fields>(described: RowDescription<F>): Class<Sent<ValuesOf<F>>> =>
  classOf(described, sentNames, sent) as Class<Sent<ValuesOf<F>>>;

/** The class of a row as the service answers it, for the API document: what is its own is there. */
export function answerOf(described: RowDescription): Class<object> {
  if (!('id' in described.fields)) return classOf(described, sentNames, sent);
  const known = answered.get(described);
  if (known) return known;
  const owned = Object.entries(OWN).filter(([name]) => name in described.fields);
  const own = owned.map(([name, field]) => [name, { ...field, isOptional: false }]);
  const kept: RowDescription = {
    ...described,
    fields: { ...described.fields, ...(Object.fromEntries(own) as Fields) },
  };
  const made = classOf(kept, (each) => (each === kept ? kept.name : sentNames(each)), new Map());
  answered.set(described, made);
  return made;
}

function classOf(
  described: RowDescription,
  nameOf: NameOf,
  known: Map<RowDescription, Class<object>>,
): Class<object> {
  const before = known.get(described);
  if (before) return before;
  const name = nameOf(described);
  const made = { [name]: class {} }[name]!;
  known.set(described, made);
  for (const [field, of] of Object.entries(described.fields)) {
    ApiProperty({ ...schemaOf(of, nameOf), required: !of.isOptional } as ApiPropertyOptions)(
      made.prototype as object,
      field,
    );
    ruleOf(described, field)(made.prototype as object, field);
  }
  const within = Object.values(described.fields).flatMap(rowsWithin);
  ApiExtraModels(...within.map((each) => classOf(each, sentNames, sent)))(made);
  return made;
}

/** The rule of one field: what the core finds wrong with it, and with the row by the rules named there. */
function ruleOf(described: RowDescription, field: string): PropertyDecorator {
  const finding: Finding = {
    problemsIn: (row, at) => problemsOfFieldIn(described, field, row, at),
  };
  const problemsIn = (args?: ValidationArguments) => finding.problemsIn(args?.object ?? {}, '');
  return ValidateBy(
    {
      name: DESCRIBED,
      validator: {
        validate: (_value, args) => problemsIn(args).length === 0,
        defaultMessage: (args) => problemsIn(args).map(describeProblem).join(' '),
      },
    },
    { context: finding },
  );
}
