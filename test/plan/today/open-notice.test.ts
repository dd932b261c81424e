import { describe, expect, it } from '@jest/globals';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { runInNewContext } from 'node:vm';
import { PROJECT_ROOT } from '../../../src/reference/load-tables.js';

const SCRIPT = readFileSync(join(PROJECT_ROOT, 'src/web/public/open-notice.js'), 'utf8');
const DAY = '/farm/1/today';

interface OpenPage {
  readonly path: string;
  /** It was loaded past the worker, which can do nothing but bring it to the front. */
  readonly isPast?: true;
}

/** What the worker does, in words, when a notice of a farm is touched while such pages are open. */
async function touched(...open: readonly OpenPage[]): Promise<readonly string[]> {
  const done: string[] = [];
  const page = ({ path, isPast }: OpenPage): object => ({
    url: `http://farm.lan${path}`,
    navigate: async (href: string) => {
      if (isPast) throw new TypeError('This client is not controlled.');
      done.push(`${path} led to ${href}`);
      return page({ path: href });
    },
    focus: async () => void done.push(`${path} in front`),
  });
  let pressed: ((event: object) => void) | undefined;
  let work: Promise<unknown> | undefined;
  const self = {
    addEventListener: (_name: string, then: typeof pressed) => (pressed = then),
    clients: {
      matchAll: async () => open.map(page),
      openWindow: async (href: string) => void done.push(`${href} opened`),
    },
  };
  runInNewContext(SCRIPT, { self, URL });
  pressed!({
    notification: { data: { href: DAY }, close: () => done.push('notice gone') },
    waitUntil: (until: Promise<unknown>) => (work = until),
  });
  await work;
  return done;
}

describe('a touched notice', () => {
  it('opens the day of its farm where no page is open', async () => {
    expect(await touched()).toEqual(['notice gone', `${DAY} opened`]);
  });

  it('leads an open page there', async () => {
    expect(await touched({ path: '/farm/1/record' })).toEqual([
      ...['notice gone', `/farm/1/record led to ${DAY}`, `${DAY} in front`],
    ]);
  });

  it('brings the day to the front where it is open, and leads no other page away', async () => {
    expect(await touched({ path: '/farm/2/year' }, { path: DAY })).toEqual([
      ...['notice gone', `${DAY} in front`],
    ]);
  });

  it('opens the day where an open page was loaded past the worker', async () => {
    expect(await touched({ path: '/farm/1/record', isPast: true })).toEqual([
      ...['notice gone', `${DAY} opened`],
    ]);
  });
});
