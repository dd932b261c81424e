import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openApp, type TestApp } from '../support/app.js';
import { dailyCsv, syntheticDays } from '../support/daily-weather.js';
import { databases } from '../support/databases.js';
import { batchBody, saveFarm, type SavedFarm } from '../support/orders.js';

const OWNED = ['facilities', 'people', 'batches', 'weather_days'] as const;

describe.each(databases())('deleting a farm on $name', (database) => {
  let app: TestApp;

  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  async function saveFullFarm(): Promise<SavedFarm> {
    const farm = await saveFarm(app);
    const batch = batchBody({ brooderId: farm.brooderId });
    await app.api.post(`${farm.path}/people`).send({ name: 'Adult A', away: [] }).expect(201);
    await app.api.post(`${farm.path}/batches`).send(batch).expect(201);
    await app.api
      .put(`${farm.path}/weather/csv`)
      .set('content-type', 'text/csv')
      .send(dailyCsv(syntheticDays('2020-01-01', '2023-12-31')))
      .expect(200);
    return farm;
  }

  it('removes its rows in every table, and no other farm’s', async () => {
    const [gone, kept] = [await saveFullFarm(), await saveFullFarm()];
    await app.api.delete(gone.path).expect(204);
    expect(await app.counts()).toMatchObject({
      farms: 1,
      facilities: 1,
      people: 1,
      batches: 1,
      weather_days: 1461, // four years, one of them a leap year
    });
    for (const table of OWNED) {
      expect(await app.rows(table, { farmId: gone.id })).toEqual([]);
      expect(await app.rows(table, { farmId: kept.id })).not.toEqual([]);
    }
  });
});
