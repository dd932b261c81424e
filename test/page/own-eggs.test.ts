import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import { House, openMore, openParts, seriousFindings } from '../support/page.js';

jest.setTimeout(240_000);

let house: House;
beforeAll(async () => {
  house = await House.open();
});
afterAll(() => house.close());

describe('own eggs, on a phone', () => {
  it('are set in an incubator or under a hen, and saved with their dates and work', async () => {
    const { page, errors } = await house.page('phone');
    const shots = process.env['SHOTS'];
    const shot = async (name: string): Promise<void> => {
      if (shots) await page.screenshot({ path: `${shots}/${name}.png`, fullPage: true });
    };
    const turnTo = async (button: string): Promise<void> => {
      await page.getByRole('button', { name: button }).click();
    };
    const choose = async (label: string, value: string): Promise<void> => {
      await page.getByLabel(label, { exact: true }).selectOption(value);
    };
    const expectReadable = async (): Promise<void> => {
      expect(await seriousFindings(page)).toEqual([]);
    };
    await page.goto(`${await house.sampleFarm()}/batches/new`);

    await page.getByLabel('Breed or cross', { exact: true }).waitFor();
    await choose('Breed or cross', 'heritage');
    await choose('Where they come from', 'incubator');
    await choose('Incubator', 'still-air');
    await page.getByRole('textbox', { name: 'Eggs set' }).fill('36');
    await shot('form');
    await expectReadable();
    await turnTo('See the plan');
    await openParts(page);
    await openMore(page, 'The eggs and the incubator');
    await page.getByRole('heading', { name: 'Incubator: without a fan' }).waitFor();
    await page
      .getByRole('button', { name: /Lockdown: stop turning/ })
      .first()
      .waitFor();
    await page.getByText('102 °F', { exact: true }).waitFor();
    await page.getByText('36 eggs').first().waitFor();
    await shot('incubator');
    await expectReadable();

    await turnTo('Change the order');
    await choose('Where they come from', 'hen');
    await turnTo('See the plan');
    await openParts(page);
    await openMore(page, 'The eggs and the hen');
    await page.getByRole('heading', { name: 'Under a hen' }).waitFor();
    expect(await page.getByRole('heading', { name: 'The brooder' }).count()).toBe(0);
    await shot('hen');
    await expectReadable();
    expect(
      await page.evaluate('document.documentElement.scrollWidth > window.innerWidth + 1'),
    ).toBe(false);
    await openMore(page, /more to do/);
    await page.getByText('Set the eggs under the hen at dusk').first().waitFor();
    await page.locator('.recharts-surface').first().waitFor();
    await shot('glance');

    await turnTo('Change the order');
    await choose('Breed or cross', 'turkey');
    await page
      .getByText(/carry blackhead to poults/)
      .first()
      .waitFor();
    await choose('Where they come from', 'incubator');
    await shot('turkey');
    await turnTo('See the plan');
    await openParts(page);
    await page.getByText('Poults are slow to find feed').waitFor();
    await page.getByRole('button', { name: /^Save/ }).click();
    await page.waitForURL(/batches\/(?!new)/);
    await page.reload();
    await page.getByRole('link', { name: /^Eggs set/ }).waitFor();
    expect(errors).toEqual([]);
  });
});
