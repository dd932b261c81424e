import { expect } from '@jest/globals';
import axe, { type AxeResults, type RunOptions } from 'axe-core';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';
import { startBuilt, type BuiltProgram } from './built-program.js';
import { playwright, sharedHouse } from './outside-browser.js';

const { chromium, errors } = playwright;

export const SIZES = {
  desktop: { width: 1280, height: 900 },
  phone: { width: 390, height: 844 },
} as const;

/** Other tests take the processors meanwhile. */
const WAIT_MS = 30_000;

/** The built program, started as a user starts it, and a browser to use it with. */
export class House {
  /** Windows that are open, and the test that opened them. */
  private open: { readonly by: string | undefined; readonly windows: BrowserContext[] } = {
    by: undefined,
    windows: [],
  };

  private constructor(
    readonly url: string,
    private readonly browser: Browser,
    private readonly leave: () => Promise<unknown>,
    private readonly own?: BuiltProgram,
  ) {}

  /** @param clockFile a program of its own is so many milliseconds ahead as the file says */
  static async open(clockFile?: string): Promise<House> {
    const { url, browserAddress } = await sharedHouse();
    const browser = await chromium.connect(browserAddress);
    if (clockFile === undefined) return new House(url, browser, () => withoutFarms(url));
    const own = await startBuilt(clockFile);
    return new House(own.url, browser, own.stop, own);
  }

  /** Kills the program of its own, and starts it again where it was. */
  async kill(): Promise<void> {
    if (!this.own) throw new Error('The program is shared: others use it.');
    await this.own.kill();
  }

  /**
   * A page of its own, with errors collected; `expectNoErrors` says whether there were any. Only where
   * it is asked to does it keep the program for days without signal: that is fetched whole each time.
   */
  async page(
    size: keyof typeof SIZES,
    { locale = 'en-US', isKept = false } = {},
  ): Promise<{ page: Page; errors: string[] }> {
    await this.closeWindowsOfOthers();
    const context = await this.browser.newContext({
      viewport: SIZES[size],
      locale,
      timezoneId: 'America/New_York',
      reducedMotion: 'reduce',
      serviceWorkers: isKept ? 'allow' : 'block',
    });
    this.open.windows.push(context);
    const page = await context.newPage();
    page.setDefaultTimeout(WAIT_MS);
    lookOften(page);
    const errorsSeen: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error' && !/status of 4(00|09)/.test(message.text()))
        errorsSeen.push(message.text());
    });
    page.on('pageerror', (error) => errorsSeen.push(error.message));
    return { page, errors: errorsSeen };
  }

  /** What an earlier test looked at goes on asking the service, and takes the processors. */
  private async closeWindowsOfOthers(): Promise<void> {
    const by = expect.getState().currentTestName;
    if (by === this.open.by) return;
    const { windows } = this.open;
    this.open = { by, windows: [] };
    await Promise.all(windows.map((window) => window.close()));
  }

  /** Address of a fresh sample farm's pages, without the way there. */
  async sampleFarm(): Promise<string> {
    const made = await fetch(`${this.url}/api/farms/sample`, { method: 'POST' });
    const { id } = (await made.json()) as { id: string };
    return `${this.url}/farm/${id}`;
  }

  /** Makes a row through the API, and gives it as it was saved. */
  async post<T>(path: string, body: object): Promise<T> {
    const answer = await fetch(`${this.url}/api${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    if (answer.status !== 201) throw new Error(`POST ${path}: ${await answer.text()}`);
    return (await answer.json()) as T;
  }

  async close(): Promise<void> {
    await this.browser.close();
    await this.leave();
  }
}

/** The next file of tests finds the program as it was when it was new. */
async function withoutFarms(url: string): Promise<void> {
  const farms = (await (await fetch(`${url}/api/farms`)).json()) as { id: string }[];
  await Promise.all(farms.map(({ id }) => fetch(`${url}/api/farms/${id}`, { method: 'DELETE' })));
}

/** Opens a part of a screen that is shut to its heading. */
export async function unfold(page: Page, heading: string): Promise<void> {
  await page
    .locator('details:not([open]) > summary')
    .filter({ has: page.getByRole('heading', { name: heading, exact: true }) })
    .click();
}

/** How long the driver looks before it would look only twice a second. */
const OFTEN_MS = 400;

/**
 * Lets all waits of a page look twenty times a second. The driver looks twice a second after the first
 * quarter, and most screens stand after a third.
 */
function lookOften(page: Page): void {
  const locator = Object.getPrototypeOf(page.locator('html')) as Locator;
  const waitFor = locator.waitFor as Locator['waitFor'] & { isOften?: true };
  if (waitFor.isOften) return;
  const often: typeof waitFor = async function (this: Locator, options = {}) {
    const until = performance.now() + (options.timeout ?? WAIT_MS);
    for (;;) {
      const left = until - performance.now();
      try {
        return await waitFor.call(this, { ...options, timeout: Math.min(OFTEN_MS, left) });
      } catch (error) {
        if (!(error instanceof errors.TimeoutError) || left <= OFTEN_MS) throw error;
      }
    }
  };
  often.isOften = true;
  locator.waitFor = often;
}

/** Opens every part of a batch's story, as somebody does who reads all of it. */
export async function openParts(page: Page): Promise<void> {
  await page.locator('.story-fold summary').first().waitFor();
  const shut = page.locator('.story-fold > details:not([open]) > summary');
  while (0 < (await shut.count())) await shut.first().click();
}

/** Opens what stands behind a touch, by the words of its line; what is open stays so. */
export async function openMore(page: Page, words: string | RegExp): Promise<void> {
  const line = page.locator('summary', { hasText: words }).first();
  await line.waitFor();
  if (!(await line.evaluate((each) => each.parentElement!.hasAttribute('open'))))
    await line.click();
}

/** Goes where a link of the program would lead: nothing is fetched and built anew. */
export const walkTo = (page: Page, url: string): Promise<void> =>
  page.evaluate(`history.pushState(null, '', ${JSON.stringify(url)})`);

/**
 * What is wrong with a screen that stands at the size of a phone: serious findings of axe-core, and
 * whether it must be slid sideways, there and at a desk. What stands in it is the same at a desk, so
 * that axe-core looks at it there only where its frame differs.
 */
export async function wrongAtBothSizes(
  page: Page,
  { isOwnAtADesk = false } = {},
): Promise<string[]> {
  const wrong = [...(await seriousFindings(page)), ...(await slidSideways(page))];
  await page.setViewportSize(SIZES.desktop);
  wrong.push(...(isOwnAtADesk ? await seriousFindings(page) : []), ...(await slidSideways(page)));
  await page.setViewportSize(SIZES.phone);
  return wrong;
}

async function slidSideways(page: Page): Promise<string[]> {
  // Whatever is drawn anew for a size is drawn then.
  await page.waitForTimeout(100);
  const { isTooWide, at } = await page.evaluate<{ isTooWide: boolean; at: number }>(
    '({ isTooWide: document.documentElement.scrollWidth > innerWidth + 1, at: innerWidth })',
  );
  return isTooWide ? [`the page scrolls sideways at ${at} px`] : [];
}

const MARK_LOOKS = readFileSync(join(PROJECT_ROOT, 'test/support/mark-looks.js'), 'utf8');
/** axe-core that looks at contrast only where `mark-looks.js` says. */
const AXE = `${axe.source};
axe.configure({ rules: [{ id: 'color-contrast', selector: '[data-look]' }] });`;
const RUN_OPTIONS: RunOptions = {
  resultTypes: ['violations'],
  // Never serious.
  rules: { region: { enabled: false } },
};

/** Serious and critical findings of axe-core on a page, or on a part of it. There are no frames. */
export async function seriousFindings(page: Page, within = 'html'): Promise<string[]> {
  if (await page.evaluate('!window.axe')) await page.evaluate(AXE);
  await page.evaluate(`(${MARK_LOOKS.replace(/;\s*$/, '')})()`);
  const { violations } = await page.evaluate<AxeResults>(
    `axe.run(${JSON.stringify(within)}, ${JSON.stringify(RUN_OPTIONS)})`,
  );
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id}: ${node.target.join(' ')} ${node.failureSummary ?? ''}`),
    );
}

/**
 * Waits until what a page works out holds, also where that takes it a while: the driver's own wait takes
 * a promise for an answer.
 */
export async function until(page: Page, expression: string, waitMs = WAIT_MS): Promise<void> {
  const end = performance.now() + waitMs;
  while (!(await page.evaluate<boolean>(expression))) {
    if (end < performance.now()) throw new Error(`This never held: ${expression}`);
    await page.waitForTimeout(50);
  }
}

/** Waits until the worker holds the page, and the day is kept with what may be needed of the farm. */
export async function isKept(
  page: Page,
  answers: readonly string[] = ['/today', '/picture'],
): Promise<void> {
  await page.evaluate('navigator.serviceWorker.ready');
  await page.waitForFunction('navigator.serviceWorker.controller !== null');
  await until(
    page,
    `(async () => {
    const open = indexedDB.open('broodfold-answers');
    const db = await new Promise((done) => { open.onsuccess = () => done(open.result); });
    const all = db.transaction('answers').objectStore('answers').getAllKeys();
    const names = await new Promise((done) => { all.onsuccess = () => done(all.result); });
    db.close();
    return ${JSON.stringify(answers)}.every((what) => names.some((name) => name.endsWith(what)));
  })()`,
  );
}
