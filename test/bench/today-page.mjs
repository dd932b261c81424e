/* global document, KeyboardEvent, MessageChannel, PerformanceObserver, requestAnimationFrame, window */
/**
 * The day it is, as a phone shows it: Chromium with its processor slowed four times. A first visit
 * has an empty cache, the next ones have what the browser kept. The service has made its plans; what
 * it takes until a farm that changed is shown again stands in a line of its own.
 */
import { chromium } from 'playwright-core';

const SLOWED = 4;
const VISITS = 7;
const PHONE = { width: 390, height: 844 };
const SHOWN = '.today-animals li';
const TICK = '.today-round .today-tick';
const ARGS = ['--headless', '--no-sandbox', '--disable-gpu', '--disable-background-networking'];

/**
 * @param url of the program that was started for this, without a slash at its end
 * @param print prints one figure: name, value, unit, number of runs
 */
export async function benchTodayPage(url, print) {
  const executablePath = process.env.CHROMIUM_PATH ?? '/usr/bin/chromium';
  const browser = await chromium.launch({ executablePath, args: ARGS });
  const farm = await (await fetch(`${url}/api/farms/sample`, { method: 'POST' })).json();
  const path = `${url}/farm/${farm.id}/today`;
  const day = `${url}/api/farms/${farm.id}/today`;
  await (await fetch(day)).arrayBuffer();
  const figures = { first: [], again: [], touch: [], shift: [] };
  for (let i = 0; i < VISITS; i++) {
    const context = await browser.newContext({ viewport: PHONE });
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
    await page.addInitScript(watchShifts);
    figures.first.push(await visit(page, path));
    figures.again.push(await visit(page, path));
    await page.waitForTimeout(500);
    figures.touch.push(await page.evaluate(touched, TICK));
    await page.waitForTimeout(500);
    await page.evaluate(touched, TICK);
    figures.shift.push(await page.evaluate(() => window.shifted));
    await context.close();
  }
  const slide = await benchSlide(browser, url, farm.id);
  await browser.close();
  const after = [];
  for (let i = 0; i < VISITS; i++) {
    await fetch(`${url}/api/farms/${farm.id}/people`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ name: `Helper ${i}`, away: [] }),
    });
    const start = performance.now();
    await (await fetch(day)).arrayBuffer();
    after.push(performance.now() - start);
  }
  const say = (name, values, unit) => print(`today, ${name}`, median(values), unit, values.length);
  say('first visit until it is shown, processor slowed four times', figures.first, 'ms');
  say('next visit until it is shown, processor slowed four times', figures.again, 'ms');
  say('touch until the tick is drawn, processor slowed four times', figures.touch, 'ms');
  say('arrival slid in a form until its mark is drawn, processor slowed four times', slide, 'ms');
  say('layout shift while it loads', figures.shift, 'score');
  say('answer of the service after a change', after, 'ms');
}

/** An arrival that is slid in the form of its batch, day by day. */
async function benchSlide(browser, url, farmId) {
  const batches = await (await fetch(`${url}/api/farms/${farmId}/batches`)).json();
  const { id } = batches.reduce((one, other) =>
    one.arrivalDate < other.arrivalDate ? other : one,
  );
  const page = await browser.newPage({ viewport: PHONE });
  const session = await page.context().newCDPSession(page);
  await page.goto(`${url}/farm/${farmId}/batches/${id}`);
  await page.getByRole('button', { name: 'Change the order' }).click();
  const mark = page.getByRole('slider', { name: 'Arrival date' });
  await mark.focus();
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
  const times = [];
  for (let i = 0; i < VISITS; i++) {
    await page.waitForTimeout(500);
    times.push(await mark.evaluate(slid));
  }
  await page.close();
  return times;
}

/**
 * Moves the mark by a day as a frame begins, until the frame in which it stands there is painted:
 * waiting for the next frame to begin, whatever its work, would be 17 ms at least.
 */
const slid = (mark) =>
  new Promise((resolve) => {
    requestAnimationFrame(() => {
      const before = mark.getAttribute('aria-valuenow');
      const start = performance.now();
      const look = () => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () =>
          mark.getAttribute('aria-valuenow') === before
            ? requestAnimationFrame(look)
            : resolve(performance.now() - start);
        port2.postMessage('painted');
      };
      mark.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', bubbles: true }));
      look();
    });
  });

/** From the start of the navigation until animals stand on the page, drawn. */
async function visit(page, path) {
  await page.goto(path, { waitUntil: 'commit' });
  return page.evaluate(
    (shown) =>
      new Promise((resolve) => {
        const look = () =>
          document.querySelector(shown)
            ? requestAnimationFrame(() => resolve(performance.now()))
            : requestAnimationFrame(look);
        look();
      }),
    SHOWN,
  );
}

/** Presses the first tick; until the frame after the page answered. */
const touched = (selector) =>
  new Promise((resolve) => {
    const button = document.querySelector(selector);
    const before = button.getAttribute('aria-label');
    const start = performance.now();
    button.click();
    const look = () =>
      button.getAttribute('aria-label') === before
        ? requestAnimationFrame(look)
        : requestAnimationFrame(() => resolve(performance.now() - start));
    look();
  });

function watchShifts() {
  window.shifted = 0;
  new PerformanceObserver((list) => {
    for (const { value, hadRecentInput } of list.getEntries())
      if (!hadRecentInput) window.shifted += value;
  }).observe({ type: 'layout-shift', buffered: true });
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
