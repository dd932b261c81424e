import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Page } from 'playwright-core';
import { House, openMore, openParts, seriousFindings } from '../support/page.js';

jest.setTimeout(180_000);

let house: House;
let farmId: string;
let batchId: string;
beforeAll(async () => {
  house = await House.open();
  const { page } = await house.page('desktop');
  const made = await page.request.post(`${house.url}/api/farms/sample`);
  ({ id: farmId } = (await made.json()) as { id: string });
  const answer = await page.request.get(`${house.url}/api/farms/${farmId}/batches`);
  const batches = (await answer.json()) as { id: string; purpose: string; arrivalDate: string }[];
  const meat = batches.filter(({ purpose }) => purpose === 'meat');
  batchId = meat.sort((a, b) => (a.arrivalDate < b.arrivalDate ? -1 : 1)).at(-1)!.id;
});
afterAll(() => house.close());

async function open(path: string): Promise<{ page: Page; errors: string[] }> {
  const opened = await house.page('phone');
  await opened.page.goto(`${house.url}/farm/${farmId}/${path}`);
  await opened.page.getByRole('heading', { level: 1 }).waitFor({ timeout: 60_000 });
  return opened;
}

const isWithinPage = (page: Page): Promise<unknown> =>
  page.evaluate('document.documentElement.scrollWidth <= window.innerWidth + 1');

describe('what a batch costs, on a phone', () => {
  it('says when to stop feeding, what it must bring and what moves it, each behind a touch', async () => {
    const { page, errors } = await open(`batches/${batchId}`);
    await openParts(page);
    await openMore(page, 'What it must bring');
    await page.getByText(/a lb, dressed, pays for what you buy/).waitFor();
    await openMore(page, 'When to stop feeding');
    await page.getByText(/^The meat costs least on/).waitFor();
    const weeks = page.getByRole('region', { name: 'Feed and money by week' });
    expect(await weeks.getByRole('row').count()).toBeGreaterThan(8);
    await openMore(page, 'What moves it most');
    await page.getByText('How they grow').waitFor();
    expect(await seriousFindings(page, '#cost')).toEqual([]);
    expect(await isWithinPage(page)).toBe(true);
    // The bill at the end of the weeks is the bill above them.
    const bill = await page.locator('#cost .story-number .open-number').textContent();
    await weeks.getByRole('button', { name: `Cost so far: ${bill}` }).waitFor();
    expect(errors).toEqual([]);
  });

  it('opens the best day, says what another day costs, and plans the best', async () => {
    const { page } = await open(`batches/${batchId}`);
    await openParts(page);
    await openMore(page, 'When to stop feeding');
    const best = page.getByRole('button', { name: /^Best day to process:/ });
    await best.click();
    await page.getByText(/all of the meat together costs least/).waitFor();
    await page.keyboard.press('Escape');
    await page.getByLabel('A day or slot you could get').fill('2010-01-01');
    await page.getByText(/No such day of these birds/).waitFor();
    const day = (await best.textContent())!;
    await page.getByRole('button', { name: 'Plan the best day' }).click();
    await page.locator('#end').getByText(day).first().waitFor();
  });

  it('sets other ways to raise it side by side, the difference in words first', async () => {
    const { page, errors } = await open(`compare/${batchId}`);
    await page.getByText(/a lb dearer, dressed/).waitFor();
    await page.getByLabel('What to change').selectOption({ label: 'Two batches in place of one' });
    await page.getByText('Two batches, 3 weeks apart:').waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    expect(await isWithinPage(page)).toBe(true);
    expect(errors).toEqual([]);
  });
});
