import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Batch } from '../../shared/farm/batch.js';
import type { RowChanged } from '../../shared/farm/row-changed.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { batchBody, inDays, saveFarm, type SavedFarm } from '../support/orders.js';
import { newPaddock } from '../support/pasture-factories.js';
import { expectFieldProblem, expectProblem } from '../support/problem.js';

describe.each(databases())('batches on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;
  let id: string;

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app);
  }, 60_000);
  afterAll(() => app.close());

  const revision = async () => (await app.rows('farms', { id: farm.id }))[0]?.['revision'];

  it('creates a batch and keeps the order in the row', async () => {
    const sent = batchBody({ brooderId: farm.brooderId, prices: { perBird: '3.10' } });
    const { status, body } = await app.api.post(`${farm.path}/batches`).send(sent);
    expect(status).toBe(201);
    expect(body).toEqual({ ...sent, id: expect.any(String), version: 1 });
    ({ id } = body as { id: string });
    const [row] = await app.rows('batches', { id });
    expect(row).toMatchObject({ farmId: farm.id, name: 'Test batch' });
    expect(JSON.parse(String(row?.['details']))).toMatchObject({
      wantedBirds: 100,
      brooderId: farm.brooderId,
      prices: { perBird: '3.10' },
    });
  });

  it('gives a batch back with its arrival as a plain date', async () => {
    const { body } = await app.api.get(`${farm.path}/batches/${id}`).expect(200);
    expect(body).toMatchObject({ id, arrivalDate: inDays(120) });
  });

  it('lists batches by arrival', async () => {
    const sooner = batchBody({ name: 'Sooner', arrivalDate: inDays(60) });
    await app.api.post(`${farm.path}/batches`).send(sooner).expect(201);
    const { body } = await app.api.get(`${farm.path}/batches`).expect(200);
    expect((body as { name: string }[]).map((each) => each.name)).toEqual(['Sooner', 'Test batch']);
  });

  it('changes a batch, with its row, and raises the revision of the farm by one', async () => {
    const before = Number(await revision());
    const sent = batchBody({ wantedBirds: 25, arrivalDate: inDays(90) });
    const { body } = await app.api.put(`${farm.path}/batches/${id}`).send(sent).expect(200);
    expect(body).toEqual({ ...sent, id, version: 2 });
    const [row] = await app.rows('batches', { id });
    expect(JSON.parse(String(row?.['details']))).toMatchObject({ wantedBirds: 25 });
    expect(JSON.parse(String(row?.['details']))).not.toHaveProperty('brooderId');
    expect(await revision()).toBe(before + 1);
  });

  it('keeps the paddock that its birds stand in, as long as there is one', async () => {
    const lands = `${farm.path}/paddocks`;
    const add = async (name: string): Promise<{ id: string }> => {
      const sent = { ...newPaddock({ name }), id: undefined };
      return (await app.api.post(lands).send(sent).expect(201)).body as { id: string };
    };
    const [hill, creek] = [await add('Hill'), await add('Creek')];
    const put = async (grassPaddockId: string) =>
      app.api
        .put(`${farm.path}/batches/${id}`)
        .send(batchBody({ wantedBirds: 25, arrivalDate: inDays(90), grassPaddockId }));
    const standsIn = async () => {
      const { body } = await app.api.get(`${farm.path}/batches/${id}`).expect(200);
      return (body as Batch).grassPaddockId;
    };
    expectFieldProblem(await put('nowhere'), { field: 'grassPaddockId', code: 'not-allowed' });
    expect((await put(hill.id)).status).toBe(200);
    expect(await standsIn()).toBe(hill.id);
    // It follows into what the paddock becomes, and a split leaves it open where they are.
    const ids = [hill.id, creek.id];
    const joined = (await app.api.post(`${lands}/join`).send({ ids, name: 'Both' }).expect(201))
      .body as { id: string };
    expect(await standsIn()).toBe(joined.id);
    await app.api.post(`${lands}/${joined.id}/split`).send({ parts: 2 }).expect(201);
    expect(await standsIn()).toBe(undefined);
    const third = await add('Third');
    await put(third.id);
    await app.api.delete(`${lands}/${third.id}`).expect(204);
    expect(await standsIn()).toBe(undefined);
    const told = await app.rows('told_facts', { farmId: farm.id, about: id });
    const was = told.flatMap(({ details }) => {
      const { fields = [] } = JSON.parse(String(details)) as RowChanged;
      return fields.filter(({ field }) => field === 'grassPaddockId').map(({ before }) => before);
    });
    expect(was).toEqual(expect.arrayContaining([hill.id, joined.id, third.id]));
  });

  it('plans a saved batch', async () => {
    const { body } = await app.api.get(`${farm.path}/batches/${id}/plan`).expect(200);
    expect(body).toMatchObject({ name: 'Test batch', arrivalDate: inDays(90) });
  });

  it('tells of a place that another batch holds', async () => {
    const holder = batchBody({ name: 'Holder', brooderId: farm.brooderId });
    await app.api.post(`${farm.path}/batches`).send(holder).expect(201);
    const { body: other } = await app.api
      .post(`${farm.path}/batches`)
      .send({ ...holder, name: 'Other' })
      .expect(201);
    const path = `${farm.path}/batches/${(other as { id: string }).id}/plan`;
    const plan = (await app.api.get(path).expect(200)).body as BatchPlan;
    const taken = plan.issues.filter(({ code }) => code === 'place-taken');
    expect(taken.map(({ text }) => text).join()).toContain('Holder');
  });

  it('names a field that is wrong by its path in the body', async () => {
    const sent = batchBody({ strainId: 'dodo', arrivalDate: '1990-01-01' });
    const response = await app.api.post(`${farm.path}/batches`).send(sent);
    const { problems } = expectProblem(response, 400);
    expect(problems?.map((problem) => problem.field)).toEqual(['strainId', 'arrivalDate']);
  });

  it('deletes a batch, and raises the revision', async () => {
    const before = Number(await revision());
    await app.api.delete(`${farm.path}/batches/${id}`).expect(204);
    expect(await app.rows('batches', { id })).toEqual([]);
    expect(await revision()).toBe(before + 1);
    expectProblem(await app.api.get(`${farm.path}/batches/${id}`), 404);
    expectProblem(await app.api.get(`${farm.path}/batches/${id}/plan`), 404);
  });

  it('still plans a batch whose brooder was deleted, or says which one is missing', async () => {
    const other = await saveFarm(app);
    const sent = batchBody({ brooderId: other.brooderId });
    const { body: saved } = await app.api.post(`${other.path}/batches`).send(sent).expect(201);
    await app.api.delete(`${other.path}/facilities/${other.brooderId}`).expect(204);
    const path = `${other.path}/batches/${(saved as { id: string }).id}/plan`;
    const response = await app.api.get(path);
    if (response.status !== 200) {
      expect(expectProblem(response, 400).problems?.[0]?.field).toContain('brooderId');
    }
  });
});
