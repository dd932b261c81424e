import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Page } from 'playwright-core';
import { House } from '../support/page.js';

jest.setTimeout(240_000);

let house: House;
beforeAll(async () => {
  house = await House.open();
});
afterAll(() => house.close());

/** The work of a fresh sample farm. */
async function openWork(page: Page): Promise<void> {
  await page.goto(`${house.url}/`);
  await page.getByRole('button', { name: 'Open the sample farm' }).click();
  await page.getByRole('heading', { name: 'Batches' }).waitFor();
  await page.goto(page.url().replace(/\/batches$/, '/work'));
  await page.getByRole('heading', { name: 'The work' }).waitFor({ timeout: 60_000 });
}

async function addJob(page: Page, name: string, hours: string): Promise<void> {
  await page.getByRole('button', { name: 'Add a job' }).click();
  await page.getByRole('textbox', { name: 'Name' }).fill(name);
  await page.getByRole('textbox', { name: 'Hours of each who takes part' }).fill(hours);
  await page.getByRole('button', { name: 'Save' }).click();
}

describe.each(['desktop', 'phone'] as const)('the work, %s', (size) => {
  it('shows the next days, hours and bars without a serious finding, an error or sideways scroll', async () => {
    const { page, errors } = await house.page(size);
    await openWork(page);
    for (const heading of ['Today and the next three days', 'Hours by week', 'The season'])
      await page.getByRole('heading', { name: heading }).waitFor();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(
      violations.filter((v) => v.impact === 'serious' || v.impact === 'critical').map((v) => v.id),
    ).toEqual([]);
    expect(
      await page.evaluate('document.documentElement.scrollWidth <= window.innerWidth + 1'),
    ).toBe(true);
    expect(errors).toEqual([]);
  });
});

describe('the household’s own work', () => {
  it('is planned at once, says why, and is ticked off', async () => {
    const { page } = await house.page('phone');
    await openWork(page);
    await addJob(page, 'Mend the gate', '1');
    await page.getByRole('button', { name: 'Done: Mend the gate' }).first().waitFor();
    await page.getByText('Why now: The first day there is time for it').first().waitFor();
    await page.getByRole('button', { name: 'Done: Mend the gate' }).first().click();
    await page
      .getByRole('button', { name: 'Done: Mend the gate' })
      .first()
      .waitFor({ state: 'detached', timeout: 30_000 });
  });

  it('is listed with what would make it fit when it does not', async () => {
    const { page } = await house.page('desktop');
    await openWork(page);
    await addJob(page, 'Build the whole barn', '30');
    await page.getByText('Build the whole barn: 30 h').waitFor();
    await page.getByRole('button', { name: 'Change Build the whole barn' }).click();
    await page.getByRole('checkbox', { name: 'May be spread over several days' }).uncheck();
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByRole('heading', { name: 'Will not fit' }).waitFor({ timeout: 30_000 });
    await page.getByText('30 h, due by').waitFor();
    await page.getByText('or a helper for as long').first().waitFor();
  });
});
