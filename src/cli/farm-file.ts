import { readFileSync } from 'node:fs';
import { parse, printParseErrorCode, type ParseError } from 'jsonc-parser';
import type { Batch } from '../../shared/farm/batch.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { problemsOfChoices } from '../../shared/plan/check-batch.js';
import type { Tables } from '../../shared/tables/tables.js';
import { checkDto } from '../common/check-dto.js';
import { FarmDocumentDto } from '../picture/farm-document.dto.js';
import { pictureOfDocument } from '../picture/farm-document.js';

/**
 * The picture of the farm that a file describes, as of today where the file names no day.
 *
 * @throws FieldError when the file cannot be read, or something in it cannot be used
 */
export function pictureOfFile(file: string, tables: Tables): FarmPicture {
  const document = parsed(file);
  try {
    return pictureOfDocument(checkDto(FarmDocumentDto, document), tables, Date.now());
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    throw new FieldError([...error.problems, ...alsoWrong(document, tables, error.problems)]);
  }
}

/** Choices that no table has: they are looked up late, and would come one run after the rest. */
function alsoWrong(
  document: unknown,
  tables: Tables,
  found: readonly FieldProblem[],
): readonly FieldProblem[] {
  const batches = (document as { batches?: unknown } | null)?.batches;
  if (!Array.isArray(batches)) return [];
  return batches.flatMap((batch: unknown, i) =>
    typeof batch !== 'object' || batch === null || Array.isArray(batch)
      ? []
      : problemsOfChoices({ batch: batch as Batch, tables })
          .map((problem) => ({
            ...problem,
            field: problem.field.replace(/^batch\b/, `batches.${i}`),
          }))
          .filter(({ field }) => !found.some((other) => other.field === field)),
  );
}

function parsed(file: string): unknown {
  const errors: ParseError[] = [];
  const text = textOf(file);
  const farm: unknown = parse(text, errors, { allowTrailingComma: true });
  const first = errors[0];
  if (first) {
    const line = text.slice(0, first.offset).split('\n').length;
    throw new FieldError([
      {
        field: `${file} line ${line}`,
        code: 'unreadable',
        given: plainWords(printParseErrorCode(first.error)),
        fix: 'Check for a missing quote, comma or bracket near that line. A farm is JSON and may hold comments.',
      },
    ]);
  }
  return farm;
}

/** ValueExpected → a value is expected there. */
function plainWords(code: string): string {
  const words = code.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
  const expected = /^(.*) expected$/.exec(words)?.[1];
  return expected === undefined ? words : `a ${expected} is expected there`;
}

function textOf(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    const isMissing = (error as NodeJS.ErrnoException).code === 'ENOENT';
    throw new FieldError([
      {
        field: file,
        code: 'unreadable',
        given: undefined,
        fix: `${isMissing ? 'There is no such file. ' : ''}Give the path of a farm.`,
      },
    ]);
  }
}
