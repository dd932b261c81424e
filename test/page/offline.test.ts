import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import { mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page, Route } from 'playwright-core';
import type { ToldFact } from '../../shared/farm/told-fact.js';
import type { HowItWent } from '../../shared/plan/record/how-it-went.js';
import type { YearCounts } from '../../shared/plan/record/year-counts.js';
import { newFarm } from '../support/factories.js';
import { batchBody, inDays } from '../support/orders.js';
import { House, seriousFindings } from '../support/page.js';

jest.setTimeout(240_000);

let house: House;
const folder = mkdtempSync(join(tmpdir(), 'broodfold-days-'));
const clockFile = join(folder, 'shift');
const DAY_MS = 24 * 3600 * 1000;
/** The program's day is so many days from now. Written aside first: nobody reads half a number. */
function daysOn(days: number): void {
  writeFileSync(`${clockFile}.new`, String(days * DAY_MS));
  renameSync(`${clockFile}.new`, clockFile);
}
beforeAll(async () => {
  daysOn(0);
  house = await House.open(clockFile);
});
afterAll(async () => {
  await house.close();
  rmSync(folder, { recursive: true });
});

interface Told {
  readonly facts: readonly ToldFact[];
  readonly total: number;
}
const get = async <T>(path: string): Promise<T> =>
  (await fetch(`${house.url}/api${path}`)).json() as Promise<T>;

/** A phone on Today of a farm, with all that it needs to open without signal. */
async function phoneAt(farm: string): Promise<{ page: Page; errors: string[] }> {
  const { page, errors } = await house.page('phone', { isKept: true });
  await page.goto(`${farm}/today`);
  await page.getByRole('heading', { name: 'The round' }).waitFor();
  await isReady(page);
  return { page, errors };
}

/** Waits until the worker holds the page, and the day is kept with what may be needed of the farm. */
async function isReady(page: Page): Promise<void> {
  await page.evaluate('navigator.serviceWorker.ready');
  await page.waitForFunction('navigator.serviceWorker.controller !== null');
  await page.waitForFunction(`(async () => {
    const open = indexedDB.open('broodfold-answers');
    const db = await new Promise((done) => { open.onsuccess = () => done(open.result); });
    const all = db.transaction('answers').objectStore('answers').getAllKeys();
    const names = await new Promise((done) => { all.onsuccess = () => done(all.result); });
    db.close();
    return ['/today', '/picture'].every((what) => names.some((name) => name.endsWith(what)));
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

  it('keeps a photo of a note, made small, through a reload, and sends it once', async () => {
    const farm = await house.sampleFarm();
    const { page, errors } = await phoneAt(farm);
    await page.context().setOffline(true);
    await page.getByRole('button', { name: /^Rain, shopping, note/ }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('button', { name: 'A note' }).click();
    await dialog.getByRole('textbox', { name: 'Note' }).fill('The gate is off its hinge');
    const files = dialog.getByLabel('Photos', { exact: true });
    await files.setInputFiles({
      ...{ name: 'gate.txt', mimeType: 'image/jpeg', buffer: Buffer.from('no picture') },
    });
    await dialog.getByText(/“gate.txt” is no picture/).waitFor();
    const buffer = await cameraPhoto(page);
    await files.setInputFiles({ name: 'gate.jpg', mimeType: 'image/jpeg', buffer });
    await dialog.getByRole('img', { name: /^Photo: / }).waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    await dialog.getByRole('button', { name: 'Tell it' }).click();
    await waiting(page, '1 waiting to be sent').waitFor();
    await page.reload();
    await waiting(page, '1 waiting to be sent').click();
    await page
      .getByRole('dialog')
      .getByText(/with a photo/)
      .waitFor();
    const sent: string[] = [];
    page.on('request', (request) => request.method() === 'PUT' && sent.push(request.url()));
    await page.context().setOffline(false);
    await page.getByRole('dialog').getByText('All of it is sent.').waitFor();
    expect(sent).toHaveLength(1);
    const { facts } = await get<Told>(`${farmOf(farm)}/told?kind=note`);
    const note = facts.find(({ details }) => 'photos' in details)!;
    const [id] = (note.details as { photos: string[] }).photos;
    const answer = await fetch(`${house.url}/api${farmOf(farm)}/photos/${id}`);
    const kept = Buffer.from(await answer.arrayBuffer());
    expect(kept.length).toBeLessThan(buffer.length / 3);
    await page.goto(`${farm}/record`);
    const shown = page.getByRole('img', { name: 'Photo: The gate is off its hinge' });
    await shown.waitFor();
    await page.waitForFunction(`document.querySelector('img.photo').naturalWidth > 0`);
    const size = await page.evaluate(
      `(({ naturalWidth, naturalHeight }) => [naturalWidth, naturalHeight])(document.querySelector('img.photo'))`,
    );
    expect(size).toEqual([1600, 1200]);
    expect(errors.filter((text) => !text.includes('ERR_INTERNET_DISCONNECTED'))).toEqual([]);
  });
});

/** A picture as a camera takes it, far larger than one is sent. */
async function cameraPhoto(page: Page): Promise<Buffer> {
  const url = await page.evaluate<string>(`(() => {
    const canvas = Object.assign(document.createElement('canvas'), { width: 3200, height: 2400 });
    const pen = canvas.getContext('2d');
    for (let k = 0; k < 4000; k++) {
      pen.fillStyle = 'hsl(' + (k * 37) % 360 + ' 60% 50%)';
      pen.fillRect((k * 811) % 3200, (k * 577) % 2400, 90, 70);
    }
    return canvas.toDataURL('image/jpeg', 1);
  })()`);
  return Buffer.from(url.slice(url.indexOf(',') + 1), 'base64');
}

/** The pasture walk of a farm on a phone whose clock is a year behind, ready to do without signal. */
async function walkOf(farm: string): Promise<Page> {
  const { page } = await house.page('phone', { isKept: true });
  await page.addInitScript(
    `{ const now = Date.now; Date.now = () => now() - 365 * 24 * 3600 * 1000; }`,
  );
  await page.goto(`${farm}/today`);
  await isReady(page);
  await page.goto(`${farm}/pasture/walk`);
  await page
    .getByRole('button', { name: /: higher$/ })
    .first()
    .waitFor();
  return page;
}

/** Steps the first paddock's height up so many times, and saves the walk. */
async function walk(page: Page, steps: number): Promise<void> {
  const higher = page.getByRole('button', { name: /: higher$/ }).first();
  for (let k = 0; k < steps; k++) await higher.click();
  await page.getByRole('button', { name: /^Save/ }).click();
}

describe('two phones that were without signal', () => {
  it('are asked which of two heights of a day holds, and the record has what was said', async () => {
    const farm = await house.sampleFarm();
    const [one, other] = [await walkOf(farm), await walkOf(farm)];
    for (const page of [one, other]) await page.context().setOffline(true);
    await walk(one, 1);
    await walk(other, 3);
    for (const page of [one, other]) await waiting(page, '1 waiting to be sent').waitFor();
    await one.context().setOffline(false);
    await waiting(one, '1 waiting to be sent').waitFor({ state: 'detached' });
    await other.context().setOffline(false);
    await waiting(other, '1 question: which holds?').click();
    const dialog = other.getByRole('dialog', { name: 'Told on this phone' });
    await dialog.getByRole('radio', { name: /^Somebody else, / }).waitFor();
    expect(await seriousFindings(other)).toEqual([]);
    const readings = () =>
      get<Told>(`${farmOf(farm)}/told?kind=grass-reading&history=true&take=1000`);
    const [hers] = [...(await readings()).facts].sort((a, b) => (a.toldAt < b.toldAt ? 1 : -1));
    // The day is the service's, though the phone's clock is a year behind.
    const { today } = await get<{ today: string }>(`${farmOf(farm)}/picture`);
    expect(hers!.on).toBe(today);
    await dialog.getByRole('radio', { name: /^You: / }).check();
    await dialog.getByRole('button', { name: 'Save' }).click();
    await dialog.getByText('All of it is sent.').waitFor();
    const [mine] = [...(await readings()).facts].sort((a, b) => (a.toldAt < b.toldAt ? 1 : -1));
    expect(mine).toMatchObject({ on: today, about: hers!.about, replaces: hers!.id });
  });

  it('keep both heights where both are so', async () => {
    const farm = await house.sampleFarm();
    const [one, other] = [await walkOf(farm), await walkOf(farm)];
    for (const page of [one, other]) await page.context().setOffline(true);
    await walk(one, 1);
    await walk(other, 3);
    await one.context().setOffline(false);
    await waiting(one, '1 waiting to be sent').waitFor({ state: 'detached' });
    await other.context().setOffline(false);
    await waiting(other, '1 question: which holds?').click();
    const dialog = other.getByRole('dialog', { name: 'Told on this phone' });
    await dialog.getByRole('radio', { name: 'Both are so' }).check();
    await dialog.getByRole('button', { name: 'Save' }).click();
    await dialog.getByText('All of it is sent.').waitFor();
    const { today } = await get<{ today: string }>(`${farmOf(farm)}/picture`);
    const told = await get<Told>(`${farmOf(farm)}/told?kind=grass-reading&take=1000`);
    const ofToday = told.facts.filter(({ on }) => on === today);
    expect(new Set(ofToday.map(({ about }) => about)).size).toBe(1);
    expect(ofToday).toHaveLength(2);
  });

  it('send what was not taken again, put right', async () => {
    const farm = await house.sampleFarm();
    const { page } = await phoneAt(farm);
    await page.context().setOffline(true);
    // More than any farm has: no form without signal can know.
    await page
      .getByRole('button', { name: /^Tell what happened: .*hens/ })
      .first()
      .click();
    await page.getByRole('dialog').getByRole('button', { name: 'Some died' }).click();
    await page.getByLabel('Birds that died').fill('900');
    await page.getByRole('button', { name: 'Tell it' }).click();
    await waiting(page, '1 waiting to be sent').waitFor();
    await page.reload();
    await waiting(page, '1 waiting to be sent').waitFor();
    await page.context().setOffline(false);
    await waiting(page, '1 not taken').click();
    const dialog = page.getByRole('dialog', { name: 'Told on this phone' });
    await dialog.getByText(/No more can go than there are/).waitFor();
    await dialog.getByRole('button', { name: /^Change/ }).click();
    await dialog.getByRole('textbox', { name: 'Birds that died' }).fill('1');
    expect(await seriousFindings(page)).toEqual([]);
    await dialog.getByRole('button', { name: 'Send it again' }).click();
    await dialog.getByText('All of it is sent.').waitFor();
    const died = await get<Told>(`${farmOf(farm)}/told?kind=died&take=1000`);
    expect(died.facts.map(({ details }) => details)).toContainEqual({ birds: 1 });
  });

  it('say of a screen that was never opened that it is not on this phone yet', async () => {
    const farm = await house.sampleFarm();
    const { page } = await phoneAt(farm);
    await page.context().setOffline(true);
    await page.goto(`${farm}/year`);
    await page.getByText('Not on this phone yet').waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    // What went wrong is worked out here, from what was read while there was signal.
    await page.goto(`${farm}/today`);
    await page.getByRole('button', { name: 'Something went wrong' }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Cold nights are coming' }).click();
    await page
      .getByRole('dialog')
      .getByLabel(/Lowest at night/)
      .waitFor();
    await page
      .getByRole('list', { name: /^What follows for/ })
      .first()
      .waitFor();
  });

  it('keep what the service does not take, with its reason, until it is thrown away', async () => {
    const farm = await house.sampleFarm();
    const page = await walkOf(farm);
    await page.context().setOffline(true);
    await walk(page, 1);
    await waiting(page, '1 waiting to be sent').waitFor();
    const paddocks = await get<{ id: string }[]>(`${farmOf(farm)}/paddocks`);
    for (const { id } of paddocks)
      await fetch(`${house.url}/api${farmOf(farm)}/paddocks/${id}`, { method: 'DELETE' });
    await page.context().setOffline(false);
    await waiting(page, '1 not taken').click();
    const dialog = page.getByRole('dialog', { name: 'Told on this phone' });
    await dialog.getByText(/Name a paddock of this farm/).waitFor();
    await page.reload();
    await waiting(page, '1 not taken').click();
    await dialog.getByRole('button', { name: /^Throw it away:/ }).click();
    await page.getByRole('button', { name: 'Throw it away', exact: true }).last().click();
    await waiting(page, '1 not taken').waitFor({ state: 'detached' });
  });
});

/** The last test of the file: the days that go by in it do not come back. */
describe('the last week of a batch on two phones, one of them days without signal', () => {
  const BOX = { birds: 58, dead: 1 };
  /** A phone's days go by with those of the program. */
  async function phoneOf(farm: string): Promise<Page> {
    const { page } = await house.page('phone', { isKept: true });
    await page.addInitScript(
      `{ const now = Date.now; Date.now = () => now() + Number(localStorage.getItem('days-on') ?? 0) * ${DAY_MS}; }`,
    );
    await page.goto(`${farm}/today`);
    await page.getByRole('heading', { name: 'Animals' }).waitFor();
    await isReady(page);
    return page;
  }
  const nextDay = async (page: Page, days: number): Promise<void> => {
    await page.evaluate(`localStorage.setItem('days-on', '${days}')`);
    await page.reload();
    await page.locator('.today-animals li', { hasText: 'Meat' }).waitFor();
  };
  /** Tells one thing of the batch as it is told on Today: what, and the boxes that are filled in. */
  async function tell(page: Page, what: string, boxes: Readonly<Record<string, string>>) {
    await page.getByRole('button', { name: 'Tell what happened: Meat' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('button', { name: what, exact: true }).click();
    for (const [label, value] of Object.entries(boxes)) {
      const box = dialog.getByLabel(label).first();
      if (label === 'How') await box.selectOption(value);
      else await box.fill(value);
    }
    await dialog.getByRole('button', { name: 'Tell it' }).click();
    await dialog.waitFor({ state: 'detached' });
  }

  it('ends with the record right to the bird and the cent', async () => {
    const { id } = await house.post<{ id: string }>('/farms', newFarm());
    const farm = `${house.url}/farm/${id}`;
    const { id: batch } = await house.post<{ id: string }>(`/farms/${id}/batches`, {
      ...batchBody({ name: 'Meat', arrivalDate: inDays(-40), orderedBirds: 60, leaveAgeDays: 56 }),
    });
    const came = { kind: 'arrived', about: batch, on: inDays(-40), details: BOX };
    await house.post(`/farms/${id}/told`, { facts: [came] });
    const [one, other] = [await phoneOf(farm), await phoneOf(farm)];
    await other.context().setOffline(true);
    const died = async (page: Page, birds: number) =>
      tell(page, 'Some died', { 'Birds that died': `${birds}` });
    const both = async (days: number) => {
      daysOn(days);
      for (const page of [one, other]) await nextDay(page, days);
    };

    await both(1);
    await died(one, 2);
    await died(other, 1);
    daysOn(2);
    await nextDay(other, 2);
    const given = { 'Birds that went': '2', How: 'given' };
    await tell(other, 'Birds sold or given', given);
    await died(other, 3);
    await both(3);
    await tell(one, 'Water they drank', { 'Water drunk': '15' });
    await tell(other, 'Water they drank', { 'Water drunk': '12' });
    await tell(other, 'Birds sold or given', {
      ...{ 'Birds that went': '4', How: 'sold', 'What they brought': '61.35' },
    });
    await waiting(other, '5 waiting to be sent').waitFor();
    // What is told of no phone but this one is not in the record yet.
    expect((await get<Told>(`/farms/${id}/told?kind=gone`)).total).toBe(0);

    await other.context().setOffline(false);
    await waiting(other, '1 question: which holds?').click();
    const dialog = other.getByRole('dialog', { name: 'Told on this phone' });
    await dialog.getByRole('radio', { name: /^You: / }).check();
    await dialog.getByRole('button', { name: 'Save' }).click();
    await dialog.getByText('All of it is sent.').waitFor();
    await nextDay(one, 3);
    const left = BOX.birds - BOX.dead - 2 - 1 - 2 - 3 - 4; // 45
    await tell(one, 'Processed', { 'Live weight, all together': '112.5' });

    const went = await get<HowItWent>(`/farms/${id}/record/batches/${batch}`);
    const actual = (line: string) => went.lines.find((each) => each.id === line)?.actual;
    expect(went.isOver).toBe(true);
    expect(['came', 'lost', 'processed', 'sold', 'given'].map(actual)).toEqual([57, 6, left, 4, 2]);
    expect(actual('live-each')).toBeCloseTo(112.5 / left, 9);
    const water = await get<Told>(`/farms/${id}/told?kind=water-drunk`);
    expect(water.facts.map(({ details }) => details)).toEqual([{ liters: 12 }]);
    const years = [...new Set([-40, 1, 2, 3].map((days) => inDays(days).slice(0, 4)))];
    const counts = await Promise.all(
      years.map((year) => get<YearCounts>(`/farms/${id}/record/years/${year}`)),
    );
    expect(counts.reduce((sum, { money }) => sum + money.taken, 0)).toBe(6135);
    const all = await get<Told>(`/farms/${id}/told?history=true&ticks=false&take=1000`);
    expect(new Set(all.facts.map(({ key }) => key)).size).toBe(all.total);
    await one.goto(`${farm}/record`);
    const over = one.getByRole('region', { name: 'How batches went' });
    await over.getByText('Meat', { exact: true }).waitFor();
    expect(await seriousFindings(one)).toEqual([]);
  });
});
