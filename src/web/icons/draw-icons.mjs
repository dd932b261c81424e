/**
 * Draws the icons that phones want as pictures out of `public/icon.svg`, with a browser:
 * `CHROMIUM_PATH=/usr/bin/chromium node src/web/icons/draw-icons.mjs` after the drawing was changed.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

const at = (name) => fileURLToPath(new URL(`../public/${name}`, import.meta.url));
const drawing = readFileSync(at('icon.svg'), 'utf8');
/** A phone may cut a round icon out of the square: its ground goes to the edge, the egg is smaller. */
const toTheEdge = drawing
  .replace(' rx="7"', '')
  .replace('viewBox="0 0 32 32"', 'viewBox="-2 0 36 36"');
const ground = /fill="(#[0-9a-f]{6})"/.exec(drawing)[1];

const ICONS = [
  { name: 'icon-192.png', size: 192, svg: drawing, back: 'transparent' },
  { name: 'icon-512.png', size: 512, svg: drawing, back: 'transparent' },
  { name: 'icon-edge-512.png', size: 512, svg: toTheEdge, back: ground },
  { name: 'icon-apple-180.png', size: 180, svg: toTheEdge, back: ground },
];

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM_PATH,
  args: ['--headless', '--no-sandbox', '--disable-gpu'],
});
for (const { name, size, svg, back } of ICONS) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(
    `<style>body { margin: 0; background: ${back} } svg { display: block; width: 100vw }</style>${svg}`,
  );
  await page.screenshot({ path: at(name), omitBackground: true });
  await page.close();
}
await browser.close();
