import {
  Catch,
  HttpException,
  Logger,
  type ArgumentsHost,
  type ExceptionFilter,
} from '@nestjs/common';
import type { Request, Response } from 'express';
import { STATUS_CODES } from 'node:http';
import { ConflictError } from './expected-version.js';
import {
  describeProblem,
  givenForAnswer,
  FieldError,
  type FieldProblem,
} from '../../shared/problems/field-problem.js';
import { AskerGone } from './asker.js';
import { storageFaultOf, type StorageFault } from './storage-fault.js';

/** A problem document (RFC 9457) with the fields that are wrong, as data and in words. */
export interface ProblemDocument {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly instance: string;
  readonly problems?: readonly (FieldProblem & { readonly text: string })[];
  /** Of a save that would have overwritten a newer row: the row as it is now, and what was sent. */
  readonly current?: unknown;
  readonly yours?: unknown;
  /** How many there are, when not all are told. */
  readonly problemsInAll?: number;
}

const MOST_PROBLEMS = 50;

/** Turns every error into a problem document. What is not foreseen is logged and never explained. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  private readonly logger = new Logger(ProblemFilter.name);

  catch(error: unknown, host: ArgumentsHost): void {
    // There is nobody to tell.
    if (error instanceof AskerGone) return;
    const http = host.switchToHttp();
    const document = this.documentOf(error, http.getRequest<Request>().originalUrl);
    http
      .getResponse<Response>()
      .status(document.status)
      .type('application/problem+json')
      .send(JSON.stringify(document));
  }

  private documentOf(given: unknown, instance: string): ProblemDocument {
    const error = withinOf(given);
    if (error instanceof FieldError) {
      return {
        type: 'urn:broodfold:problem:fields',
        title: 'Some fields cannot be used',
        status: 400,
        detail: error.message.slice(0, 2000),
        instance,
        ...(MOST_PROBLEMS < error.problems.length ? { problemsInAll: error.problems.length } : {}),
        problems: error.problems
          .slice(0, MOST_PROBLEMS)
          .map((p) => ({ ...p, given: givenForAnswer(p.given), text: describeProblem(p) })),
      };
    }
    if (error instanceof ConflictError) {
      const { current, yours } = error;
      return {
        type: 'urn:broodfold:problem:conflict',
        title: 'Somebody else changed this',
        status: 409,
        detail: error.message,
        instance,
        current,
        ...(yours === undefined ? {} : { yours }),
      };
    }
    const status = bodyParserStatus(error);
    if (status !== undefined) return plain(status, bodyParserText(status), instance);
    if (error instanceof HttpException) return plain(error.getStatus(), wordsOf(error), instance);
    this.logger.error(error instanceof Error ? error.stack : String(error));
    const fault = storageFaultOf(error);
    if (fault)
      return { ...plain(...STORAGE[fault], instance), type: `urn:broodfold:problem:${fault}` };
    return plain(
      500,
      'Something went wrong here, and nothing was changed. The log of the service says more.',
      instance,
    );
  }
}

/** What stands in the way when nothing can be kept or found, and what to do about it. */
const STORAGE: Readonly<Record<StorageFault, readonly [status: number, detail: string]>> = {
  full: [
    507,
    'The disk is full, or takes no more for this program. Nothing was saved. Free some space and save again; what is there can still be read.',
  ],
  damaged: [
    500,
    'The database is damaged, and this could not be read or saved. Stop the program, keep the files of the data folder, and bring back your last copy.',
  ],
  'not-a-database': [
    500,
    'The file of the database was put in place of another while the program ran. Stop the program and bring back your last copy.',
  ],
  'read-only': [
    503,
    'The database may only be read. Nothing was saved. Give this program the right to write in the data folder, and save again.',
  ],
  busy: [503, 'Another program is using the database. Nothing was saved. Save again in a moment.'],
  lost: [
    503,
    'The database cannot be reached. Nothing was saved. Start it, or see that its disk and network are there, and try again: the program goes on by itself.',
  ],
  refused: [
    503,
    'The database no longer lets this program in. Nothing was saved. Check user and rights of the database.',
  ],
};

function plain(status: number, detail: string, instance: string): ProblemDocument {
  return { type: 'about:blank', title: STATUS_CODES[status] ?? 'Error', status, detail, instance };
}

const isOfAddress = (message: string): boolean => message.startsWith('Failed to decode');

/** The framework wraps what is refused while a body is still being read. */
const withinOf = (error: unknown): unknown =>
  error instanceof HttpException && error.cause instanceof FieldError ? error.cause : error;

/** The words of an error, those of the framework put into ours. */
function wordsOf(error: HttpException): string {
  const { message } = error;
  if (isOfAddress(message))
    return 'The address holds a % that stands for no letter. Write a % itself as %25.';
  const nowhere = /^Cannot ([A-Z]+) /.exec(message)?.[1];
  return nowhere === undefined
    ? message
    : `There is nothing here to ${nowhere}. The addresses there are stand in /api/openapi.json.`;
}

/** A body that could not be read: the parser's own error, or the framework's wrapping of it. */
function bodyParserStatus(error: unknown): number | undefined {
  if (error instanceof HttpException) {
    const status = error.getStatus();
    // Here nothing throws a plain 400: it is a SyntaxError of the parser, or of the address.
    const isUnread =
      status === 413 || status === 415 || (status === 400 && !isOfAddress(error.message));
    return isUnread ? status : undefined;
  }
  if (typeof error !== 'object' || error === null || !('status' in error)) return undefined;
  const { status } = error;
  return typeof status === 'number' && 400 <= status && status < 500 ? status : undefined;
}

function bodyParserText(status: number): string {
  if (status === 413)
    return 'The body is larger than this address takes. Send JSON up to 1 MB, or weather as CSV up to 12 MB.';
  if (status === 415) return 'The body’s encoding or character set is not known here. Send UTF-8.';
  return 'The body is not well-formed JSON. Check for a missing quote, comma or bracket.';
}
