import { AsyncLocalStorage } from 'node:async_hooks';
import type { NextFunction, Request, Response } from 'express';

/** Who a piece of work is done for. */
export interface Asker {
  /** Says when nobody waits for the answer any more. */
  readonly signal: AbortSignal;
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
  const controller = new AbortController();
  response.once('close', () => {
    if (!response.writableFinished) controller.abort(new AskerGone());
  });
  const turn = /^\/api\/farms\/([^/?]+)/.exec(request.originalUrl)?.[1] ?? '';
  workFor({ signal: controller.signal, turn }, next);
}
