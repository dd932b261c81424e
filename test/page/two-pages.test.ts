import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Page } from 'playwright-core';
import { House, seriousFindings, unfold } from '../support/page.js';

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
    await question(other).waitFor({ state: 'detached' });
    expect(await other.getByLabel('Name', { exact: true }).inputValue()).toBe('Long acre');
    expect(await get(`${farm}/paddocks/${paddock!.id}`)).toMatchObject({ name: 'By the brook' });
  });
});

/** Opens the paddocks of a farm, and has somebody else change one of them after that. */
async function afterAnotherChange(): Promise<{ at: string; page: Page; name: string }> {
  const { farm, one, other } = await twoPages();
  const [paddock] = await get<Row[]>(`${farm}/paddocks`);
  const { name } = paddock!;
  await other.goto(`${house.url}${farm.replace('/farms', '/farm')}/pasture/land`);
  await other.getByRole('button', { name: `Delete ${name}`, exact: true }).waitFor();
  await openPaddock(one, farm, name);
  await dialog(one).getByLabel('Name', { exact: true }).fill('By the brook');
  await dialog(one).getByRole('button', { name: 'Save' }).click();
  await one.getByRole('dialog').waitFor({ state: 'detached' });
  return { at: `${farm}/paddocks/${paddock!.id}`, page: other, name };
}

async function deleteRow(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: `Delete ${name}`, exact: true }).click();
  await page.getByRole('button', { name: 'Delete', exact: true }).click();
}

const stillDelete = (page: Page) =>
  page.getByRole('dialog', { name: 'Somebody else changed this' });

describe('somebody who deletes a paddock that another has changed', () => {
  it('is shown what was changed, and can keep it', async () => {
    const { at, page, name } = await afterAnotherChange();
    await deleteRow(page, name);
    await stillDelete(page).getByText('Name: By the brook').waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    await stillDelete(page).getByRole('button', { name: 'Keep it' }).click();
    await page.getByRole('button', { name: 'Change By the brook' }).waitFor();
    expect(await get(at)).toMatchObject({ name: 'By the brook', version: 2 });
    // Now it has been seen as it is.
    await deleteRow(page, 'By the brook');
    await page.getByRole('button', { name: 'Change By the brook' }).waitFor({ state: 'detached' });
    expect(await get(at)).toMatchObject({ status: 404 });
  });

  it('can delete it all the same', async () => {
    const { at, page, name } = await afterAnotherChange();
    await deleteRow(page, name);
    await stillDelete(page).getByRole('button', { name: 'Delete it all the same' }).click();
    await page.getByRole('button', { name: `Change ${name}` }).waitFor({ state: 'detached' });
    expect(await get(at)).toMatchObject({ status: 404 });
  });
});

it('joins a choice for the pasture with what somebody else chose meanwhile', async () => {
  const { farm, one, errors } = await twoPages();
  await one.goto(`${house.url}${farm.replace('/farms', '/farm')}/pasture`);
  await unfold(one, 'Key dates');
  const keep = one.getByRole('button', { name: 'Keep them for fall' });
  await keep.waitFor();
  const theirs = await fetch(`${house.url}/api${farm}/pasture/choices`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ restFactor: 1.1, version: 1 }),
  });
  expect(theirs.status).toBe(200);
  await keep.click();
  await one.getByText('closed for fall in this plan').waitFor({ timeout: 30_000 });
  const { pastureChoices } = await get<{ pastureChoices: object }>(`${farm}/picture`);
  expect(pastureChoices).toEqual({
    restFactor: 1.1,
    keepForAutumnIds: expect.arrayContaining([expect.any(String)]),
    version: 3,
  });
  expect(errors).toEqual([]);
});
