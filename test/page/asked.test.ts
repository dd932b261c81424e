import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Page } from 'playwright-core';
import type { Farm } from '../../shared/farm/farm.js';
import { inDays } from '../support/orders.js';
import { newFarm } from '../support/factories.js';
import { House } from '../support/page.js';

jest.setTimeout(120_000);

let house: House;
beforeAll(async () => (house = await House.open()));
afterAll(() => house.close());

const today = async (page: Page, id: string): Promise<void> => {
  await page.goto(`${house.url}/farm/${id}/today`);
  await page.getByRole('heading', { name: 'Animals' }).waitFor();
};
const rowOf = (page: Page, name: string) => page.locator('.today-animals li', { hasText: name });
const lookAt = (page: Page, words: RegExp) =>
  page.locator('section[aria-labelledby=today-attention] li', { hasText: words });

describe('what is asked under Look at', () => {
  it('is the calf of a cow that was due, told with its day, put off, or not to come at all', async () => {
    const { id } = await house.post<{ id: string }>('/farms', newFarm({ units: 'us' }));
    const herd = await house.post<{ id: string }>(`/farms/${id}/herds`, {
      ...{ name: 'Cattle', groups: [{ classId: 'dry-cow', head: 3, calvesOn: inDays(30) }] },
    });
    const of = { herdId: herd.id, classId: 'dry-cow', calvesOn: inDays(-9) };
    await house.post(`/farms/${id}/cows`, { ...of, name: 'Rosa' });
    await house.post(`/farms/${id}/cows`, { ...of, name: 'Bella', calvesOn: inDays(-5) });
    const { page, errors } = await house.page('phone');
    await today(page, id);
    const rosa = lookAt(page, /did the calf of Rosa come/);
    await rosa.locator('summary').click();
    await rosa.getByRole('button', { name: 'Calved on …' }).click();
    const which = page.getByLabel('Which cow');
    expect(await which.locator('option:checked').innerText()).toBe('Rosa');
    await page.getByRole('button', { name: 'Tell it' }).click();
    await rowOf(page, 'Cattle').getByText('Rosa calved: 1 alive. Told.').waitFor();
    await rosa.waitFor({ state: 'detached' });

    const bella = lookAt(page, /did the calf of Bella come/);
    await bella.locator('summary').click();
    await bella.getByRole('button', { name: 'Not in calf' }).click();
    await rowOf(page, 'Cattle').getByText('Bella not in calf. Told.').waitFor();
    await bella.waitFor({ state: 'detached' });
    await rowOf(page, 'Cattle').getByRole('button', { name: 'Undo' }).click();
    await bella.waitFor();
    if (!(await bella.getByRole('button', { name: 'Ask again in a week' }).isVisible()))
      await bella.locator('summary').click();
    await bella.getByRole('button', { name: 'Ask again in a week' }).click();
    await bella.waitFor({ state: 'detached' });
    expect(errors).toEqual([]);
  });

  it('is of a group how many are not in calf, with no other cow filled in for a birth', async () => {
    const { id } = await house.post<{ id: string }>('/farms', newFarm({ units: 'us' }));
    const herd = await house.post<{ id: string }>(`/farms/${id}/herds`, {
      ...{ name: 'Cattle' },
      groups: [
        { classId: 'dry-cow', head: 3, calvesOn: inDays(-9) },
        { classId: 'heifer', head: 1, calvesOn: inDays(30) },
      ],
    });
    const bella = { herdId: herd.id, classId: 'heifer', name: 'Bella', calvesOn: inDays(2) };
    await house.post(`/farms/${id}/cows`, bella);
    const { page, errors } = await house.page('phone');
    await today(page, id);
    const cows = lookAt(page, /did the calves come\? 3 cows/);
    await cows.locator('summary').click();
    await cows.getByRole('button', { name: 'Calved on …' }).click();
    const which = page.getByLabel('Which cow');
    expect(await which.locator('option:checked').innerText()).not.toBe('Bella');
    await page.keyboard.press('Escape');
    await cows.getByRole('button', { name: 'Some not in calf …' }).click();
    await page.getByLabel('Cows not in calf').fill('2');
    await page.getByRole('button', { name: 'Tell it' }).click();
    await rowOf(page, 'Cattle').getByText('2 cows not in calf. Told.').waitFor();
    await lookAt(page, /did the calf come\? It was due/).waitFor();
    expect(errors).toEqual([]);
  });

  it('is a turn-out that may have been, told with the day since when', async () => {
    const { id } = await house.post<{ id: string }>('/farms', inGrass());
    for (const name of ['North', 'South'])
      await house.post(`/farms/${id}/paddocks`, {
        ...{ name, areaM2: 9000, forageId: 'orchardgrass-legume', stand: 'good' },
        ...{ productivity: 'medium', soilId: 'loam', hasWater: true, hasShade: true },
        closedDays: [],
      });
    const paddocks = (await (await fetch(`${house.url}/api/farms/${id}/paddocks`)).json()) as {
      id: string;
    }[];
    for (const paddock of paddocks)
      await house.post(`/farms/${id}/told`, {
        facts: [
          {
            ...{ kind: 'grass-reading', about: paddock.id, on: inDays(-1) },
            details: { heightCm: 30 },
          },
        ],
      });
    await house.post(`/farms/${id}/herds`, {
      ...{ name: 'Steers', groups: [{ classId: 'stocker', head: 4 }] },
    });
    const { page, errors } = await house.page('phone');
    await today(page, id);
    const asked = lookAt(page, /are they out on grass|all is ready/);
    await asked.locator('summary').click();
    await asked.getByRole('button', { name: 'They are out since …' }).click();
    await page.getByRole('dialog').getByRole('textbox', { name: 'Day' }).fill(inDays(-1));
    await page.getByRole('button', { name: 'Tell it' }).click();
    await rowOf(page, 'Steers')
      .getByText(/^Moved to (North|South)\. Told\.$/)
      .waitFor();
    await asked.waitFor({ state: 'detached' });
    await rowOf(page, 'Steers')
      .getByText(/in (North|South) since/)
      .waitFor();
    expect(errors).toEqual([]);
  });
});

/** A farm where grass grows on the day that it is: south of the equator from November to April. */
function inGrass(): Farm {
  const month = Number(inDays(0).slice(5, 7));
  if (5 <= month && month <= 10) return newFarm();
  const { latitudeDeg, monthlyMinC, monthlyMaxC, ...farm } = newFarm();
  const turned = (of: readonly number[]): number[] => [...of.slice(6), ...of.slice(0, 6)];
  return {
    ...farm,
    latitudeDeg: -latitudeDeg,
    ...{ longitudeDeg: 146, timeZone: 'Australia/Hobart' },
    ...{ lastFrost: '11-19', firstFrost: '03-28' },
    monthlyMinC: turned(monthlyMinC as number[]),
    monthlyMaxC: turned(monthlyMaxC as number[]),
  } as Farm;
}
