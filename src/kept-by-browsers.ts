import type { ServerResponse } from 'node:http';
import { basename, dirname } from 'node:path';

/** Files of the page here are named for what is in them: with anything else in them they are others. */
const NAMED_FOR_CONTENT = 'assets';

/** Lets browsers keep such files for good, so that a visit asks again only for the page itself. */
export function keptByBrowsers(response: ServerResponse, path: string): void {
  if (basename(dirname(path)) === NAMED_FOR_CONTENT)
    response.setHeader('Cache-Control', 'public, max-age=31536000, immutable');
}
