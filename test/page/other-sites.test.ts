import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';
import { chromiumOptions } from '../support/chromium.js';
import { playwright } from '../support/outside-browser.js';
import { startProgram, type Program } from '../support/program.js';

const FARM_NAME = 'Thistledown (sample)';
/** Names of other sites, which lead to this machine as after DNS rebinding. */
const REBOUND = 'evil.example';

/** The attack on an address, as a script for a page of a browser. */
const attackOn = (target: string): string =>
  `(${ATTACK.replace(/;\s*$/, '')})(${JSON.stringify(target)})`;
const ATTACK = readFileSync(join(PROJECT_ROOT, 'test/support/attack.js'), 'utf8');

describe.each([
  ['this computer only', '127.0.0.1'],
  ['the network', '0.0.0.0'],
])('pages of other sites, and a program open to %s', (_what, HOST) => {
  let folder: string;
  let program: Program;
  let port: string;
  let site: Server;
  let sitePort: number;
  let browser: Browser;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'broodfold-sites-'));
    program = await startProgram({ DATA_DIR: folder, HOST });
    port = new URL(program.url).port;
    await fetch(`http://127.0.0.1:${port}/api/farms/sample`, { method: 'POST' });
    site = createServer((_request, response) => {
      response.setHeader('content-type', 'text/html').end('<title>Hens</title><body>Hens');
    });
    await new Promise((resolve) => site.listen(0, () => resolve(undefined)));
    sitePort = (site.address() as AddressInfo).port;
    browser = await playwright.chromium.launch(
      chromiumOptions([`--host-resolver-rules=MAP ${REBOUND} 127.0.0.1`]),
    );
  }, 60_000);
  afterAll(async () => {
    await browser.close();
    site.close();
    await program.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  const farms = async (): Promise<string> =>
    (await fetch(`http://127.0.0.1:${port}/api/farms`)).text();

  it.each(['127.0.0.1', 'localhost', REBOUND])(
    'read and change nothing from %s on another port',
    async (name) => {
      const before = await farms();
      expect(before).toContain(FARM_NAME);
      const page = await browser.newPage();
      await page.goto(`http://${name}:${sitePort}/`);
      for (const target of [`http://127.0.0.1:${port}`, `http://localhost:${port}`]) {
        const read = await page.evaluate<string[]>(attackOn(target));
        expect(read.filter((text) => !text.startsWith('403'))).toEqual([]);
        expect(read.join()).not.toContain(FARM_NAME);
      }
      expect(await farms()).toBe(before);
      await page.close();
    },
    60_000,
  );

  it('read and change nothing when their name is made to lead here (DNS rebinding)', async () => {
    const before = await farms();
    const page = await browser.newPage();
    // After rebinding the address of the page is that of the program: same origin to the browser.
    const response = await page.goto(`http://${REBOUND}:${port}/`);
    expect(response!.status()).toBe(403);
    const read = await page.evaluate<string[]>(attackOn(`http://${REBOUND}:${port}`));
    expect(read.length).toBeGreaterThan(0);
    expect(read.filter((text) => !text.startsWith('403'))).toEqual([]);
    expect(await farms()).toBe(before);
    await page.close();
  }, 60_000);

  it('stand in nobody’s way: the program’s own page reads and writes', async () => {
    const page = await browser.newPage();
    await page.goto(`http://localhost:${port}/api/farms`);
    expect(await page.textContent('body')).toContain(FARM_NAME);
    const status = await page.evaluate(
      async () => (await fetch('/api/farms/sample', { method: 'POST' })).status,
    );
    expect(status).toBe(201);
    await page.close();
  }, 60_000);
});
