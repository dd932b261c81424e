import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import { inDays } from '../support/orders.js';
import { newBatch, newBrooder, newFarm } from '../support/factories.js';
import { House, seriousFindings } from '../support/page.js';

jest.setTimeout(240_000);

let house: House;
beforeAll(async () => {
  house = await House.open();
});
afterAll(() => house.close());

/** A farm with birds of four weeks, saved by the service. */
async function fourWeeksOld(): Promise<string> {
  const post = async (path: string, body: object): Promise<{ id: string }> => {
    const headers = { 'content-type': 'application/json' };
    const answer = await fetch(`${house.url}/api/${path}`, {
      ...{ method: 'POST', headers, body: JSON.stringify(body) },
    });
    return (await answer.json()) as { id: string };
  };
  const farm = await post('farms', newFarm({ units: 'us' }));
  const { id: _id, ...brooder } = newBrooder();
  const { id: brooderId } = await post(`farms/${farm.id}/facilities`, brooder);
  const order = newBatch({ brooderId, name: 'Spring birds', arrivalDate: inDays(-27) });
  const batch = await post(`farms/${farm.id}/batches`, order);
  return `${house.url}/farm/${farm.id}/batches/${batch.id}`;
}

describe.each(['desktop', 'phone'] as const)('birds on a scale, %s', (size) => {
  it('are typed in pounds, correct the plan, and can be deleted', async () => {
    const { page, errors } = await house.page(size);
    await page.goto(await fourWeeksOld());
    const section = page.locator('section', {
      has: page.getByRole('heading', { name: 'Weigh the birds' }),
    });
    const feed = page.getByRole('button', { name: /^Feed for the whole batch: / });
    const usual = await feed.textContent();
    await section.getByLabel('Birds weighed').fill('10');
    await section.getByLabel('All together, lb').fill('20');
    await section.getByText('2.00 lb each').waitFor();
    await section.getByRole('button', { name: 'Save the weighing' }).click();
    await section.getByText('Your birds grow at').waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    expect(
      await page.evaluate('document.documentElement.scrollWidth > window.innerWidth + 1'),
    ).toBe(false);
    expect(await feed.textContent()).not.toBe(usual);
    await section.getByRole('button', { name: /^Growth by your weighings: / }).click();
    await page.getByRole('dialog').getByText('How fast your birds grow').waitFor();
    await page.keyboard.press('Escape');
    await section.getByRole('button', { name: /^Delete the weighing/ }).click();
    await page.getByRole('button', { name: 'Delete', exact: true }).last().click();
    await section.getByText('Your birds grow at').waitFor({ state: 'detached' });
    expect(await feed.textContent()).toBe(usual);
    expect(errors).toEqual([]);
  });
});
