import type { NextFunction, Request, Response } from 'express';

const DAY_OF_FARM = /^\/farm\/([0-9a-f-]{36})\/today$/;

/**
 * A browser asks for a day and its farm as soon as their page is sent to it: when the page's script
 * has run, both are there. They are what the page asks for itself, and are asked for once.
 */
export function askedAhead(request: Request, response: Response, next: NextFunction): void {
  const farmId = DAY_OF_FARM.exec(request.path)?.[1];
  if (farmId !== undefined)
    response.setHeader(
      'Link',
      [`/api/farms/${farmId}/today`, `/api/farms/${farmId}`].map(
        (path) => `<${path}>; rel=preload; as=fetch; crossorigin=anonymous`,
      ),
    );
  next();
}
