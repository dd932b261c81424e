import type { NextFunction, Request, Response } from 'express';

/**
 * Lets only this program's own page use the API from a browser.
 *
 * There are no passwords, so a page of another site must not be able to write here (its Origin
 * differs), to read (a browser says that the request comes from elsewhere), nor to reach this
 * machine under a name of its own (DNS rebinding: the Host differs). Requests of scripts, which
 * have neither an Origin nor a Sec-Fetch-Site, pass when they use a name that is allowed.
 */
export function sameOrigin(isAllowedHost: (host: string) => boolean) {
  return (request: Request, response: Response, next: NextFunction): void => {
    const refusal = refusalOf(request, isAllowedHost);
    if (refusal === undefined) return next();
    response
      .status(403)
      .type('application/problem+json')
      .send(
        JSON.stringify({
          type: 'about:blank',
          title: 'Forbidden',
          status: 403,
          detail: refusal,
          instance: request.originalUrl,
        }),
      );
  };
}

function refusalOf(
  { headers, originalUrl }: Request,
  isAllowedHost: (host: string) => boolean,
): string | undefined {
  const host = headers.host ?? '';
  if (!isAllowedHost(host)) {
    const name = JSON.stringify(host.slice(0, 100));
    return `This program does not answer to the name ${name}. Open the address that it printed, or name it in the setting ALLOWED_HOSTS when it is started.`;
  }
  const { origin } = headers;
  const isStrangeOrigin = origin !== undefined && hostOf(origin) !== host.toLowerCase();
  const site = headers['sec-fetch-site'];
  const isFromElsewhere = site !== undefined && site !== 'same-origin' && site !== 'none';
  if (isStrangeOrigin || (isFromElsewhere && originalUrl.startsWith('/api')))
    return 'Another site may not use this program. Open the address that it printed.';
  return undefined;
}

function hostOf(origin: string): string {
  try {
    return new URL(origin).host;
  } catch {
    return '';
  }
}
