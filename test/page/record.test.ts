import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Page } from 'playwright-core';
import { batchBody, inDays } from '../support/orders.js';
import { newFarm } from '../support/factories.js';
import { House, openMore, openParts, seriousFindings } from '../support/page.js';

jest.setTimeout(120_000);

let house: House;
beforeAll(async () => (house = await House.open()));
afterAll(() => house.close());

/** A farm with a batch that is over but for a bird or two. */
async function farmWithRecord(): Promise<{ id: string; batch: string }> {
  const { id } = await house.post<{ id: string }>('/farms', newFarm({ units: 'us' }));
  const { id: batch } = await house.post<{ id: string }>(`/farms/${id}/batches`, {
    ...batchBody({ name: 'Spring', arrivalDate: inDays(-70), orderedBirds: 50 }),
  });
  const tell = (kind: string, on: string, details: object) =>
    house.post(`/farms/${id}/told`, {
      facts: [{ kind, about: batch, on, details, saidBy: 'Adult A' }],
    });
  await tell('arrived', inDays(-70), { birds: 50 });
  await tell('died', inDays(-60), { birds: 6 });
  await tell('processed', inDays(-14), { birds: 40, liveKg: 100 });
  return { id, batch };
}

const row = (page: Page, text: string | RegExp) => page.locator('.record-row', { hasText: text });

describe('the record on a phone', () => {
  it('sets breeds and years side by side, and says of how many batches a figure is known', async () => {
    const { id, batch } = await farmWithRecord();
    const tell = (about: string, kind: string, on: string, details: object) =>
      house.post(`/farms/${id}/told`, { facts: [{ kind, about, on, details }] });
    await tell(batch, 'died', inDays(-14), { birds: 4 });
    const { id: before } = await house.post<{ id: string }>(`/farms/${id}/batches`, {
      ...batchBody({ name: 'Of before', arrivalDate: inDays(-500), orderedBirds: 30 }),
    });
    await tell(before, 'arrived', inDays(-500), { birds: 30 });
    await tell(before, 'processed', inDays(-450), { birds: 30 });
    const { page, errors } = await house.page('phone');
    await page.goto(`${house.url}/farm/${id}/record`);
    const table = page.getByRole('region', { name: 'Breeds and years side by side' });
    const all = table.getByRole('row', { name: /all years/ });
    // Years are long on a phone: they are a touch deeper.
    await page.locator('summary', { hasText: 'Breeds and years side by side' }).waitFor();
    expect(await all.isVisible()).toBe(false);
    await openMore(page, 'Breeds and years side by side');
    await all.getByText('2 batches').waitFor();
    expect(await all.innerText()).toMatch(/80[^]*10 \(12.5 %\)[^]*5.51 lb \(1 of 2\)/);
    expect(await seriousFindings(page)).toEqual([]);
    await page.goto(`${house.url}/farm/${id}/record/print/${inDays(-14).slice(0, 4)}`);
    await table.getByRole('row', { name: /all years/ }).waitFor();
    expect(errors).toEqual([]);
  });

  it('shows what was told; a change keeps what it was, and taking back can be undone', async () => {
    const { id } = await farmWithRecord();
    const { page, errors } = await house.page('phone');
    await page.goto(`${house.url}/farm/${id}/record`);
    await row(page, '6 died')
      .getByText(/Told by Adult A/)
      .waitFor();
    await row(page, '40 birds processed').waitFor();

    await row(page, '6 died').getByRole('button', { name: 'Change' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Birds that died').fill('10');
    await dialog.getByRole('button', { name: 'Change it' }).click();
    await row(page, '10 died')
      .getByText(/Was: 6 died, told by Adult A/)
      .waitFor();

    await row(page, '10 died').getByRole('button', { name: 'Take back' }).click();
    await row(page, '10 died')
      .getByText(/Taken back/)
      .waitFor();
    await row(page, /6 died/)
      .getByRole('button', { name: 'Take back' })
      .waitFor(); // it holds again
    await row(page, '10 died').getByRole('button', { name: 'Undo' }).click();
    await row(page, /10 died.*Was: 6 died/)
      .getByRole('button', { name: 'Change' })
      .waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    expect(errors).toEqual([]);
  });

  it('shows only what it is asked for, and is reached from the batch that is over', async () => {
    const { id, batch } = await farmWithRecord();
    await house.post(`/farms/${id}/told`, {
      facts: [{ kind: 'died', about: batch, on: inDays(-30), details: { birds: 4 } }],
    });
    const { page, errors } = await house.page('phone');
    await page.goto(`${house.url}/farm/${id}/batches/${batch}`);
    await page.getByRole('heading', { name: 'How it went' }).waitFor();
    await openParts(page);
    await page.getByRole('link', { name: 'All that was told of them' }).click();
    await row(page, '40 birds processed').waitFor();
    await page.getByLabel('What').selectOption('Birds that died');
    await row(page, '40 birds processed').waitFor({ state: 'detached' });
    await row(page, '4 died').waitFor();
    await page.getByRole('region', { name: 'How batches went' }).getByText('Spring').waitFor();
    expect(errors).toEqual([]);
  });

  it('starts the next year from what was raised, and goes into a binder', async () => {
    const { id, batch } = await farmWithRecord();
    await house.post(`/farms/${id}/told`, {
      facts: [{ kind: 'died', about: batch, on: inDays(-30), details: { birds: 4 } }],
    });
    const year = Number(inDays(-70).slice(0, 4));
    const { page, errors } = await house.page('phone');
    await page.goto(`${house.url}/farm/${id}/record`);
    await page.getByRole('heading', { name: 'The record' }).waitFor();
    if (inDays(0).slice(0, 4) !== `${year}`)
      await page.getByRole('button', { name: `The year ${year}` }).click();
    await page.getByRole('button', { name: `Start ${year + 1} from ${year}` }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByText(/From your record: 0 of 50 were lost in the first week/).waitFor();
    expect(await seriousFindings(page, '[role=dialog]')).toEqual([]);
    await dialog.getByRole('button', { name: `Plan these for ${year + 1}` }).click();
    await dialog.getByText(/^Saved\./).waitFor();
    const batches = (await (await fetch(`${house.url}/api/farms/${id}/batches`)).json()) as {
      id: string;
      name: string;
      laterLossPercent?: number;
    }[];
    const made = batches.find((each) => each.id !== batch)!;
    expect(made.name).toBe(`Spring ${year + 1}`);
    expect(made.laterLossPercent).toBeGreaterThan(0);

    await dialog.getByRole('button', { name: 'Undo' }).click();
    await dialog.getByText('All of it is taken out again.').waitFor();
    const left = (await (await fetch(`${house.url}/api/farms/${id}/batches`)).json()) as object[];
    expect(left).toHaveLength(batches.length - 1);

    await page.goto(`${house.url}/farm/${id}/record/print/${year}`);
    await page.getByRole('heading', { name: 'Day by day' }).waitFor();
    await page.locator('.binder-days').getByText('40 birds processed').waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    expect(errors).toEqual([]);
  });
});
