import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Page, Route } from 'playwright-core';
import type { ToldFact } from '../../shared/farm/told-fact.js';
import { House, seriousFindings } from '../support/page.js';

jest.setTimeout(240_000);

let house: House;
beforeAll(async () => {
  house = await House.open();
});
afterAll(() => house.close());

interface Told {
  readonly facts: readonly ToldFact[];
  readonly total: number;
}
const get = async <T>(path: string): Promise<T> =>
  (await fetch(`${house.url}/api${path}`)).json() as Promise<T>;

/** A phone on Today of a farm, with all that it needs to open without signal. */
async function phoneAt(farm: string): Promise<{ page: Page; errors: string[] }> {
  const { page, errors } = await house.page('phone');
  await page.goto(`${farm}/today`);
  await page.getByRole('heading', { name: 'The round' }).waitFor();
  await isReady(page);
  return { page, errors };
}

/** Waits until the worker holds the page, and the day is kept. */
async function isReady(page: Page): Promise<void> {
  await page.evaluate('navigator.serviceWorker.ready');
  await page.waitForFunction('navigator.serviceWorker.controller !== null');
  await page.waitForFunction(`(async () => {
    const open = indexedDB.open('broodfold-answers');
    const db = await new Promise((done) => { open.onsuccess = () => done(open.result); });
    const all = db.transaction('answers').objectStore('answers').getAllKeys();
    const names = await new Promise((done) => { all.onsuccess = () => done(all.result); });
    db.close();
    return names.some((name) => name.endsWith('/today'));
  })()`);
}

const farmOf = (address: string): string => `/farms/${/farm\/([^/]+)/.exec(address)![1]!}`;
const waiting = (page: Page, words: string | RegExp) => page.getByRole('button', { name: words });
/** The first chore of the round: its ring, and what it is called. */
async function firstChore(page: Page) {
  const ring = page.locator('.today-round').getByRole('button').first();
  const name = (await ring.getAttribute('aria-label'))!.replace(/^(Done|Undo): /, '');
  return {
    done: page.getByRole('button', { name: `Done: ${name}`, exact: true }),
    undo: page.getByRole('button', { name: `Undo: ${name}`, exact: true }),
  };
}
const chores = (farm: string): Promise<Told> =>
  get<Told>(`${farmOf(farm)}/told?kind=chore-done&history=true`);

describe('a phone without signal', () => {
  it('opens on Today as it was read, keeps ticks through a reload, and sends each once', async () => {
    const farm = await house.sampleFarm();
    const before = (await chores(farm)).total;
    const { page } = await phoneAt(farm);
    await page.context().setOffline(true);
    await page.reload();
    await page.getByText(/^No signal: this is as of \d+:\d\d [AP]M/).waitFor();
    const { done, undo } = await firstChore(page);
    await done.click();
    await undo.waitFor();
    await waiting(page, '1 waiting to be sent').waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    await page.reload();
    await undo.waitFor();
    await waiting(page, '1 waiting to be sent').waitFor();
    // Not sent yet, it is taken out again.
    await undo.click();
    await done.waitFor();
    await waiting(page, '1 waiting to be sent').waitFor({ state: 'detached' });
    await done.click();
    await waiting(page, '1 waiting to be sent').waitFor();
    await page.context().setOffline(false);
    await waiting(page, '1 waiting to be sent').waitFor({ state: 'detached' });
    await page.getByText(/^No signal/).waitFor({ state: 'detached' });
    await undo.waitFor();
    expect((await chores(farm)).total).toBe(before + 1);
  });

  it('sends what was told once, although the answer was lost', async () => {
    const farm = await house.sampleFarm();
    const before = (await chores(farm)).total;
    const { page } = await phoneAt(farm);
    let lost = 0;
    const lose = async (route: Route): Promise<void> => {
      await route.fetch();
      lost += 1;
      await route.abort('connectionreset');
    };
    await page.route('**/told', lose);
    const { done, undo } = await firstChore(page);
    await done.click();
    await undo.waitFor();
    await waiting(page, '1 waiting to be sent').waitFor();
    expect((await chores(farm)).total).toBe(before + 1);
    await page.unroute('**/told', lose);
    await page.reload();
    await waiting(page, '1 waiting to be sent').waitFor({ state: 'detached' });
    await undo.waitFor();
    expect(lost).toBeGreaterThan(0);
    expect((await chores(farm)).total).toBe(before + 1);
  });
});
