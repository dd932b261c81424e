import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import { text } from 'node:stream/consumers';
import type { Page } from 'playwright-core';
import { inDays } from '../support/orders.js';
import { House, seriousFindings, unfold } from '../support/page.js';

jest.setTimeout(120_000);

let house: House;
beforeAll(async () => {
  house = await House.open();
});
afterAll(() => house.close());

/** "$1,234.50" in cents. */
const cents = (money: string): number => Math.round(Number(money.replace(/[^\d.]/g, '')) * 100);

/** What each trip of the year comes to, in cents, whether it stands open or folded. */
async function tripSums(page: Page): Promise<number[]> {
  await page.locator('.feed-lines').first().waitFor();
  return (await page.locator('.feed-lines tfoot td:last-child').allTextContents()).map(cents);
}

const sumOf = (all: readonly number[]): number => all.reduce((sum, each) => sum + each, 0);

describe('the feed of the year', () => {
  it('says on a phone what the year costs, and the next trip as a list to buy by', async () => {
    const farm = await house.sampleFarm();
    const { page, errors } = await house.page('phone');
    await page.goto(`${farm}/feed`);
    const lead = page.locator('.feed-lead');
    await lead.waitFor();
    expect(await lead.innerText()).toMatch(
      /^\$[\d,]+\.\d\d for feed from today to .*, on \d+ trips\. \w+ \d{4} costs the most: /,
    );
    const trip = page.locator('.feed-trips > li').first();
    expect(await trip.innerText()).toMatch(/\d+ ×\s+[A-Z].*\s+50 lb at \$\d+\.\d\d, enough to /);
    const costs = await trip.locator('tbody td:last-child').allTextContents();
    expect(sumOf(costs.map(cents))).toBe((await tripSums(page))[0]);
    await unfold(page, 'In the store');
    await unfold(page, 'Feed by feed');
    await page
      .getByRole('rowheader', { name: /Layer feed/ })
      .last()
      .waitFor();
    expect(await page.getByRole('link', { name: 'mix your own' }).getAttribute('href')).toMatch(
      /\/feed\/mix$/,
    );
    expect(await seriousFindings(page)).toEqual([]);
    expect(
      await page.evaluate('document.documentElement.scrollWidth <= window.innerWidth + 1'),
    ).toBe(true);
    expect(errors).toEqual([]);
  });

  it('gives the same trips to a spreadsheet and to paper', async () => {
    const { page, errors } = await house.page('desktop');
    await page.goto(`${await house.sampleFarm()}/feed`);
    const sums = await tripSums(page);
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: 'Spreadsheet' }).click(),
    ]);
    const [head, ...rows] = (await text(await file.createReadStream())).trim().split(/\r?\n/);
    const fields = (row: string): string[] => row.match(/("[^"]*"|[^,]*)(,|$)/g)!;
    const cost = fields(head!).findIndex((field) => field.startsWith('"Cost, USD'));
    // What cattle get on other days has no seller.
    const ofTrips = rows.filter((row) => fields(row)[2] !== ',');
    expect(sumOf(ofTrips.map((row) => cents(fields(row)[cost]!)))).toBe(sumOf(sums));
    await page.getByRole('link', { name: 'Print the list' }).click();
    await page.getByRole('heading', { name: 'Feed to buy' }).waitFor();
    expect(await tripSums(page)).toEqual(sums);
    expect(errors).toEqual([]);
  });

  it('goes to another seller for a price that holds from some bags on', async () => {
    const farm = await house.sampleFarm();
    const { page, errors } = await house.page('phone');
    await page.goto(`${farm}/place`);
    await page.getByRole('button', { name: 'Add where you buy' }).click();
    const form = page.getByRole('dialog');
    await form.getByLabel('Name').fill('Grain barn');
    await form.getByLabel(/^One trip or delivery costs/).fill('5.00');
    expect(await seriousFindings(page, '[role=dialog]')).toEqual([]);
    await form.getByRole('button', { name: 'Save' }).click();
    await page.getByText('Grain barn', { exact: true }).waitFor();
    await page.getByRole('button', { name: 'Change Layer feed' }).click();
    await form.getByLabel('Bought from').selectOption({ label: 'Grain barn' });
    await form.getByRole('button', { name: 'Add a price for more bags' }).click();
    await form.getByLabel('From, bags').last().fill('2');
    await form.getByLabel('Each, USD').last().fill('9.50');
    expect(await seriousFindings(page, '[role=dialog]')).toEqual([]);
    await form.getByRole('button', { name: 'Save' }).click();
    await form.waitFor({ state: 'hidden' });
    await page.goto(`${farm}/feed`);
    await page.getByText('Grain barn', { exact: true }).first().waitFor();
    await page
      .getByText(/50 lb at \$9\.50/)
      .first()
      .waitFor();
    expect(errors).toEqual([]);
  });

  it('offers the feeds by name when one was bought, and fills in its bag', async () => {
    const { page, errors } = await house.page('phone');
    await page.goto(`${await house.sampleFarm()}/today`);
    await page.getByRole('button', { name: /^Rain, shopping, note/ }).click();
    await page.getByRole('button', { name: 'Something was bought' }).click();
    const name = page.getByLabel('Name', { exact: true });
    await name.fill('Layer');
    await page.locator('datalist option[value="Layer feed"]').waitFor({ state: 'attached' });
    // The names came later than the box: whoever types in it goes on.
    await page.keyboard.type(' feed');
    expect(await name.inputValue()).toBe('Layer feed');
    expect(await page.getByLabel(/^One of them/).inputValue()).toBe('50');
    expect(errors).toEqual([]);
  });

  it('says of last year’s receipts where the money went, and what to do otherwise', async () => {
    const farm = await house.sampleFarm();
    const { page, errors } = await house.page('phone');
    await page.goto(`${farm}/feed`);
    const spent = page
      .locator('section')
      .filter({ has: page.getByRole('heading', { name: 'Where last year’s money went' }) });
    /** All that was spent, and of it for feed alone, without the trips that it took. */
    const spending = async (): Promise<{ all: number; feed: number }> => {
      const said = await spent.locator('.feed-lead').innerText();
      const [all, trips] = said.match(/\$[\d,]+\.\d\d/g)!.map(cents);
      return { all: all!, feed: all! - trips! };
    };
    await spent.locator('.feed-lead b').waitFor();
    const before = await spending();
    await spent.getByRole('link', { name: 'More receipts' }).click();
    await page.getByLabel('Feed', { exact: true }).fill('Layer mash');
    await page.getByLabel('Bags').first().fill('6');
    await page.getByLabel('Paid').first().fill('117.60');
    await page.getByRole('button', { name: 'Save the receipt' }).click();
    await page.getByText('One line is saved.').waitFor();
    await unfold(page, 'From a spreadsheet');
    const day = inDays(-30);
    await page
      .getByLabel('Lines from a spreadsheet')
      .fill(`${day}, Valley mill, Layer mash, 6, 117.60\n${day}, Valley mill, Layer mash, none, 1`);
    await page.getByText(/^Line 2/).waitFor();
    await page
      .getByLabel('Lines from a spreadsheet')
      .fill(`${day}, Valley mill, Layer mash, 6, 117.60`);
    expect(await seriousFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Save this line' }).click();
    await page.getByText('2 lines are saved.').waitFor();
    await page.getByRole('link', { name: 'Where it went' }).click();
    await spent.getByRole('heading', { name: 'What to do otherwise' }).waitFor();
    const after = await spending();
    expect(after.feed).toBe(before.feed + 2 * 117_60);
    expect(await spent.locator('.feed-ways li').first().innerText()).toMatch(/\$\d/);
    await unfold(page, 'By feed');
    const byFeed = spent.locator('table').first().locator('td');
    expect(sumOf((await byFeed.allInnerTexts()).map(cents))).toBe(after.all);
    expect(await seriousFindings(page)).toEqual([]);
    expect(errors).toEqual([]);
  });
});
