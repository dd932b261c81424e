import type { FieldProblem } from '../../../shared/problems/field-problem.js';
import { learnTime } from '../kept/clock.js';
import { heard, notHeard } from '../kept/signal.js';
import { whoUses } from '../kept/whose-phone.js';
import { remember } from './seen-rows.js';

export interface ProblemDocument {
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly problems?: readonly (FieldProblem & { readonly text: string })[];
  /** Of a save that would have overwritten somebody else’s: the row as it is now. */
  readonly current?: unknown;
}

/** Of a problem: there is no signal, or the program does not run. */
export const NOT_REACHED = 0;
const NOT_REACHED_WORDS =
  'Broodfold is not answering: there is no signal, or it does not run. Nothing was saved.';

/** An answer of the service that says what is wrong, in words and by field. */
export class ApiError extends Error {
  constructor(readonly problem: ProblemDocument) {
    super(problem.detail);
    this.name = 'ApiError';
  }
}

/** @param signal ends it; what works on the answer is told */
export const getJson = <T>(path: string, signal?: AbortSignal): Promise<T> =>
  send<T>('GET', path, signal ? { signal } : {});
/** What a path holds, and when it was asked for by the service's clock. */
export interface Dated<T> {
  readonly data: T;
  readonly askedAt: string;
  /** What the service calls this state of it, where it has a name. */
  readonly mark?: string;
  /** The state beside which this says only what has changed. */
  readonly since?: string;
}
export async function getDated<T>(path: string, signal?: AbortSignal): Promise<Dated<T>> {
  const response = await answerTo('GET', path, signal ? { signal } : {});
  const data = remember((await response.json()) as T);
  const [mark, since] = ['mark', 'since'].map((name) => response.headers.get(name) ?? undefined);
  return {
    data,
    askedAt: response.headers.get('asked-at') ?? new Date(0).toISOString(),
    ...(mark === undefined ? {} : { mark }),
    ...(since === undefined ? {} : { since }),
  };
}
export const postJson = <T>(path: string, body?: unknown): Promise<T> =>
  send<T>('POST', path, body === undefined ? {} : asJson(body));
export const putJson = <T>(path: string, body: unknown): Promise<T> =>
  send<T>('PUT', path, asJson(body));
/** Deletes a row; with its version, only when nobody has changed it since. */
export const remove = (path: string, version?: number): Promise<void> =>
  send<void>(
    'DELETE',
    path,
    version === undefined ? {} : { headers: { 'if-match': `"${version}"` } },
  );
export const putCsv = <T>(path: string, text: string): Promise<T> =>
  send<T>('PUT', path, { headers: { 'content-type': 'text/csv' }, body: text });

export const postFile = <T>(path: string, file: Blob): Promise<T> =>
  send<T>('POST', path, { headers: { 'content-type': 'application/zip' }, body: file });

export const putPhoto = (path: string, jpeg: Blob): Promise<void> =>
  send<void>('PUT', path, { headers: { 'content-type': 'image/jpeg' }, body: jpeg });

/** A file of the service, and the name it gives it. */
export async function getFile(path: string): Promise<{ file: Blob; name: string }> {
  const response = await answerTo('GET', path);
  const given = response.headers.get('content-disposition') ?? '';
  return { file: await response.blob(), name: /filename="([^"]+)"/.exec(given)?.[1] ?? 'farm.zip' };
}

const asJson = (body: unknown): RequestInit => ({
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});

async function send<T>(method: string, path: string, request?: RequestInit): Promise<T> {
  const text = await (await answerTo(method, path, request)).text();
  return text === '' ? (undefined as T) : remember(JSON.parse(text) as T);
}

async function answerTo(
  method: string,
  path: string,
  request: RequestInit = {},
): Promise<Response> {
  let response: Response;
  try {
    response = await fetch(`/api${path}`, { method, ...withTeller(method, path, request) });
  } catch {
    // Whoever left does not know whether there is signal.
    if (!request.signal?.aborted) notHeard();
    throw new ApiError({
      title: 'Not reached',
      status: NOT_REACHED,
      detail: NOT_REACHED_WORDS,
    });
  }
  const askedAt = response.headers.get('asked-at');
  // Anything else in the way, such as the page of a guest network, is not the service.
  if (askedAt !== null) {
    learnTime(askedAt);
    heard();
  }
  if (!response.ok) throw new ApiError(problemIn(await response.text(), response));
  return response;
}

/** A change says whose phone it comes from, so that the record can name them. */
function withTeller(method: string, path: string, request: RequestInit): RequestInit {
  const farmId = /^\/farms\/([^/]+)\//.exec(path)?.[1];
  const who = method === 'GET' || farmId === undefined ? undefined : whoUses(farmId);
  if (who === undefined) return request;
  const headers = new Headers(request.headers);
  headers.set('said-by', encodeURIComponent(who));
  return { ...request, headers };
}

function problemIn(text: string, response: Response): ProblemDocument {
  try {
    return JSON.parse(text) as ProblemDocument;
  } catch {
    return {
      title: response.statusText,
      status: response.status,
      detail: `The service answered ${response.status}.`,
    };
  }
}
