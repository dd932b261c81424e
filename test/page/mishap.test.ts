import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Page } from 'playwright-core';
import { batchBody, inDays } from '../support/orders.js';
import { newBrooder, newFarm } from '../support/factories.js';
import { newHerd, newPaddock } from '../support/pasture-factories.js';
import { House, seriousFindings } from '../support/page.js';

jest.setTimeout(180_000);

let house: House;
beforeAll(async () => (house = await House.open()));
afterAll(() => house.close());

const HALF_A_YEAR = 6;
const turned = (months: readonly number[]): number[] => [
  ...months.slice(HALF_A_YEAR),
  ...months.slice(0, HALF_A_YEAR),
];

/**
 * A farm of two people with chicks in a brooder, birds on grass and cows in a paddock. It lies where it
 * is warm on the day of the test.
 */
async function farmInSeason(): Promise<{ id: string; paddockIds: string[] }> {
  const base = newFarm({ units: 'us' });
  const isSouth = !/-0[4-9]-/.test(inDays(0));
  const { id } = await house.post<{ id: string }>('/farms', {
    ...base,
    ...(isSouth
      ? {
          latitudeDeg: -base.latitudeDeg,
          ...{ lastFrost: '11-05', firstFrost: '04-20' },
          monthlyMinC: turned(base.monthlyMinC),
          monthlyMaxC: turned(base.monthlyMaxC),
        }
      : {}),
  });
  const row = <T extends { id?: unknown }>({ id: _id, ...rest }: T) => rest;
  const post = async (what: string, body: object): Promise<string> =>
    (await house.post<{ id: string }>(`/farms/${id}/${what}`, body)).id;
  for (const name of ['Maren', 'Tobias'])
    await post('people', { name, away: [], hoursByWeekday: Array(7).fill(8) });
  const brooderId = await post('facilities', row(newBrooder()));
  await post('batches', {
    ...batchBody({ name: 'Chicks', arrivalDate: inDays(-7), orderedBirds: 60 }),
    brooderId,
  });
  await post('batches', batchBody({ name: 'Due', arrivalDate: inDays(-1), orderedBirds: 20 }));
  await post('batches', {
    ...batchBody({ name: 'On grass', arrivalDate: inDays(-42), orderedBirds: 60 }),
    ...{ moveOutDate: inDays(-14), targetLiveKg: undefined },
  });
  const paddockIds: string[] = [];
  for (const name of ['Oak', 'Pond', 'Hill', 'Lane']) {
    paddockIds.push(await post('paddocks', row(newPaddock({ name, areaM2: 5000 }))));
  }
  const herdId = await post('herds', row(newHerd()));
  const on = { kind: 'herd-move', about: herdId, on: inDays(-1) };
  await house.post(`/farms/${id}/told`, {
    facts: [{ ...on, details: { paddockId: paddockIds[0] } }],
  });
  return { id, paddockIds };
}

const wentWrong = async (page: Page, id: string, what: string): Promise<void> => {
  await page.goto(`${house.url}/farm/${id}/today`);
  await page.getByRole('button', { name: 'Something went wrong' }).click();
  await page.getByRole('dialog').getByRole('button', { name: what }).click();
};
const read = async <T>(id: string, what: string): Promise<T> =>
  (await fetch(`${house.url}/api/farms/${id}/${what}`)).json() as Promise<T>;

describe('something that went wrong', () => {
  it('is asked from Today, tried by the plan, and kept or left', async () => {
    const { id, paddockIds } = await farmInSeason();
    const { page, errors } = await house.page('phone');
    const dialog = page.getByRole('dialog');

    await wentWrong(page, id, 'Somebody is ill');
    await dialog.getByLabel('Maren').check();
    await dialog.getByText('The animals have somebody every day.').waitFor();
    await dialog.getByLabel('Tobias').check();
    await dialog.getByText(/^Nobody is there .+ for feed, water and a look/).waitFor();
    expect(await seriousFindings(page, '[role=dialog]')).toEqual([]);
    await dialog.getByRole('button', { name: 'Leave it as it was' }).click();
    await dialog.getByRole('button', { name: 'Somebody is ill' }).click();
    await dialog.getByLabel('Maren').check();
    await dialog.getByText('The animals have somebody every day.').waitFor();
    await dialog.getByRole('button', { name: 'Keep it' }).click();
    await dialog.waitFor({ state: 'detached' });
    expect(
      (await read<{ name: string; away: unknown }[]>(id, 'people')).map(({ away }) => away),
    ).toEqual([[{ from: inDays(0), to: inDays(2), isIll: true }], []]);
    await page.getByText(/^Maren ill until .+\. Kept\.$/).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText(/^Maren ill until/).waitFor({ state: 'detached' });
    expect((await read<{ away: unknown[] }[]>(id, 'people')).flatMap(({ away }) => away)).toEqual(
      [],
    );

    await wentWrong(page, id, 'Birds are sick or dying');
    await dialog.getByText(/^Take out the dead and count them/).waitFor();
    // Of those that are there the numbers are asked at once, with what is known.
    await dialog.getByRole('button', { name: 'On grass' }).click();
    expect(await dialog.getByLabel('What it was').inputValue()).toBe('sick');
    // Of a box that nobody told of it is asked first whether it came.
    await wentWrong(page, id, 'Birds are sick or dying');
    await dialog.getByRole('button', { name: 'Due: did they come? Tell that first' }).click();
    await dialog.getByLabel('Dead in the box').waitFor();
    await wentWrong(page, id, 'Birds are sick or dying');
    await dialog.getByRole('button', { name: 'Back' }).click();
    await dialog.getByRole('button', { name: 'A cow is down, or calves badly' }).click();
    await dialog.getByText(/^Call the vet at once when half an hour of hard straining/).waitFor();
    await dialog.getByRole('button', { name: 'Cows' }).click();
    await dialog.getByText('A calf was born').waitFor();

    await wentWrong(page, id, 'The heat is out');
    await dialog.getByText(/^\d+ days old they want 90 °F under the heat\./).waitFor();
    await dialog.getByText(/A spare lamp and the box closed off to .+ · enough/).waitFor();
    await dialog.getByText('Heat lamps start fires').waitFor();
    await dialog.getByText('Fuel heaters give off carbon monoxide').waitFor();
    expect(await seriousFindings(page, '[role=dialog]')).toEqual([]);
    await dialog.getByLabel('The power is out').check();
    await dialog.getByText(/A spare lamp/).waitFor({ state: 'detached' });
    const water = dialog.getByRole('region', { name: 'Water for today' });
    await water.getByText('A pump stands still without power.').waitFor();
    await water.getByText(/Cows/).waitFor(); // not only of those on heat

    await wentWrong(page, id, 'Cold nights are coming');
    await dialog.getByLabel(/Lowest at night/).fill('25');
    await dialog.getByText(/25 °F is too cold for them on 3 nights/).waitFor();
    await dialog.getByText(/Extra bedding, the wind side closed/).waitFor();
    await dialog.getByRole('button', { name: 'Keep it as forecast' }).click();
    await dialog.waitFor({ state: 'detached' });
    await page.getByText(/25 °F/).first().waitFor();

    await wentWrong(page, id, 'Hot days are coming');
    await dialog.getByLabel(/Hottest by day/).fill('97');
    await dialog
      .getByText(/serious above 90 °F/)
      .first()
      .waitFor();
    expect(await seriousFindings(page, '[role=dialog]')).toEqual([]);

    await wentWrong(page, id, 'A paddock is lost');
    await dialog.getByText(/^Cows: (move them to|no other paddock is ready)/).waitFor();
    await dialog.getByText(/^Oak is in the round again after/).waitFor();
    expect(await seriousFindings(page, '[role=dialog]')).toEqual([]);
    await dialog.getByRole('button', { name: 'Keep it', exact: true }).click();
    await dialog.waitFor({ state: 'detached' });
    const closedDays = async (): Promise<unknown> =>
      (await read<{ id: string; closedDays: unknown }[]>(id, 'paddocks')).find(
        (each) => each.id === paddockIds[0],
      )!.closedDays;
    const isIn = async (): Promise<unknown> =>
      (await read<{ inPaddockId?: string }[]>(id, 'herds'))[0]!.inPaddockId;
    expect(await closedDays()).toEqual([{ from: inDays(0), to: inDays(14), why: 'wet' }]);
    await page.getByText(/^Oak closed until .+\. Kept\.$/).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText(/^Oak closed until/).waitFor({ state: 'detached' });
    expect([await closedDays(), await isIn()]).toEqual([[], paddockIds[0]]);
    expect(errors).toEqual([]);
  });
});
