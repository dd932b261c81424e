import { afterAll, beforeAll, expect, it, jest } from '@jest/globals';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';
import { chromiumOptions } from '../support/chromium.js';
import { playwright } from '../support/outside-browser.js';
import { seriousFindings, SIZES } from '../support/page.js';

jest.setTimeout(240_000);

const TYPES: Record<string, string> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.woff2': 'font/woff2',
};

let folder: string;
let server: Server;
let browser: Browser;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'broodfold-look-'));
  execFileSync(process.execPath, [
    join(PROJECT_ROOT, 'node_modules/vite/bin/vite.js'),
    ...['build', join(PROJECT_ROOT, 'test/support/look')],
    ...['--outDir', folder, '--emptyOutDir', '--logLevel', 'error', '--minify', 'false'],
  ]);
  server = createServer((request, response) => {
    const path = request.url === '/' ? '/index.html' : request.url!;
    try {
      response.setHeader('content-type', TYPES[extname(path)] ?? 'application/octet-stream');
      response.end(readFileSync(join(folder, path)));
    } catch {
      response.statusCode = 404;
      response.end();
    }
  }).listen(0, '127.0.0.1');
  browser = await playwright.chromium.launch(chromiumOptions());
});
afterAll(async () => {
  await browser.close();
  server.close();
  rmSync(folder, { recursive: true, force: true });
});

it('has nothing in its style sheets that phones of 2023 cannot read', () => {
  const assets = join(PROJECT_ROOT, 'dist/web/assets');
  const sheets = readdirSync(assets).filter((name) => name.endsWith('.css'));
  expect(sheets.length).toBeGreaterThan(5);
  for (const name of sheets)
    expect(readFileSync(join(assets, name), 'utf8')).not.toMatch(/light-dark\(/);
});

it.each([
  ['light', 'phone'],
  ['dark', 'phone'],
  ['light', 'desktop'],
  ['dark', 'desktop'],
] as const)('every component can be read and pressed, %s, %s', async (colorScheme, size) => {
  const context = await browser.newContext({ viewport: SIZES[size], colorScheme });
  const page = await context.newPage();
  await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
  await page.getByRole('heading', { name: 'Components' }).waitFor();
  await page.screenshot({
    path: join(PROJECT_ROOT, `test-output/components-${colorScheme}-${size}.png`),
    fullPage: true,
  });
  expect(await seriousFindings(page)).toEqual([]);

  // A glove's finger: 48 px high, but for what stands within a line of text.
  const small = await page
    .locator(
      'button:visible:not(.open-number), a:visible, input:not([type]):visible, summary:visible',
    )
    .evaluateAll((all) =>
      (all as unknown as { textContent: string; getBoundingClientRect(): { height: number } }[])
        .filter((each) => each.getBoundingClientRect().height < 48)
        .map((each) => each.textContent),
    );
  expect(small).toEqual([]);

  // Paper is white by itself, and what is written on it is dark.
  await page.emulateMedia({ media: 'print', colorScheme });
  const printed = await page.evaluate(`[
    getComputedStyle(document.documentElement).colorScheme,
    ...[document.documentElement, document.body].map((each) => getComputedStyle(each).backgroundColor),
  ]`);
  expect(printed).toEqual(['light', 'rgba(0, 0, 0, 0)', 'rgba(0, 0, 0, 0)']);
  await context.close();
});

it('has the styles of every component of the library that the built page uses', () => {
  const assets = join(PROJECT_ROOT, 'dist/web/assets');
  const read = (extension: string): string =>
    readdirSync(assets)
      .filter((name) => name.endsWith(extension))
      .map((name) => readFileSync(join(assets, name), 'utf8'))
      .join('');
  const classes = (text: string): Set<string> => new Set(text.match(/\bm[-_][0-9a-f]{6,8}\b/g));
  const whole = classes(
    readFileSync(join(PROJECT_ROOT, 'node_modules/@mantine/core/styles.css'), 'utf8'),
  );
  const built = classes(read('.css'));
  const missing = [...classes(read('.js'))].filter((each) => whole.has(each) && !built.has(each));
  expect(built.size).toBeGreaterThan(100);
  expect(missing).toEqual([]);
});

it.each(['first-run', 'start-screen'])(
  'loads little more for the first screens than the page itself: %s',
  (screen) => {
    const assets = join(PROJECT_ROOT, 'dist/web/assets');
    const html = readFileSync(join(PROJECT_ROOT, 'dist/web/index.html'), 'utf8');
    const first = [...html.matchAll(/assets\/([^"]+\.js)"/g)].map(([, name]) => name!);
    const loaded = new Set<string>();
    const load = (name: string): void => {
      if (loaded.has(name)) return;
      loaded.add(name);
      const script = readFileSync(join(assets, name), 'utf8');
      for (const [, other] of script.matchAll(/(?:from|import)"\.\/([^"]+)"/g)) load(other!);
    };
    for (const name of first) load(name);
    const page = loaded.size;
    const zipped = (names: Iterable<string>): number =>
      [...names].reduce((sum, name) => sum + gzipSync(readFileSync(join(assets, name))).length, 0);
    expect(zipped(loaded)).toBeLessThan(180_000);
    load(
      readdirSync(assets).find((name) => name.startsWith(`${screen}-`) && name.endsWith('.js'))!,
    );
    const more = [...loaded].slice(page);
    expect(more.length).toBeGreaterThan(1);
    expect(zipped(more)).toBeLessThan(80_000);
  },
);
