import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Page } from 'playwright-core';
import { batchBody, inDays } from '../support/orders.js';
import { newFarm } from '../support/factories.js';
import { House, seriousFindings } from '../support/page.js';

jest.setTimeout(120_000);

let house: House;
beforeAll(async () => (house = await House.open()));
afterAll(() => house.close());

/** A farm with chicks that have come, and others that come today. */
async function farmWithChicks(): Promise<string> {
  const { id } = await house.post<{ id: string }>('/farms', newFarm({ units: 'us' }));
  await house.post(`/farms/${id}/batches`, {
    ...batchBody({ name: 'Here', arrivalDate: inDays(-30), orderedBirds: 80 }),
  });
  await house.post(`/farms/${id}/batches`, {
    ...batchBody({ name: 'Coming', arrivalDate: inDays(1), orderedBirds: 40 }),
    assumed: ['arrivalDate'],
  });
  return id;
}

const today = async (page: Page, id: string): Promise<void> => {
  await page.goto(`${house.url}/farm/${id}/today`);
  await page.getByRole('heading', { name: 'Animals' }).waitFor();
};
const rowOf = (page: Page, name: string) => page.locator('.today-animals li', { hasText: name });
const ask = async (page: Page, name: string, what: string): Promise<void> => {
  await page.getByRole('button', { name: `Tell what happened: ${name}` }).click();
  await page.getByRole('dialog').getByRole('button', { name: what }).click();
};

describe('telling on a phone', () => {
  it('takes three touches for a dead bird, and one to take it back', async () => {
    const id = await farmWithChicks();
    const { page, errors } = await house.page('phone');
    await today(page, id);
    await rowOf(page, 'Here').getByText(/alive/).waitFor();
    await ask(page, 'Here', 'Some died');
    expect(await seriousFindings(page, '[role=dialog]')).toEqual([]);
    await page.getByRole('button', { name: 'Tell it' }).click();
    await rowOf(page, 'Here').getByText('1 died. Told.').waitFor();
    await rowOf(page, 'Here')
      .getByRole('button', { name: /: 79\b/ })
      .waitFor();
    await rowOf(page, 'Here').getByRole('button', { name: 'Undo' }).click();
    await rowOf(page, 'Here').getByText('1 died. Told.').waitFor({ state: 'detached' });
    // The button is gone: the keyboard goes on from what it did.
    expect(await page.locator(':focus').innerText()).toBe('Taken back.');
    expect(errors).toEqual([]);
  });

  it('has the box filled in as ordered, and goes by what was in it', async () => {
    const id = await farmWithChicks();
    const { page, errors } = await house.page('phone');
    await today(page, id);
    await ask(page, 'Coming', 'They came');
    expect(await page.getByLabel('Birds in the box').inputValue()).toBe('40');
    // Ten times as many is asked about first.
    await page.getByLabel('Birds in the box').fill('400');
    await page.getByLabel('400 came where 40 were waited for: that is right').waitFor();
    expect(await page.getByRole('button', { name: 'Tell it' }).isDisabled()).toBe(true);
    await page.getByLabel('Birds in the box').fill('40');
    await page.getByLabel('Dead in the box').fill('6');
    await page.getByRole('button', { name: 'Tell it' }).click();
    await rowOf(page, 'Coming').getByText('40 came, 6 of them dead. Told.').waitFor();
    await rowOf(page, 'Coming')
      .getByRole('button', { name: /: 34\b/ })
      .waitFor();
    await rowOf(page, 'Coming').getByText('under the heat').waitFor();
    expect(errors).toEqual([]);
  });

  it('shows what follows when they come another day, before that is kept', async () => {
    const id = await farmWithChicks();
    const { page, errors } = await house.page('phone');
    await page.addInitScript(
      `{ const now = Date.now; Date.now = () => now() - 365 * 24 * 3600 * 1000; }`,
    );
    await today(page, id);
    // Back from what was not meant is where it was chosen, not out of the dialog.
    await ask(page, 'Coming', 'They came');
    await page.getByRole('button', { name: 'Back' }).click();
    await page
      .getByRole('dialog')
      .getByRole('button', { name: 'They come on another day' })
      .click();
    const then = page.getByRole('list', { name: 'What would change in the plan' });
    await page.getByLabel('Arrival').fill(inDays(8));
    await then.getByText(/^They come: .+ a week later than/).waitFor();
    // Dates are of the year it is by the service, though the phone's clock is a year behind.
    expect(await then.innerText()).not.toContain(inDays(0).slice(0, 4));
    expect(await seriousFindings(page, '[role=dialog]')).toEqual([]);
    type Row = { name: string; arrivalDate: string; version?: number; assumed?: string[] };
    const kept = async (): Promise<Row> => {
      const answer = await fetch(`${house.url}/api/farms/${id}/batches`);
      return ((await answer.json()) as Row[]).find(({ name }) => name === 'Coming')!;
    };
    const was = await kept();
    expect(was).toMatchObject({ arrivalDate: inDays(1), assumed: ['arrivalDate'] });
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect(await kept()).toMatchObject({ arrivalDate: inDays(8), assumed: [] });
    const coming = rowOf(page, 'Coming');
    // The day is named: nobody has to remember what was typed.
    const said = coming.getByText(/^They come on .+\. Kept\.$/);
    await said.waitFor();
    await coming.getByRole('button', { name: 'Undo' }).click();
    await said.waitFor({ state: 'detached' });
    const { version: _now, ...undone } = await kept();
    const { version: _then, ...whole } = was;
    expect(undone).toEqual(whole);
    expect(errors).toEqual([]);
  });

  it('takes birds one by one off the scale, and says what that changed', async () => {
    const id = await farmWithChicks();
    const { page, errors } = await house.page('phone');
    await today(page, id);
    await ask(page, 'Here', 'Weighed some');
    for (const pounds of ['1.6', '1.35', '1.2', '1.75', '1.55', '1.3']) {
      const next = page.getByLabel(/one by one|^Bird \d/);
      await next.fill(pounds);
      await next.press('Enter');
    }
    expect(await page.getByLabel('Birds weighed').inputValue()).toBe('6');
    await page.getByRole('button', { name: 'Tell it' }).click();
    await rowOf(page, 'Here')
      .getByText(/^6 birds weighed, 1\.4\d lb each\. Told\.$/)
      .waitFor();
    const changed = page.getByRole('list', { name: 'What changed in the plan' });
    await changed
      .getByText(/^Processing stays on .+: as many days, lighter birds, about .+ lb dressed each/)
      .waitFor();
    // The other day is one touch, where it was told as on the page of the day: not asked twice.
    const attention = page
      .getByRole('listitem')
      .filter({ hasText: 'weighed lighter than planned' });
    await attention.waitFor();
    await rowOf(page, 'Here')
      .getByRole('button', { name: /^Process on .+ instead$/ })
      .click();
    const said = rowOf(page, 'Here').getByText(/^Process on .+ instead\. Kept\.$/);
    await said.waitFor();
    await attention.waitFor({ state: 'detached' });
    // Put back where it was touched, it is asked again.
    await rowOf(page, 'Here')
      .locator('.tell-said', { has: page.getByText(/Kept\.$/) })
      .last()
      .getByRole('button', { name: 'Undo' })
      .click();
    await said.waitFor({ state: 'detached' });
    await attention.waitFor();
    expect(errors).toEqual([]);
  });

  it('takes a cow that was sold off the herd, and gives her back', async () => {
    const id = await farmWithChicks();
    await house.post(`/farms/${id}/herds`, {
      name: 'Cattle',
      groups: [
        { classId: 'dry-cow', head: 4 },
        { classId: 'stocker', head: 6 },
      ],
    });
    const { page, errors } = await house.page('phone');
    await today(page, id);
    await rowOf(page, 'Cattle')
      .getByRole('button', { name: /: 10\b/ })
      .waitFor();
    await ask(page, 'Cattle', 'Some died, were sold or slaughtered');
    await page.getByLabel('What became of them').selectOption({ label: 'Sold' });
    await page.getByLabel('Of which class').selectOption({ label: 'Beef cow, in calf' });
    await page.getByLabel('What they brought, all together').fill('1150');
    expect(await seriousFindings(page, '[role=dialog]')).toEqual([]);
    await page.getByRole('button', { name: 'Tell it' }).click();
    await rowOf(page, 'Cattle').getByText('1 head sold, $1,150.00. Told.').waitFor();
    await rowOf(page, 'Cattle').getByRole('button', { name: /: 9\b/ }).waitFor();
    await rowOf(page, 'Cattle').getByRole('button', { name: 'Undo' }).click();
    await rowOf(page, 'Cattle')
      .getByRole('button', { name: /: 10\b/ })
      .waitFor();
    expect(errors).toEqual([]);
  });

  it('never fills in a box that somebody is typing in: what it would be is offered beside it', async () => {
    const id = await farmWithChicks();
    const herd = await house.post<{ id: string }>(`/farms/${id}/herds`, {
      name: 'Milkers',
      groups: [{ classId: 'milk-cow', head: 1 }],
    });
    await house.post(`/farms/${id}/told`, {
      facts: [{ kind: 'milked', about: herd.id, on: inDays(-1), details: { liters: 11 } }],
    });
    const { page, errors } = await house.page('phone');
    let typed = (): void => undefined;
    const isTyped = new Promise<void>((done) => (typed = done));
    await page.route(/told\?kind=milked/, async (route) => {
      await isTyped;
      await route.continue();
    });
    await today(page, id);
    await ask(page, 'Milkers', 'Milk of the day');
    const milk = page.getByRole('textbox', { name: /^Milk of the day,/ });
    await milk.fill('');
    await milk.focus();
    const offered = page.getByRole('button', { name: /^Fill in 2\.9/ });
    typed();
    await offered.waitFor();
    expect(await milk.inputValue()).toBe('');
    await page.keyboard.type('3');
    expect(await milk.inputValue()).toBe('3');
    // Emptied it is offered again, and one touch takes it.
    await page.keyboard.press('Backspace');
    expect(await milk.inputValue()).toBe('');
    await offered.click();
    expect(await milk.inputValue()).toBe('2.91');
    expect(errors).toEqual([]);
  });

  it('has milk and prices filled in as they were last, and says that they are; rain it has not', async () => {
    const id = await farmWithChicks();
    const herd = await house.post<{ id: string }>(`/farms/${id}/herds`, {
      name: 'Milkers',
      groups: [{ classId: 'milk-cow', head: 1 }],
    });
    const on = inDays(-1);
    const bought = { what: 'feed', name: 'Grower', amount: 2, eachKg: 22.68, money: '44.00' };
    const job = await house.post<{ id: string }>(`/farms/${id}/jobs`, {
      ...{ name: 'Go to town', hours: 1, dueOn: inDays(0), priority: 'should' },
      ...{ conditions: {}, canBeSpread: true },
    });
    const work = `own/${job.id}`;
    await house.post(`/farms/${id}/told`, {
      facts: [
        { kind: 'milked', about: herd.id, on, details: { liters: 11 } },
        { kind: 'rained', about: 'ground', on, details: { mm: 12.7 } },
        { kind: 'bought', about: 'farm', on, details: bought },
      ],
    });
    const { page, errors } = await house.page('phone');
    await today(page, id);
    await ask(page, 'Milkers', 'Milk of the day');
    await page.getByText(/^As on .+: change it to what you milked\.$/).waitFor();
    expect(await page.getByRole('textbox', { name: /^Milk of the day,/ }).inputValue()).toBe(
      '2.91',
    ); // 11 L in gallons
    expect(await seriousFindings(page, '[role=dialog]')).toEqual([]);
    await page.keyboard.press('Escape');
    const place = async (what: string): Promise<void> => {
      await page.getByRole('button', { name: /^Rain, shopping, note/ }).click();
      await page.getByRole('dialog').getByRole('button', { name: what }).click();
    };
    await place('Rain in the gauge');
    // What the gauge held yesterday was emptied, and nothing is forecast here.
    expect(await page.getByRole('textbox', { name: /^Rain in the gauge,/ }).inputValue()).toBe('');
    await page.keyboard.press('Escape');
    await place('Something was bought');
    const cost = page.getByLabel('What it cost, all together');
    await page.getByText(/^As paid on /).waitFor();
    expect(await cost.inputValue()).toBe('22.00');
    await page.getByLabel('How many').fill('3');
    expect(await cost.inputValue()).toBe('66.00');
    // Nothing is told until somebody tells it.
    await page.getByRole('button', { name: 'Tell it' }).click();
    await page.getByText(/^Grower: 3 bags of 50 lb bought, \$66\.00\. Told\.$/).waitFor();

    // What a trip that was ticked off is taken to have brought is put right where it stands.
    const tick = { kind: 'work-progress', about: work, on: inDays(0) };
    await house.post(`/farms/${id}/told`, {
      facts: [
        { kind: 'bought', about: work, on: inDays(0), details: { ...bought, work } },
        { ...tick, details: { doneOn: inDays(0) } },
      ],
    });
    await today(page, id);
    await page.getByRole('button', { name: /^Put it right: Grower: 2 bags/ }).click();
    await page.getByLabel('How many').fill('1');
    await page.getByLabel('What it cost, all together').fill('22');
    expect(await seriousFindings(page, '[role=dialog]')).toEqual([]);
    await page.getByRole('button', { name: 'Change it' }).click();
    await page.getByRole('button', { name: /^Put it right: Grower: 1 bag of/ }).click();
    await page.getByRole('button', { name: 'None of it was bought' }).click();
    await page.getByRole('button', { name: /^Put it right/ }).waitFor({ state: 'detached' });
    expect(errors).toEqual([]);
  });

  it('says what is wrong at its field, and keeps what was typed', async () => {
    const id = await farmWithChicks();
    const { page } = await house.page('phone');
    await today(page, id);
    await ask(page, 'Here', 'Some died');
    await page.getByLabel('Birds that died').fill('500');
    await page.getByRole('button', { name: 'Tell it' }).click();
    await page.getByText(/No more can go than there are/).waitFor();
    expect(await page.getByLabel('Birds that died').inputValue()).toBe('500');
    // Leaving asks first.
    await page.keyboard.press('Escape');
    await page
      .getByRole('button', { name: /Stay|Keep/ })
      .first()
      .click();
    expect(await page.getByLabel('Birds that died').inputValue()).toBe('500');
  });

  it('sounds an alarm of a cold thermometer until it was seen, and not again', async () => {
    const id = await farmWithChicks();
    const { page } = await house.page('phone');
    await page.addInitScript(() => {
      const said: string[] = [];
      class Said extends EventTarget {
        static permission = 'granted';
        static requestPermission = () => Promise.resolve('granted');
        constructor(title: string) {
          super();
          said.push(title);
        }
      }
      Object.assign(globalThis, { Notification: Said, said });
    });
    await today(page, id);
    await page.getByText('Alarms as a notice: off').click();
    await page.getByRole('button', { name: 'Turn on' }).click();
    await page.getByText('Alarms as a notice: on').waitFor();
    await ask(page, 'Coming', 'They came');
    await page.getByRole('button', { name: 'Tell it' }).click();
    await rowOf(page, 'Coming').getByText('under the heat').waitFor();
    await ask(page, 'Coming', 'Read the thermometer');
    await page.getByLabel(/Under the heat/).fill('70');
    await page.getByRole('button', { name: 'Tell it' }).click();
    const alarm = page.locator('.today-list li', { hasText: /70 °F under the heat/ });
    await alarm.waitFor();
    // It cannot wait: it stands before the animals, with what to do.
    const [ofAlarm, ofAnimals] = await Promise.all(
      [alarm, page.locator('#today-animals')].map((each) => each.boundingBox()),
    );
    expect(ofAlarm!.y).toBeLessThan(ofAnimals!.y);
    await alarm.getByText('They need more heat: hang it lower').waitFor();
    await alarm.getByRole('button', { name: 'I have seen it' }).click();
    await alarm.waitFor({ state: 'detached' });
    await today(page, id);
    expect(await alarm.count()).toBe(0);
    // On the screen of the day it needed no notice; on another the next one does, and once.
    const said = (): Promise<string[]> =>
      page.evaluate(() => (globalThis as unknown as { said: string[] }).said);
    expect(await said()).toEqual([]);
    const batches = await page.request.get(`${house.url}/api/farms/${id}/batches`);
    const here = ((await batches.json()) as { id: string; name: string }[]).find(
      ({ name }) => name === 'Here',
    )!;
    const died = { kind: 'died', about: here.id, on: inDays(0) };
    await house.post(`/farms/${id}/told`, {
      facts: [{ ...died, details: { birds: 30, cause: 'not-known' } }],
    });
    await page.goto(`${house.url}/farm/${id}/batches`);
    await page.waitForFunction(() => 0 < (globalThis as unknown as { said: string[] }).said.length);
    expect(await said()).toEqual([expect.stringMatching(/^Here: 30 have died/)]);
    await page.goto(`${house.url}/farm/${id}/batches`);
    await page.getByRole('link', { name: 'Here' }).first().waitFor();
    await page.waitForLoadState('networkidle');
    expect(await said()).toEqual([]);
  });
});
