import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { House } from '../support/page.js';

let house: House;
beforeAll(async () => (house = await House.open()));
afterAll(() => house.close());

/** Goes on with the tabulator until what has the focus is called so; never by mouse. */
async function tabTo(page: Page, name: RegExp, most = 40): Promise<void> {
  const passed: string[] = [];
  for (let k = 0; k < most; k++) {
    await page.keyboard.press('Tab');
    const here = await page.evaluate<string>(
      `(({ ariaLabel, labels, textContent }) => ariaLabel || labels?.[0]?.textContent || textContent)(document.activeElement)`,
    );
    if (name.test(here.trim())) return;
    passed.push(here.trim().slice(0, 40));
  }
  throw new Error(`No way to ${String(name)} by keyboard; passed ${passed.join(' | ')}`);
}

const press = async (page: Page, name: RegExp, most?: number): Promise<void> => {
  await tabTo(page, name, most);
  await page.keyboard.press('Enter');
};

const isWide = (page: Page): Promise<boolean> =>
  page.evaluate('window.innerWidth + 1 < document.documentElement.scrollWidth');

describe('somebody without a mouse', () => {
  it('starts a farm, ticks its round off, takes that back, and comes to any place', async () => {
    const { page, errors } = await house.page('desktop');
    await page.goto(`${house.url}/`);
    await page.getByRole('heading', { name: 'Your own farm' }).waitFor();
    await press(page, /^Start with three things$/);
    await page.getByRole('heading', { name: 'Where is the farm?' }).waitFor();
    await tabTo(page, /^Town or village/);
    await page.keyboard.type('montpelier, vt');
    await press(page, /^Find$/);
    await page.getByRole('button', { name: 'Montpelier VT, United States' }).waitFor();
    await press(page, /^Montpelier VT, United States/);
    await tabTo(page, /^Cattle$/, 60);
    await page.keyboard.type('3');
    await press(page, /^Make my plan$/, 20);
    await page.getByRole('heading', { name: 'Your plan is made' }).waitFor();
    await press(page, /^Go to my farm$/, 20);
    await page.getByRole('heading', { name: 'Animals' }).waitFor();

    await press(page, /^Done: .*Herd$/);
    await page.getByRole('button', { name: /^Undo: / }).waitFor();
    await page.keyboard.press('Enter'); // the focus has stayed where the hand was
    await page.getByRole('button', { name: /^Done: .*Herd$/ }).waitFor();

    await page.reload();
    await page.getByRole('heading', { name: 'Animals' }).waitFor();
    await press(page, /^To the page$/, 2);
    expect(await page.evaluate('document.activeElement.id')).toBe('page');
    await page.keyboard.press('Shift+Tab');
    for (const title of ['The year', 'Grass and cattle']) {
      await press(page, new RegExp(`^${title}`), 30);
      await page.getByRole('heading', { name: title, level: 1 }).waitFor();
      await page.keyboard.press('Shift+Tab');
      await page.reload();
      await page.getByRole('heading', { name: title, level: 1 }).waitFor();
    }
    expect(errors).toEqual([]);
  });

  it('keeps the keys where the work is when a dialog is left with something typed in it', async () => {
    const farm = await house.sampleFarm();
    const { page, errors } = await house.page('desktop');
    await page.goto(`${farm}/work/own`);
    const add = page.getByRole('button', { name: 'Add a job', exact: true });
    const throwAway = page.getByRole('button', { name: 'Throw it away' });
    await add.press('Enter');
    await page.getByRole('dialog').getByLabel('Name', { exact: true }).fill('Split logs');
    await page.getByRole('dialog').getByRole('button', { name: 'Close' }).press('Enter');
    await throwAway.press('Enter');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.waitForTimeout(500); // nothing takes them away afterwards
    expect(await add.evaluate((button) => button.matches(':focus'))).toBe(true);

    await page.goto(`${farm}/today`);
    await page.getByRole('button', { name: 'Tell what happened: Cows' }).press('Enter');
    await page.getByRole('dialog').getByRole('button', { name: 'A note' }).press('Enter');
    await page.getByRole('dialog').getByRole('textbox').first().fill('Limping');
    await page
      .getByRole('dialog')
      .getByRole('button', { name: 'Back', exact: true })
      .press('Enter');
    await throwAway.press('Enter');
    await page.locator('[role=dialog] .form-dialog:focus').waitFor();
    expect(errors).toEqual([]);
  });
});

describe('a screen enlarged to 200 % and to 400 %', () => {
  it('shows every place without sliding the page sideways', async () => {
    const farm = await house.sampleFarm();
    const { page, errors } = await house.page('desktop');
    // WCAG 2.2, 1.4.10: a page of 1,280 px at 400 % is 320 px wide.
    const places = ['/today', '/year', '/batches', '/pasture', '/work/plan', '/place'];
    for (const [width, seen] of [
      [640, places.slice(0, 2)],
      [320, places],
    ] as const) {
      await page.setViewportSize({ width, height: 512 });
      for (const place of seen) {
        await page.goto(`${farm}${place}`);
        await page.getByRole('heading', { level: 1 }).waitFor();
        expect({ place, width, isWide: await isWide(page) }).toEqual({
          place,
          width,
          isWide: false,
        });
      }
    }
    expect(errors).toEqual([]);
  });
});

describe('a household that writes numbers another way', () => {
  it('types and reads a comma for decimals, from the start to the prices', async () => {
    const { page, errors } = await house.page('phone', { locale: 'de-DE' });
    await page.goto(`${house.url}/start`);
    await page.getByRole('button', { name: 'Type coordinates' }).click();
    await page.getByLabel('Latitude').fill('48,137');
    await page.getByLabel('Longitude').fill('11,575');
    await page.getByLabel('Meat birds', { exact: true }).fill('25');
    await page.getByRole('button', { name: 'Make my plan' }).click();
    await page.getByRole('heading', { name: 'Your plan is made' }).waitFor();
    await page.getByRole('link', { name: 'Go to my farm' }).click();
    await page.getByRole('heading', { name: 'Animals' }).waitFor();
    const farm = page.url().replace(/\/\w+$/, '');
    await page.goto(`${farm}/place`);
    const power = page.getByLabel(/^Electricity, one kWh/);
    await power.fill('0,38');
    await page.getByRole('button', { name: 'Save the farm' }).click();
    await page.getByText('Saved.').waitFor();
    const saved = (await (await fetch(farm.replace('/farm/', '/api/farms/'))).json()) as {
      electricityPricePerKWh: string;
      latitudeDeg: number;
      units: string;
    };
    expect(saved).toMatchObject({
      electricityPricePerKWh: '0.38',
      latitudeDeg: 48.137,
      units: 'metric',
    });
    await page.reload();
    await power.waitFor();
    // The page is written in English, with a point; both are read alike.
    expect(await power.inputValue()).toBe('0.38');
    expect(errors).toEqual([]);
  });
});

describe('two phones in one household', () => {
  it('see what the other has ticked off as soon as they are looked at', async () => {
    const farm = await house.sampleFarm();
    const [one, other] = [await house.page('phone'), await house.page('phone')];
    for (const { page } of [one, other]) {
      await page.goto(`${farm}/today`);
      await page.getByRole('heading', { name: 'Animals' }).waitFor();
    }
    const chore = one.page.getByRole('button', { name: /^Done: .+, Cows$/ }).first();
    const name = (await chore.getAttribute('aria-label'))!.replace('Done: ', '');
    // A quiet network may be one that has not begun: the tick itself must have been taken.
    const taken = one.page.waitForResponse(
      (answer) => answer.request().method() === 'POST' && answer.ok(),
    );
    await chore.click();
    await taken;
    // Taken out of the pocket again.
    await other.page.evaluate(
      `document.dispatchEvent(new Event('visibilitychange', { bubbles: true }))`,
    );
    await other.page.getByRole('button', { name: `Undo: ${name}`, exact: true }).waitFor();
    expect([...one.errors, ...other.errors]).toEqual([]);
  });
});

describe('the page that a farm opens on', () => {
  it('has its day asked for with it, once, before its script has come', async () => {
    const { page, errors } = await house.page('phone');
    const farm = await house.sampleFarm();
    const asked: string[] = [];
    page.on('request', (request) => {
      const { pathname } = new URL(request.url());
      if (/^\/api\/farms\/[^/]+(\/today)?$/.test(pathname)) asked.push(pathname);
    });
    await page.goto(`${farm}/today`);
    await page.getByRole('heading', { name: 'Animals' }).waitFor();
    const api = new URL(farm).pathname.replace('/farm/', '/api/farms/');
    expect(asked.toSorted()).toEqual([api, `${api}/today`]);
    // The browser asked for both for the header that came with the page.
    const by = await page.evaluate<string[]>(
      `performance.getEntriesByType('resource').filter(({ name }) => name.endsWith('/today')).map((each) => each.initiatorType)`,
    );
    expect(by).toEqual(['link']);
    expect(errors).toEqual([]);
  });
});
