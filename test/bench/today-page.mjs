/* global document, KeyboardEvent, PerformanceObserver, requestAnimationFrame, scheduler */
/**
 * The day it is, as a phone shows it: Chromium with its processor slowed four times. A first visit
 * has an empty cache, the second has the scripts and later ones have them as compiled. The service has made its plans; what
 * it takes until a farm that changed is shown again stands in a line of its own.
 */
import { startBrowser } from './bare-browser.mjs';

const SLOWED = 4;
const VISITS = 7;
const PHONE = { width: 390, height: 844 };
const SHOWN = '.today-animals li';
const TICK = '.today-round .today-tick';
const MARK = '[role=slider][aria-label="Arrival date"]';
const PAUSE_MS = 500;
/** Nobody leaves a page and is back before it has kept what it keeps. */
const UNTIL_BACK_MS = 2000;
const LATER = 2;

/**
 * @param url of the program that was started for this, without a slash at its end
 * @param print prints one figure: name, value, unit, number of runs
 */
export async function benchTodayPage(url, print) {
  const browser = await startBrowser(process.env.CHROMIUM_PATH ?? '/usr/bin/chromium');
  const farm = await (await fetch(`${url}/api/farms/sample`, { method: 'POST' })).json();
  const path = `${url}/farm/${farm.id}/today`;
  const day = `${url}/api/farms/${farm.id}/today`;
  await (await fetch(day)).arrayBuffer();
  const figures = { first: [], second: [], later: [], touch: [], shift: [] };
  for (let i = 0; i < VISITS; i++) {
    const tab = await browser.openTab(PHONE, SLOWED);
    figures.first.push(await visit(tab, path));
    await pause(UNTIL_BACK_MS);
    figures.second.push(await visit(tab, path));
    for (let k = 0; k < LATER; k++) {
      await pause(UNTIL_BACK_MS);
      figures.later.push(await visit(tab, path));
    }
    await pause();
    figures.touch.push(await tab.ask(touched, TICK));
    await pause();
    await tab.ask(touched, TICK);
    figures.shift.push(await tab.ask(shifted));
    await tab.close();
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
  say('second visit until it is shown, processor slowed four times', figures.second, 'ms');
  say('later visits until it is shown, processor slowed four times', figures.later, 'ms');
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
  const tab = await browser.openTab(PHONE, 1);
  await tab.go(`${url}/farm/${farmId}/batches/${id}`);
  await tab.ask(openedForm, 'Change the order', MARK);
  await tab.slow(SLOWED);
  const times = [];
  for (let i = 0; i < VISITS; i++) {
    await pause();
    times.push(await tab.ask(slid, MARK));
  }
  await tab.close();
  return times;
}

/** Opens the form of a batch and goes to the mark of its arrival. */
const openedForm = (name, selector) =>
  new Promise((resolve) => {
    const look = () => {
      const mark = document.querySelector(selector);
      const button = [...document.querySelectorAll('button')].find(
        ({ textContent }) => textContent.trim() === name,
      );
      if (!mark) button?.click();
      if (!mark) setTimeout(look, 100);
      else resolve(mark.focus());
    };
    look();
  });

/**
 * Each of these ends when the frame that shows it is painted: the task after it that nothing else may
 * come before. With the next frame it would end after what the browser does between them for itself,
 * such as keeping a script as compiled. They run in the page, so each is whole in itself.
 */

/** Moves the mark of the arrival by a day as a frame begins, until it stands there. */
const slid = (selector) =>
  new Promise((resolve) => {
    const mark = document.querySelector(selector);
    requestAnimationFrame(() => {
      const before = mark.getAttribute('aria-valuenow');
      const start = performance.now();
      const look = () => {
        if (mark.getAttribute('aria-valuenow') === before) requestAnimationFrame(look);
        else resolve(performance.now() - start);
      };
      const painted = () => scheduler.postTask(look, { priority: 'user-blocking' });
      mark.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', bubbles: true }));
      painted();
    });
  });

/** From the start of the navigation until animals stand on the page. */
async function visit(tab, path) {
  await tab.go(path);
  return tab.ask(
    (shown) =>
      new Promise((resolve) => {
        const painted = () => resolve(performance.now());
        const look = () =>
          document.querySelector(shown)
            ? scheduler.postTask(painted, { priority: 'user-blocking' })
            : requestAnimationFrame(look);
        requestAnimationFrame(look);
      }),
    SHOWN,
  );
}

/** Presses the first tick, until the page answered. */
const touched = (selector) =>
  new Promise((resolve) => {
    const button = document.querySelector(selector);
    const before = button.getAttribute('aria-label');
    const start = performance.now();
    const painted = () => resolve(performance.now() - start);
    const look = () =>
      button.getAttribute('aria-label') === before
        ? requestAnimationFrame(look)
        : scheduler.postTask(painted, { priority: 'user-blocking' });
    button.click();
    requestAnimationFrame(look);
  });

/** What moved by itself since the page was opened. */
const shifted = () =>
  new Promise((resolve) => {
    let sum = 0;
    new PerformanceObserver((list) => {
      for (const { value, hadRecentInput } of list.getEntries()) if (!hadRecentInput) sum += value;
    }).observe({ type: 'layout-shift', buffered: true });
    setTimeout(() => resolve(sum), 100);
  });

const pause = (ms = PAUSE_MS) => new Promise((resolve) => setTimeout(resolve, ms));

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
