import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { databases } from '../support/databases.js';
import { openApp, type TestApp } from '../support/app.js';

describe.each(databases())('a facility that a batch uses on $name', (database) => {
  let app: TestApp;
  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  it('can be deleted: the batch then names none, and still plans', async () => {
    const { body: farm } = await app.api.post('/api/farms/sample').expect(201);
    const path = `/api/farms/${farm.id}`;
    const { body: batches } = await app.api.get(`${path}/batches`).expect(200);
    const meat = batches.find((b: { purpose: string }) => b.purpose === 'meat');
    await app.api.delete(`${path}/facilities/${meat.brooderId}`).expect(204);
    const { body: after } = await app.api.get(`${path}/batches/${meat.id}`).expect(200);
    expect(after.brooderId).toBeUndefined();
    const { body: plan } = await app.api.get(`${path}/batches/${meat.id}/plan`).expect(200);
    expect(plan.issues.map((i: { code: string }) => i.code)).toContain('no-brooder');
  });

  it('can be a circuit: the brooder then hangs on none', async () => {
    const { body: farm } = await app.api.post('/api/farms/sample').expect(201);
    const path = `/api/farms/${farm.id}/facilities`;
    const { body: facilities } = await app.api.get(path).expect(200);
    const circuits = facilities.filter((f: { kind: string }) => f.kind === 'circuit');
    for (const { id } of circuits) await app.api.delete(`${path}/${id}`).expect(204);
    const { body: after } = await app.api.get(path).expect(200);
    const brooders = after.filter((f: { kind: string }) => f.kind === 'brooder');
    expect(brooders.map((b: { circuitId?: string }) => b.circuitId)).toEqual([
      undefined,
      undefined,
    ]);
  });
});
