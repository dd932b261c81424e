import type { NextFunction, Request, Response } from 'express';

const LOOPBACK = new Set(['localhost', '127.0.0.1', '[::1]']);

/**
 * Lets only this program's own page use the API from a browser.
 *
 * There are no passwords, so a page of another site must not be able to write here (its Origin
 * differs), nor to reach the loopback address under a name of its own (DNS rebinding: the Host
 * differs). Requests without an Origin, such as those of scripts, pass.
 */
export function sameOrigin(listensOnLoopback: boolean) {
  return ({ headers, originalUrl }: Request, response: Response, next: NextFunction): void => {
    const host = headers.host ?? '';
    const isStrangeHost = listensOnLoopback && !LOOPBACK.has(host.replace(/:\d+$/, ''));
    const isStrangeOrigin = headers.origin !== undefined && hostOf(headers.origin) !== host;
    if (!isStrangeHost && !isStrangeOrigin) return next();
    response
      .status(403)
      .type('application/problem+json')
      .send(
        JSON.stringify({
          type: 'about:blank',
          title: 'Forbidden',
          status: 403,
          detail: isStrangeHost
            ? 'This program answers only under localhost. Open the address that it printed.'
            : 'Another site may not use this program. Open the address that it printed.',
          instance: originalUrl,
        }),
      );
  };
}

function hostOf(origin: string): string {
  try {
    return new URL(origin).host;
  } catch {
    return '';
  }
}
