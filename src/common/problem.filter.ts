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
}

/** Turns every error into a problem document. What is not foreseen is logged and never explained. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  private readonly logger = new Logger(ProblemFilter.name);

  catch(error: unknown, host: ArgumentsHost): void {
    const http = host.switchToHttp();
    const document = this.documentOf(error, http.getRequest<Request>().originalUrl);
    http
      .getResponse<Response>()
      .status(document.status)
      .type('application/problem+json')
      .send(JSON.stringify(document));
  }

  private documentOf(error: unknown, instance: string): ProblemDocument {
    if (error instanceof FieldError) {
      return {
        type: 'urn:broodfold:problem:fields',
        title: 'Some fields cannot be used',
        status: 400,
        detail: error.message.slice(0, 2000),
        instance,
        problems: error.problems
          .slice(0, 50)
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
    if (error instanceof HttpException) return plain(error.getStatus(), error.message, instance);
    this.logger.error(error instanceof Error ? error.stack : String(error));
    return plain(
      500,
      'Something went wrong here, and nothing was changed. The log of the service says more.',
      instance,
    );
  }
}

function plain(status: number, detail: string, instance: string): ProblemDocument {
  return { type: 'about:blank', title: STATUS_CODES[status] ?? 'Error', status, detail, instance };
}

/** A body that could not be read: the parser's own error, or the framework's wrapping of it. */
function bodyParserStatus(error: unknown): number | undefined {
  if (error instanceof HttpException) {
    const status = error.getStatus();
    const isUnread =
      status === 413 || status === 415 || (status === 400 && / JSON | in JSON/.test(error.message));
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
