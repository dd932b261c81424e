import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Page } from 'playwright-core';
import { House, seriousFindings, unfold } from '../support/page.js';

jest.setTimeout(120_000);

let house: House;
beforeAll(async () => {
  house = await House.open();
});
afterAll(() => house.close());

/** Addresses of the solver that a page has asked for. */
function solverAsked(page: Page): string[] {
  const asked: string[] = [];
  page.on('request', (request) => {
    if (/\.wasm$|load-solver/.test(request.url())) asked.push(request.url());
  });
  return asked;
}

const sheetOf = (page: Page, title: RegExp): Promise<string> =>
  page
    .locator('section', { has: page.getByRole('heading', { name: title }) })
    .first()
    .innerText();

describe('the mixer', () => {
  it('opens from a batch, fetches its solver only then, and mixes for its birds', async () => {
    const farm = await house.sampleFarm();
    const { page, errors } = await house.page('phone');
    const asked = solverAsked(page);
    await page.goto(`${farm}/batches`);
    await page.getByRole('link', { name: 'Open the plan of Spring meat birds' }).click();
    await unfold(page, 'Feed and water');
    const link = page.getByRole('link', { name: 'Mix your own for them' });
    await link.waitFor();
    expect(asked).toEqual([]);
    await link.click();
    await page.getByRole('heading', { name: /^Meat chickens: / }).waitFor();
    expect(asked.length).toBeGreaterThan(0);
    const sheet = await sheetOf(page, /^Meat chickens: /);
    expect(sheet).toMatch(/lb\s+Cracked corn/);
    expect(sheet).toMatch(/oz\s+Feed salt/);
    expect(sheet).toMatch(/Mixing saves about \$|Buying is cheaper by about \$/);
    expect(sheet).toMatch(/No mix is whole without vitamins/);
    expect(await seriousFindings(page)).toEqual([]);
    expect(errors).toEqual([]);
  });

  it('mixes anew at another age, without an ingredient and at another price', async () => {
    const { page, errors } = await house.page('desktop');
    await page.goto(`${await house.sampleFarm()}/feed/mix`);
    await page.getByRole('heading', { name: /^Meat chickens: starter/ }).waitFor();
    await page.getByLabel('For', { exact: true }).selectOption('brown-hens');
    await page.getByLabel('Age', { exact: true }).selectOption('layer');
    await page.getByRole('heading', { name: 'Brown-egg pullets and hens: laying' }).waitFor();
    expect(await sheetOf(page, /laying$/)).toMatch(/lb \d+ oz\s+Ground limestone/);
    await page.getByRole('checkbox', { name: /Ground limestone/ }).uncheck();
    await page.getByText(/No mix of these feeds them/).waitFor();
    expect(await sheetOf(page, /laying$/)).toMatch(/(Ground limestone|Oyster shell) would make/i);
    await page.getByRole('checkbox', { name: /Ground limestone/ }).check();
    await page.getByRole('button', { name: 'One mix for another flock too' }).click();
    await page.getByText(/No one feed does for all of them/).waitFor();
    await page.getByRole('button', { name: 'Leave them out' }).click();
    await page.getByRole('button', { name: 'Change Feed wheat' }).click();
    await page.getByLabel('Price, USD').fill('5.00');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByRole('cell', { name: 'Feed wheat', exact: true }).waitFor();
    await unfold(page, 'What would change it');
    await page.getByText(/More feed wheat would make it cheaper, but 30 % is the most/).waitFor();
    await unfold(page, 'Check it by hand');
    await page.getByText(/By the square/).waitFor();
    await page
      .getByRole('button', { name: /^Protein: / })
      .first()
      .click();
    await page.getByRole('dialog').getByText('What the mix holds').first().waitFor();
    expect(errors).toEqual([]);
  });

  it('begins without ingredients, takes one, and says what else a feed needs', async () => {
    const farm = await house.sampleFarm();
    const { page, errors } = await house.page('phone');
    const products = (await (
      await fetch(`${farm.replace('/farm/', '/api/farms/')}/products`)
    ).json()) as { id: string; kind: string }[];
    for (const { id, kind } of products) {
      if (kind !== 'ingredient') continue;
      await fetch(`${farm.replace('/farm/', '/api/farms/')}/products/${id}`, { method: 'DELETE' });
    }
    const asked = solverAsked(page);
    await page.goto(`${farm}/feed/mix`);
    await page.getByText(/Add what you can buy or grow/).waitFor();
    expect(asked.filter((url) => url.endsWith('.wasm'))).toEqual([]);
    await page.getByRole('button', { name: 'Choose what you can get' }).click();
    const ready = page.getByRole('dialog');
    for (const [name, price] of [
      ['Barley', '13.50'],
      ['Soybean meal (48 %)', '27'],
    ] as const) {
      await ready.getByRole('checkbox', { name }).check();
      await ready.getByLabel(`Price of ${name}`, { exact: true }).fill(price);
    }
    expect(await seriousFindings(page, '[role=dialog]')).toEqual([]);
    await ready.getByRole('button', { name: 'Add these 2' }).click();
    await ready.waitFor({ state: 'hidden' });
    await page.getByText(/No mix of these feeds them/).waitFor();
    expect(await sheetOf(page, /^Meat chickens: /)).toMatch(/would make it possible/);
    expect(await seriousFindings(page)).toEqual([]);
    expect(errors).toEqual([]);
  });
});
