import type * as Playwright from 'playwright-core';

/** What `environment.mjs` hands in to tests of the page, as `outside.ts` has it of the service. */
const outside = (globalThis as unknown as { outside: Outside }).outside;

interface Outside {
  readonly playwright: () => Promise<typeof Playwright>;
  readonly sharedHouse: () => Promise<{ readonly url: string; readonly browserAddress: string }>;
}

/** What drives the browser. */
export const playwright = await outside.playwright();

/** The built program and a browser, which all files of tests of a process use, one after the other. */
export const { sharedHouse } = outside;
