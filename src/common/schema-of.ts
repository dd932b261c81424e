import type { OpenAPIObject } from '@nestjs/swagger';
import type { Bounds } from '../../shared/farm/bounds.js';
import { fixOf } from '../../shared/farm/check-row.js';
import type { Field, RowDescription } from '../../shared/farm/field.js';
import { storedLabel, storedUnit } from '../../shared/units/unit.js';

/** One schema of the API document. */
export type Schema = Exclude<
  NonNullable<NonNullable<OpenAPIObject['components']>['schemas']>[string],
  { $ref: string }
>;

/** How rows are called in the API document: as sent by a client, or as the service answers. */
export type NameOf = (described: RowDescription) => string;

/** What the API document says of one field; rows within it are named, not repeated. */
export function schemaOf(field: Field, nameOf: NameOf): Schema {
  const description = field.label;
  switch (field.kind) {
    case 'text':
      return { type: 'string', description, minLength: 1, maxLength: field.most };
    case 'number':
      return numberSchema(field.label, field.bounds);
    case 'choice':
      return { type: 'string', description, enum: [...field.allowed] };
    case 'yes-no':
      return { type: 'boolean', description };
    case 'word':
      return {
        type: 'string',
        description: `${description}. ${fixOf(field)}`,
        ...field.word.schema,
      };
    case 'list':
      return {
        type: 'array',
        description,
        items: schemaOf(field.of, nameOf),
        minItems: field.least,
        maxItems: field.most,
      };
    case 'record':
      return {
        type: 'object',
        description,
        additionalProperties: schemaOf(field.of, nameOf),
        maxProperties: field.most,
      };
    case 'outline':
      return {
        type: 'array',
        description: `${description}. ${fixOf(field)}`,
        maxItems: field.most,
        items: { type: 'array', items: { type: 'number' }, minItems: 2, maxItems: 3 },
      };
    case 'row':
      return { type: 'object', description, allOf: [refTo(nameOf(field.row))] };
    case 'one-of':
      return {
        type: 'object',
        oneOf: Object.values(field.rows).map((each) => refTo(nameOf(each))),
        discriminator: {
          propertyName: field.by,
          mapping: Object.fromEntries(
            Object.entries(field.rows).map(([kind, each]) => [kind, refTo(nameOf(each)).$ref]),
          ),
        },
      };
  }
}

export const refTo = (name: string): { $ref: string } => ({
  $ref: `#/components/schemas/${name}`,
});

function numberSchema(label: string, { min, max, unit, integer, fix }: Bounds): Schema {
  const measured =
    unit === 'share' ? ', where 1 is all of it' : storedLabel(unit) && `, ${storedLabel(unit)}`;
  return {
    type: integer ? 'integer' : 'number',
    description: `${label}${measured}. ${fix}`,
    minimum: min,
    maximum: max,
    ['x-unit' as string]: storedUnit(unit),
  };
}

/** Rows that a description holds, through lists and kinds. */
export function rowsWithin(field: Field): readonly RowDescription[] {
  switch (field.kind) {
    case 'row':
      return [field.row];
    case 'one-of':
      return Object.values(field.rows);
    case 'list':
    case 'record':
      return rowsWithin(field.of);
    default:
      return [];
  }
}
