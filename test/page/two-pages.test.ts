import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Page } from 'playwright-core';
import { House, seriousFindings } from '../support/page.js';

jest.setTimeout(240_000);

let house: House;
beforeAll(async () => {
  house = await House.open();
});
afterAll(() => house.close());

interface Row {
  readonly id: string;
  readonly name: string;
}

const get = async <T>(path: string): Promise<T> =>
  (await fetch(`${house.url}/api${path}`)).json() as Promise<T>;

/** A sample farm, and two pages that look at it. */
async function twoPages(): Promise<{ farm: string; one: Page; other: Page; errors: string[] }> {
  const made = await fetch(`${house.url}/api/farms/sample`, { method: 'POST' });
  const { id } = (await made.json()) as Row;
  const first = await house.page('desktop');
  const second = await house.page('phone');
  return {
    farm: `/farms/${id}`,
    one: first.page,
    other: second.page,
    errors: first.errors,
  };
}

/** Opens the form of the paddock that comes first. */
async function openPaddock(page: Page, farm: string, name: string): Promise<void> {
  await page.goto(`${house.url}${farm.replace('/farms', '/farm')}/pasture/land`);
  await page.getByRole('button', { name: `Change ${name}`, exact: true }).click();
  await page.getByRole('dialog').waitFor();
}

const dialog = (page: Page) => page.getByRole('dialog').last();
const question = (page: Page) =>
  page.getByRole('dialog', { name: 'Somebody else changed this too' });

describe('two people who change the same paddock', () => {
  it('both keep what they changed, where it does not clash', async () => {
    const { farm, one, other, errors } = await twoPages();
    const [paddock] = await get<Row[]>(`${farm}/paddocks`);
    const { name } = paddock!;
    await openPaddock(one, farm, name);
    await openPaddock(other, farm, name);
    await dialog(one).getByLabel('Name', { exact: true }).fill('By the brook');
    await dialog(one).getByRole('button', { name: 'Save' }).click();
    await one.getByRole('dialog').waitFor({ state: 'detached' });
    await dialog(other).getByLabel('Water in it').click();
    await dialog(other).getByRole('button', { name: 'Save' }).click();
    await other.getByRole('dialog').waitFor({ state: 'detached' });
    const after = await get<Row & { hasWater: boolean; version: number }>(
      `${farm}/paddocks/${paddock!.id}`,
    );
    const before = paddock as unknown as { hasWater: boolean };
    expect(after).toMatchObject({ name: 'By the brook', hasWater: !before.hasWater, version: 3 });
    expect(errors).toEqual([]);
  });

  it('are asked, field by field, where both changed the same', async () => {
    const { farm, one, other, errors } = await twoPages();
    const [paddock] = await get<Row[]>(`${farm}/paddocks`);
    const { name } = paddock!;
    await openPaddock(one, farm, name);
    await openPaddock(other, farm, name);
    await dialog(one).getByLabel('Name', { exact: true }).fill('By the brook');
    await dialog(one).getByRole('button', { name: 'Save' }).click();
    await one.getByRole('dialog').waitFor({ state: 'detached' });
    await dialog(other).getByLabel('Name', { exact: true }).fill('Long acre');
    await dialog(other).getByRole('button', { name: 'Save' }).click();
    await question(other).waitFor();
    expect(await seriousFindings(other)).toEqual([]);
    // Nothing is saved while it is being asked.
    expect(await get(`${farm}/paddocks/${paddock!.id}`)).toMatchObject({ name: 'By the brook' });
    await question(other).getByLabel('Keep theirs: By the brook').waitFor();
    await question(other).getByLabel('Keep mine: Long acre').click();
    await question(other).getByRole('button', { name: 'Save' }).click();
    await question(other).waitFor({ state: 'detached' });
    await other.getByRole('dialog').waitFor({ state: 'detached' });
    expect(await get(`${farm}/paddocks/${paddock!.id}`)).toMatchObject({ name: 'Long acre' });
    expect(errors).toEqual([]);
  });

  it('go back to the form with what was typed when they do not decide', async () => {
    const { farm, one, other } = await twoPages();
    const [paddock] = await get<Row[]>(`${farm}/paddocks`);
    await openPaddock(other, farm, paddock!.name);
    await openPaddock(one, farm, paddock!.name);
    await dialog(one).getByLabel('Name', { exact: true }).fill('By the brook');
    await dialog(one).getByRole('button', { name: 'Save' }).click();
    await one.getByRole('dialog').waitFor({ state: 'detached' });
    await dialog(other).getByLabel('Name', { exact: true }).fill('Long acre');
    await dialog(other).getByRole('button', { name: 'Save' }).click();
    await question(other).waitFor();
    await question(other).getByRole('button', { name: 'Back' }).click();
    await other.getByText('Nothing was saved').waitFor();
    expect(await other.getByLabel('Name', { exact: true }).inputValue()).toBe('Long acre');
    expect(await get(`${farm}/paddocks/${paddock!.id}`)).toMatchObject({ name: 'By the brook' });
  });
});
