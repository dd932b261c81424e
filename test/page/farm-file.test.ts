import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import { buffer } from 'node:stream/consumers';
import { House, seriousFindings } from '../support/page.js';

jest.setTimeout(120_000);

let house: House;
beforeAll(async () => {
  house = await House.open();
});
afterAll(() => house.close());

describe.each(['desktop', 'phone'] as const)('a farm as a file, %s', (size) => {
  it('is downloaded and read back on the page, and a broken file is refused in place', async () => {
    const { page, errors } = await house.page(size);
    const farm = await house.sampleFarm();
    await page.goto(`${farm}/place`);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Download this farm' }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/^broodfold-thistledown-sample-[\d-]+\.zip$/);
    await page.getByText(`Downloaded as ${download.suggestedFilename()}.`).waitFor();
    const bytes = await buffer(await download.createReadStream());

    await page.goto(`${house.url}/`);
    const choose = async (buffer: Buffer): Promise<void> => {
      const [chooser] = await Promise.all([
        page.waitForEvent('filechooser'),
        page.getByRole('button', { name: 'Farm file' }).click(),
      ]);
      await chooser.setFiles({ name: 'farm.zip', mimeType: 'application/zip', buffer });
    };
    await choose(bytes.subarray(0, 2000));
    await page
      .getByText('The file cannot be read: its end is missing, so it was cut off.')
      .waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    await choose(bytes);
    await page.waitForURL(/\/farm\/[^/]+\/today$/);
    expect(page.url()).not.toContain(farm);
    await page.getByRole('link', { name: 'Spring hens' }).first().waitFor();
    expect(errors).toEqual([]);
  });
});
