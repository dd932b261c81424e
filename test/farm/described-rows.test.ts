import 'reflect-metadata';
import { describe, expect, it } from '@jest/globals';
import { Ajv, type ErrorObject, type ValidateFunction } from 'ajv';
import fc from 'fast-check';
import { isPlainDate } from '../../shared/calendar/plain-date.js';
import { problemsOfRow } from '../../shared/farm/check-row.js';
import type { RowDescription } from '../../shared/farm/field.js';
import { fieldAt } from '../../shared/farm/field-at.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { checkDto } from '../../src/common/check-dto.js';
import { dtoOf, sentNames } from '../../src/common/dto-of.js';
import { schemaOf } from '../../src/common/schema-of.js';
import { DESCRIPTIONS } from '../support/descriptions.js';
import { rowOf, spoiled, spoilingsOf } from '../support/described-rows.js';

const RUNS = { numRuns: 40, seed: 20261126 };

const schemas = Object.fromEntries(
  DESCRIPTIONS.map((described) => [
    sentNames(described),
    {
      type: 'object',
      properties: Object.fromEntries(
        Object.entries(described.fields).map(([name, field]) => [name, schemaOf(field, sentNames)]),
      ),
      required: Object.keys(described.fields).filter((name) => !described.fields[name]!.isOptional),
    },
  ]),
);
/** RFC 3339, section 5.6, as far as the fields of rows go. */
const DATE_TIME = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/;
const formats = { date: isPlainDate, 'date-time': DATE_TIME };
const ajv = new Ajv({ strict: false, allErrors: true, formats });
const document = ajv.addSchema({ $id: 'api', components: { schemas } });

const schemaCheckOf = (described: RowDescription): ValidateFunction =>
  document.getSchema(`api#/components/schemas/${sentNames(described)}`)!;

/** Paths that a JSON schema complains about, as the fields of problems are written. */
const pathsOf = (errors: readonly ErrorObject[] | null | undefined): string[] =>
  (errors ?? []).map(({ instancePath, keyword, params }) =>
    [
      ...instancePath.split('/').slice(1),
      ...(keyword === 'required'
        ? [String((params as { missingProperty: string }).missingProperty)]
        : []),
    ].join('.'),
  );

function problemsOfDto(described: RowDescription, row: object): readonly FieldProblem[] {
  try {
    checkDto(dtoOf(described), row);
    return [];
  } catch (error) {
    if (error instanceof FieldError) return error.problems;
    throw error;
  }
}

describe.each(DESCRIPTIONS.map((described) => [described.name, described] as const))(
  'a row described as %s',
  (_name, described) => {
    const schemaCheck = schemaCheckOf(described);

    it('passes the core, the DTO and the API document alike', () => {
      fc.assert(
        fc.property(rowOf(described), (row) => {
          schemaCheck(row);
          expect([
            ...problemsOfRow(described, row),
            ...problemsOfDto(described, row),
            ...(schemaCheck.errors ?? []),
          ]).toEqual([]);
        }),
        RUNS,
      );
    });

    it('is refused by all three at the same field when one value is spoiled', () => {
      const spoiledRow = rowOf(described)
        .map((row) => ({ row, spoilings: spoilingsOf(described, row) }))
        .filter(({ spoilings }) => 0 < spoilings.length)
        .chain(({ row, spoilings }) =>
          fc.constantFrom(...spoilings).map((spoiling) => ({ row, spoiling })),
        );
      fc.assert(
        fc.property(spoiledRow, ({ row, spoiling }) => {
          const wrong = spoiled(row, spoiling);
          const found = problemsOfRow(described, wrong);
          schemaCheck(wrong);
          const { path } = spoiling;
          // In one: an expectation takes longer than a row.
          expect({
            paths: found.map(({ field }) => field),
            ofDto: problemsOfDto(described, wrong),
            ofDocument: pathsOf(schemaCheck.errors)
              .filter((each) => each === path)
              .slice(0, 1),
            isFixSaid: /^[A-Z].*\.$/.test(found[0]?.fix ?? ''),
            isLabeled: /^[A-Z0-9]/.test(fieldAt(described, path)?.label ?? ''),
          }).toEqual({
            paths: [path],
            ofDto: found,
            ofDocument: [path],
            isFixSaid: true,
            isLabeled: true,
          });
        }),
        { ...RUNS, numRuns: 4 * RUNS.numRuns },
      );
    });

    it('is refused with a field that it does not have', () => {
      fc.assert(
        fc.property(rowOf(described), (row) => {
          const found = problemsOfRow(described, { ...row, color: 'red' });
          expect(found).toMatchObject([{ field: 'color', code: 'not-allowed', given: 'red' }]);
          expect(problemsOfDto(described, { ...row, color: 'red' })).toEqual(found);
          expect(problemsOfRow(described, { ...row, color: 'red' }, '', 'passed')).toEqual([]);
        }),
        { ...RUNS, numRuns: 5 },
      );
    });
  },
);
