import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Page, Route } from 'playwright-core';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { ToldFact } from '../../shared/farm/told-fact.js';
import { House, isKept, seriousFindings } from '../support/page.js';

jest.setTimeout(240_000);

let house: House;
beforeAll(async () => (house = await House.open()));
afterAll(() => house.close());

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
  await isKept(page);
  return { page, errors };
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

  it('that was opened on Today alone opens the round, sheets, work, plans and the year', async () => {
    const farm = await house.sampleFarm();
    const { today } = await get<{ today: string }>(`${farmOf(farm)}/picture`);
    const sheet = await house.post<{ id: string }>(`${farmOf(farm)}/handovers`, {
      ...{ from: addDays(today, 1), to: addDays(today, 3), sitter: 'June next door' },
      ...{ hoursPerDay: 3, phones: [], whereabouts: [], roundOrder: [] },
    });
    const [batch] = await get<{ id: string; name: string }[]>(`${farmOf(farm)}/batches`);
    const { page, errors } = await house.page('phone', { isKept: true });
    await page.goto(`${farm}/today`);
    // The last of what is read ahead.
    await isKept(page, ['/today', '/sheet', '/year']);
    await page.context().setOffline(true);
    const opens = async (path: string, heading: string | RegExp): Promise<void> => {
      await page.goto(`${farm}/${path}`);
      await page.getByRole('heading', { name: heading }).first().waitFor();
    };
    const isWhole = async (): Promise<void> =>
      expect(await page.getByText('Not on this phone yet').count()).toBe(0);
    await opens('today', 'The round');
    await isWhole();
    await opens('work', 'Today and the next three days');
    await isWhole();
    await opens('work/plan', 'Day by day');
    await isWhole();
    await opens('work/own', 'Your jobs');
    await isWhole();
    await opens('work/away', 'Days away');
    await page.getByText(/June next door in charge/).waitFor();
    await opens(`work/away/${sheet.id}/sheet`, /^All of these days/);
    await isWhole();
    await opens('year', 'The year');
    await isWhole();
    await opens('pasture', 'Moves');
    await isWhole();
    await opens(`batches/${batch!.id}`, batch!.name);
    await page.getByRole('heading', { name: 'The next two weeks' }).waitFor();
    expect(errors.filter((text) => !text.includes('ERR_INTERNET_DISCONNECTED'))).toEqual([]);
  });

  it('keeps a tick of a page that was closed before it was written', async () => {
    const farm = await house.sampleFarm();
    const before = (await chores(farm)).total;
    const { page } = await phoneAt(farm);
    await page.context().setOffline(true);
    // A phone so busy that nothing told is written while the page is open.
    await page.evaluate(`IDBObjectStore.prototype.put = function () {
      if (this.name !== 'entries') return this.get('nothing');
      const wait = () => void (this.get('nothing').onsuccess = wait);
      wait();
    }`);
    const { done, undo } = await firstChore(page);
    await done.click();
    await undo.waitFor();
    await page.reload();
    await undo.waitFor();
    await waiting(page, '1 waiting to be sent').waitFor();
    await page.context().setOffline(false);
    await waiting(page, '1 waiting to be sent').waitFor({ state: 'detached' });
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
  await isKept(page);
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
    // In the words of the form, not of the service.
    expect(await dialog.innerText()).not.toMatch(/facts\.|details\.|contradicts/);
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
    await page.goto(`${farm}/feed`);
    await page.getByText('Not on this phone yet').waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    // With signal again it comes by itself.
    await page.context().setOffline(false);
    await page.getByRole('heading', { name: 'Feed', level: 1 }).waitFor();
    await page.context().setOffline(true);
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
