import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { inDays } from '../support/orders.js';

describe.each(databases())('the sample farm on $name', (database) => {
  let app: TestApp;
  const ids: string[] = [];

  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  it.each(['once', 'again'])('loads %s', async () => {
    const { status, body } = await app.api.post('/api/farms/sample');
    expect(status).toBe(201);
    expect(body).toMatchObject({ isSample: true, revision: 1, name: 'Thistledown (sample)' });
    ids.push((body as { id: string }).id);
  });

  it('stands in the tables twice, with its own buildings, people and batches', async () => {
    expect(new Set(ids).size).toBe(2);
    expect(await app.counts()).toMatchObject({
      farms: 2,
      facilities: 14,
      people: 4,
      batches: 4,
      weather_days: 0,
    });
  });

  it('has batches that arrive within a year and some weeks, however late in the year it is', async () => {
    for (const row of await app.rows('batches')) {
      const { arrivalDate } = (
        await app.api.get(`/api/farms/${String(row['farmId'])}/batches/${String(row['id'])}`)
      ).body as { arrivalDate: string };
      expect(inDays(44) <= arrivalDate && arrivalDate <= inDays(45 + 366)).toBe(true);
    }
  });

  it('plans every batch, one for each purpose, in its own buildings', async () => {
    for (const id of ids) {
      const { body: batches } = await app.api.get(`/api/farms/${id}/batches`).expect(200);
      const plans: BatchPlan[] = [];
      for (const batch of batches as { id: string }[]) {
        const { body } = await app.api.get(`/api/farms/${id}/batches/${batch.id}/plan`).expect(200);
        plans.push(body as BatchPlan);
      }
      expect(plans.map((plan) => plan.purpose).sort()).toEqual(['layers', 'meat']);
      for (const plan of plans) {
        expect(plan.heat?.brooderName).toMatch(/brooder$/i);
        expect(plan.bill.total.value).toBeGreaterThan(0);
        expect(plan.issues.map((issue) => issue.code)).not.toContain('place-taken');
      }
    }
  });

  it('goes with everything in it', async () => {
    for (const id of ids) await app.api.delete(`/api/farms/${id}`).expect(204);
    expect(await app.counts()).toMatchObject({ farms: 0, facilities: 0, people: 0, batches: 0 });
  });
});
