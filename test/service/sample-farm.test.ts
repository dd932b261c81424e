import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Batch } from '../../shared/farm/batch.js';
import type { Saved } from '../../shared/farm/saved.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { openApp, type TestApp } from '../support/app.js';
import { dailyCsv, syntheticDays } from '../support/daily-weather.js';
import { anyDatabase } from '../support/databases.js';
import { inDays } from '../support/orders.js';

describe.each([anyDatabase()])('the sample farm on $name', (database) => {
  let app: TestApp;
  const ids: string[] = [];

  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  it.each(['once', 'again'])('loads %s', async () => {
    const { status, body } = await app.api.post('/api/farms/sample');
    expect(status).toBe(201);
    expect(body).toMatchObject({ isSample: true, name: 'Thistledown (sample)' });
    ids.push((body as { id: string }).id);
  });

  it('stands in the tables twice, with its own buildings, people and batches', async () => {
    expect(new Set(ids).size).toBe(2);
    expect(await app.counts()).toMatchObject({
      farms: 2,
      facilities: 24,
      people: 6,
      batches: 14,
      handovers: 2,
      weather_days: 0,
    });
  });

  it('plans every batch in its own buildings, none in the way of another', async () => {
    for (const id of ids) {
      const { body: batches } = await app.api.get(`/api/farms/${id}/batches`).expect(200);
      const plans: BatchPlan[] = [];
      for (const batch of batches as { id: string }[]) {
        const { body } = await app.api.get(`/api/farms/${id}/batches/${batch.id}/plan`).expect(200);
        plans.push(body as BatchPlan);
      }
      expect(new Set(plans.map((plan) => plan.purpose))).toEqual(new Set(['layers', 'meat']));
      for (const plan of plans) {
        expect(plan.heat?.brooderName).toMatch(/brooder$/i);
        expect(plan.bill.total.value).toBeGreaterThan(0);
        expect(plan.issues.map((issue) => issue.code)).not.toContain('place-taken');
      }
    }
  });

  it('says in the list of batches what their plans say, in any weather and by what was weighed', async () => {
    const farm = `/api/farms/${ids[0]!}`;
    const sample = await app.api.get(`${farm}/batches`).expect(200);
    const meat = (sample.body as Saved<Batch>[]).find(({ name }) => name === 'Spring meat birds')!;
    const { id: _id, version: _version, leaveAgeDays: _age, ...birds } = meat;
    const grown = { ...birds, name: 'Grown', arrivalDate: inDays(-40), targetLiveKg: 2.6 };
    const { id } = (await app.api.post(`${farm}/batches`).send(grown).expect(201)).body as {
      id: string;
    };
    const { body: batches } = await app.api.get(`${farm}/batches`).expect(200);
    const endsIn = async (minC: number): Promise<unknown> => {
      const days = syntheticDays('2020-01-01', '2023-12-31').map(({ date }) => ({
        ...{ date, minC, maxC: minC + 12 },
      }));
      await app.api
        .put(`${farm}/weather/csv`)
        .set('Content-Type', 'text/csv')
        .send(dailyCsv(days))
        .expect(200);
      const { body: ends } = await app.api.get(`${farm}/batch-ends`).expect(200);
      for (const batch of batches as Saved<Batch>[]) {
        const { body } = await app.api.get(`${farm}/batches/${batch.id}/plan`).expect(200);
        const { leaving, laying } = body as BatchPlan;
        expect(ends).toHaveProperty(batch.id, (laying?.firstEgg ?? leaving!.on).value);
      }
      return (ends as Record<string, string>)[id];
    };
    const hot = await endsIn(24);
    expect(hot).not.toBe(await endsIn(6));
    const details = { birds: 10, averageKg: 1.1 };
    const facts = [{ kind: 'weighed', about: id, on: inDays(-10), details }];
    await app.api.post(`${farm}/told`).send({ facts }).expect(201);
    expect(hot).not.toBe(await endsIn(24));
  });

  it('goes with everything in it', async () => {
    for (const id of ids) await app.api.delete(`/api/farms/${id}`).expect(204);
    expect(await app.counts()).toMatchObject({ farms: 0, facilities: 0, people: 0, batches: 0 });
  });
});
