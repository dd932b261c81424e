import { AsyncLocalStorage } from 'node:async_hooks';
import type { NextFunction, Request, Response } from 'express';

/** Who a piece of work is done for. */
export interface Asker {
  /** Says when nobody waits for the answer any more. */
  readonly signal: AbortSignal;
  /** Who they say they are, where a phone was told whose it is. */
  readonly saidBy?: string | undefined;
  /** Whose turn of the threads it takes: a farm, or all who ask without one. */
  readonly turn: string;
}

/** The reason of a signal whose asker has gone. */
export class AskerGone extends Error {
  constructor() {
    super('Whoever asked has gone.');
    this.name = 'AskerGone';
  }
}

const askers = new AsyncLocalStorage<Asker>();
const NOBODY: Asker = { signal: new AbortController().signal, turn: '' };

/** The asker of the work that is being done; outside of requests one who never goes. */
export const askerNow = (): Asker => askers.getStore() ?? NOBODY;

/** Does work for an asker: everything that it calls finds this one with `askerNow`. */
export const workFor = <T>(asker: Asker, work: () => T): T => askers.run(asker, work);

/** Makes every request an asker, who has gone when the connection closes before the answer is sent. */
export function requestsAsAskers(request: Request, response: Response, next: NextFunction): void {
  workFor(new RequestAsker(request.originalUrl, response, nameIn(request)), next);
}

/** Most requests are answered without anybody asking for the signal, so it is made when asked for. */
class RequestAsker implements Asker {
  private controller: AbortController | undefined;

  constructor(
    private readonly url: string,
    private readonly response: Response,
    readonly saidBy: string | undefined,
  ) {}

  get turn(): string {
    return /^\/api\/farms\/([^/?]+)/.exec(this.url)?.[1] ?? '';
  }

  get signal(): AbortSignal {
    return (this.controller ??= this.watched()).signal;
  }

  private watched(): AbortController {
    const controller = new AbortController();
    const close = (): void => {
      if (!this.response.writableFinished) controller.abort(new AskerGone());
    };
    if (this.response.closed) close();
    else this.response.once('close', close);
    return controller;
  }
}

/** A name as long as one of a person can be. */
const LONGEST_NAME = 80;

/** The name in a request, as the page writes it; what is no name of a person is none. */
function nameIn(request: Request): string | undefined {
  const sent = request.get('said-by');
  if (sent === undefined) return undefined;
  try {
    const name = decodeURIComponent(sent).trim();
    return 0 < name.length && name.length <= LONGEST_NAME ? name : undefined;
  } catch {
    return undefined;
  }
}
