import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { House } from '../support/page.js';

let house: House;
beforeAll(async () => (house = await House.open()));
afterAll(() => house.close());

/** Answers of the service that match come only when they are let through. */
async function holdBack(
  page: Page,
  address: RegExp,
): Promise<{ asked: () => number; letGo: () => void }> {
  let letGo = (): void => undefined;
  const isLetGo = new Promise<void>((done) => (letGo = done));
  let asked = 0;
  await page.route(address, async (route) => {
    asked += 1;
    await isLetGo;
    await route.continue().catch(() => undefined); // the page may have gone on without it
  });
  return { asked: () => asked, letGo };
}

async function sayWhere(page: Page): Promise<void> {
  await page.goto(`${house.url}/start`);
  await page.getByRole('button', { name: 'Type coordinates' }).click();
  await page.getByLabel(/^Latitude/).fill('42.9 N');
  await page.getByLabel(/^Longitude/).fill('75.3 W');
  await page.getByRole('button', { name: 'Take them' }).click();
}

describe('a start over a slow line', () => {
  it('keeps what is typed while the place is looked up, and asks for it once', async () => {
    const { page, errors } = await house.page('phone');
    const place = await holdBack(page, /\/api\/places\/at/);
    await sayWhere(page);
    await page.getByRole('button', { name: 'More adults' }).click();
    await page.getByRole('group', { name: 'Adult 1 has time' }).getByText('All day').click();
    await page.getByLabel('Layers', { exact: true }).fill('40');
    await page.getByLabel('Cattle', { exact: true }).fill('5');
    await page.waitForTimeout(1000); // longer than a hand rests before coordinates count by themselves
    place.letGo();
    await page.getByRole('button', { name: 'Another place' }).waitFor();
    expect(place.asked()).toBe(1);
    expect(await page.getByLabel('Layers', { exact: true }).inputValue()).toBe('40');
    expect(await page.getByLabel('Cattle', { exact: true }).inputValue()).toBe('5');
    expect(
      await page.getByRole('group', { name: 'Adult 1 has time' }).getByLabel('All day').isChecked(),
    ).toBe(true);
    await page.getByRole('group', { name: 'Adult 3 has time' }).waitFor();
    expect(errors).toEqual([]);
  });

  it('takes the town that was pressed, whatever was asked before answers later', async () => {
    const { page, errors } = await house.page('phone');
    const spot = await holdBack(page, /\/api\/places\/at/);
    await sayWhere(page);
    await page.getByLabel('Town or village').fill('montpelier, vt');
    await page.getByLabel('Town or village').press('Enter');
    await page.getByRole('button', { name: 'Montpelier VT, United States' }).click();
    await page.getByLabel(/^Height above sea level/).fill('600');
    const late = page.waitForResponse(/\/api\/places\/at/);
    spot.letGo();
    await late;
    await page.waitForTimeout(200);
    expect(await page.locator('.start-known').innerText()).toMatch(/^Montpelier/);
    expect(await page.getByLabel(/^Height above sea level/).inputValue()).toBe('600');
    expect(errors).toEqual([]);
  });

  it('takes nothing more once the plan is being made', async () => {
    const { page, errors } = await house.page('phone');
    await sayWhere(page);
    await page.getByLabel('Layers', { exact: true }).fill('40');
    const made = await holdBack(page, /\/api\/farms\/start/);
    await page.getByRole('button', { name: 'Make my plan' }).click();
    await page.locator('.start-blocks[inert]').waitFor();
    made.letGo();
    await page.getByRole('heading', { name: 'Your plan is made' }).waitFor();
    expect(errors).toEqual([]);
  });
});

describe('numbers of a start', () => {
  it('goes back to one that cannot be read instead of leaving it out, and takes a nought as none', async () => {
    const { page, errors } = await house.page('phone');
    await sayWhere(page);
    const [meat, layers] = ['Meat birds', 'Layers'].map((each) =>
      page.getByLabel(each, { exact: true }),
    );
    await layers!.fill('20');
    await meat!.fill('7x5');
    await page.getByRole('button', { name: 'Another place' }).waitFor();
    await page.getByRole('button', { name: 'Make my plan' }).click();
    expect(await meat!.evaluate((each) => each === each.ownerDocument.activeElement)).toBe(true);
    await meat!.fill('0');
    await page.getByRole('button', { name: 'Somebody will be away' }).click();
    await page.getByLabel('From', { exact: true }).fill('2099-05-01');
    await page.getByRole('button', { name: 'Make my plan' }).click();
    await page.getByText('Give the last day as well.').waitFor();
    await page.getByRole('button', { name: 'Remove' }).click();
    await page.getByText('None come.').waitFor();
    const sent = page.waitForRequest(/\/api\/farms\/start/);
    await page.getByRole('button', { name: 'Make my plan' }).click();
    expect((await sent).postDataJSON()).toMatchObject({ layers: { birds: 20 } });
    await page.getByRole('heading', { name: 'Your plan is made' }).waitFor();
    await page.locator('.start-facts').waitFor();
    expect(await page.locator('.start-facts').innerText()).not.toContain('Meat birds');
    expect(errors).toEqual([]);
  });
});

describe('why birds come when they do', () => {
  it('names the better week where the month that was picked has no good one', async () => {
    const { page, errors } = await house.page('phone');
    await sayWhere(page);
    await page.getByLabel('Meat birds', { exact: true }).fill('75');
    const when = page.getByLabel('Meat birds: when');
    const january = await when.locator('option', { hasText: 'Jan' }).getAttribute('value');
    await when.selectOption(january);
    await page.getByRole('button', { name: 'Another place' }).waitFor();
    await page.getByRole('button', { name: 'Make my plan' }).click();
    const words = page.getByText(/would do better on/);
    await words.waitFor();
    const text = await page.getByRole('region', { name: 'Arrival' }).innerText();
    expect(text).toMatch(/No nights are warm enough to move out before the end/);
    // A start's brooder stands somewhere warm in January, where its heat costs about as much as in March.
    expect(text).not.toContain('Heat for the brooder then costs');
    await page.getByRole('button', { name: /^Take / }).press('Enter');
    await words.waitFor({ state: 'detached' });
    await page.locator('section[aria-label="Arrival"]:focus').waitFor(); // the keys stay there
    expect(errors).toEqual([]);
  });
});
