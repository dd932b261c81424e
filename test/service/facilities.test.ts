import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase, databases } from '../support/databases.js';
import { brooderBody, saveFarm, type SavedFarm } from '../support/orders.js';
import { expectFieldProblem, expectProblem } from '../support/problem.js';

/** One of each kind besides the brooder that every saved farm has. */
const OTHERS = [
  { kind: 'coop', name: 'Coop', floorM2: 6, roostM: 5, nestBoxes: 4, runM2: 40 },
  { kind: 'field-pen', name: 'Pen', floorM2: 11.1, count: 2 },
  { kind: 'freezer', name: 'Freezer', liters: 400, usedL: 50 },
  { kind: 'feed-store', name: 'Feed room', capacityKg: 500 },
  { kind: 'circuit', name: 'Circuit', volts: 230, amps: 16, otherLoadW: 100 },
] as const;

describe.each(databases())('facilities on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app);
  }, 60_000);
  afterAll(() => app.close());

  const revision = async () => (await app.rows('farms', { id: farm.id }))[0]?.['revision'];

  it('creates a brooder and keeps its parts in the row', async () => {
    const { status, body } = await app.api.post(`${farm.path}/facilities`).send(brooderBody());
    expect(status).toBe(201);
    expect(body).toEqual({ ...brooderBody(), id: expect.any(String), version: 1 });
    const [row] = await app.rows('facilities', { id: (body as { id: string }).id });
    expect(row).toMatchObject({ farmId: farm.id, kind: 'brooder', name: 'Brooder' });
    expect(JSON.parse(String(row?.['details']))).toMatchObject({ lengthM: 3, widthM: 2 });
  });

  it.each(OTHERS)('creates a $kind', async (facility) => {
    const { status, body } = await app.api.post(`${farm.path}/facilities`).send(facility);
    expect(status).toBe(201);
    expect(body).toEqual({ ...facility, id: expect.any(String), version: 1 });
  });

  it('gives each an id of the service, whatever id was sent', async () => {
    const mine = { ...OTHERS[3], id: 'feed-room' };
    const { body } = await app.api.post(`${farm.path}/facilities`).send(mine).expect(201);
    expect((body as { id: string }).id).not.toBe('feed-room');
  });

  it('lists them by kind, then name', async () => {
    const { body } = await app.api.get(`${farm.path}/facilities`).expect(200);
    expect((body as { kind: string }[]).map((each) => each.kind)).toEqual([
      'brooder',
      'brooder',
      'circuit',
      'coop',
      'feed-store',
      'feed-store',
      'field-pen',
      'freezer',
    ]);
  });

  it('gives one back', async () => {
    const { body } = await app.api.get(`${farm.path}/facilities/${farm.brooderId}`).expect(200);
    expect(body).toEqual({ ...brooderBody(), id: farm.brooderId, version: 1 });
  });

  it('changes one, with its row, and raises the revision of the farm by one', async () => {
    const before = Number(await revision());
    const wider = { ...brooderBody(), widthM: 2.5, name: 'Wider' };
    const path = `${farm.path}/facilities/${farm.brooderId}`;
    const { body } = await app.api.put(path).send(wider).expect(200);
    expect(body).toEqual({ ...wider, id: farm.brooderId, version: 2 });
    const [row] = await app.rows('facilities', { id: farm.brooderId });
    expect(JSON.parse(String(row?.['details']))).toMatchObject({ widthM: 2.5 });
    expect(await revision()).toBe(before + 1);
  });

  it('refuses to turn one into another kind, which its batches could not live in', async () => {
    const { body: made } = await app.api.post(`${farm.path}/facilities`).send(OTHERS[3]);
    const response = await app.api
      .put(`${farm.path}/facilities/${(made as { id: string }).id}`)
      .send(OTHERS[2]);
    expectFieldProblem(response, { field: 'kind', code: 'conflict', given: 'freezer' });
  });

  it('forgets what a change leaves out', async () => {
    const path = `${farm.path}/facilities/${farm.brooderId}`;
    const { roof: _roof, ...open } = brooderBody() as { roof: unknown };
    await app.api.put(path).send(open).expect(200);
    expect((await app.api.get(path)).body).not.toHaveProperty('roof');
  });

  it('deletes one, and raises the revision', async () => {
    const before = Number(await revision());
    await app.api.delete(`${farm.path}/facilities/${farm.brooderId}`).expect(204);
    expect(await app.rows('facilities', { id: farm.brooderId })).toEqual([]);
    expect(await revision()).toBe(before + 1);
    expectProblem(await app.api.get(`${farm.path}/facilities/${farm.brooderId}`), 404);
  });

  it('does not raise the revision for one that is not there', async () => {
    const before = await app.contents();
    expectProblem(await app.api.delete(`${farm.path}/facilities/${farm.brooderId}`), 404);
    const path = `${farm.path}/facilities/none`;
    expectProblem(await app.api.put(path).send(brooderBody()), 404);
    expect(await app.contents()).toBe(before);
  });
});

describe('a farm that is full of facilities', () => {
  it('takes 200 and says so at the next', async () => {
    const app = await openApp(anyDatabase());
    const full = await saveFarm(app);
    for (let i = 1; i < 200; i++) {
      await app.api.post(`${full.path}/facilities`).send(OTHERS[3]).expect(201);
    }
    const response = await app.api.post(`${full.path}/facilities`).send(OTHERS[3]);
    expectFieldProblem(response, { field: 'facility', code: 'out-of-bounds', max: 200 });
    expect(await app.rows('facilities', { farmId: full.id })).toHaveLength(200);
    await app.close();
  }, 60_000);
});
