import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { saveFarm, type SavedFarm } from '../support/orders.js';
import { expectProblem } from '../support/problem.js';

const ADULT = { name: 'Adult A', away: [{ from: '2027-05-10', to: '2027-05-14' }] };

describe.each(databases())('people on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;
  let id: string;

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app);
  }, 60_000);
  afterAll(() => app.close());

  const revision = async () => (await app.rows('farms', { id: farm.id }))[0]?.['revision'];

  it('creates a person and keeps the absences in the row', async () => {
    const { status, body } = await app.api.post(`${farm.path}/people`).send(ADULT);
    expect(status).toBe(201);
    expect(body).toEqual({ ...ADULT, id: expect.any(String), version: 1 });
    ({ id } = body as { id: string });
    const [row] = await app.rows('people', { id });
    expect(row).toMatchObject({ farmId: farm.id, name: 'Adult A' });
    expect(JSON.parse(String(row?.['away']))).toEqual(ADULT.away);
  });

  it('takes an absence of a single day', async () => {
    const day = { name: 'Adult 0', away: [{ from: '2028-02-29', to: '2028-02-29' }] };
    await app.api.post(`${farm.path}/people`).send(day).expect(201);
  });

  it('lists people by name', async () => {
    const { body } = await app.api.get(`${farm.path}/people`).expect(200);
    expect((body as { name: string }[]).map((each) => each.name)).toEqual(['Adult 0', 'Adult A']);
  });

  it('gives one back', async () => {
    const { body } = await app.api.get(`${farm.path}/people/${id}`).expect(200);
    expect(body).toEqual({ ...ADULT, id, version: 1 });
  });

  it('changes one, with the row, and raises the revision of the farm by one', async () => {
    const before = Number(await revision());
    const { body } = await app.api
      .put(`${farm.path}/people/${id}`)
      .send({ name: 'Adult B', away: [] })
      .expect(200);
    expect(body).toEqual({ id, name: 'Adult B', away: [], version: 2 });
    expect((await app.rows('people', { id }))[0]).toMatchObject({ name: 'Adult B', away: '[]' });
    expect(await revision()).toBe(before + 1);
  });

  it('keeps in the record who changed one, when, and what it was before', async () => {
    const ill = { from: '2027-06-02', to: '2027-06-04', isIll: true };
    await app.api
      .put(`${farm.path}/people/${id}`)
      .set('said-by', encodeURIComponent('Zoë'))
      .send({ name: 'Adult B', away: [ill] })
      .expect(200);
    // The same again is no change.
    await app.api.put(`${farm.path}/people/${id}`).send({ name: 'Adult B', away: [ill] });
    const changes = async (): Promise<object[]> =>
      ((await app.api.get(`${farm.path}/told?about=${id}`)).body as { facts: object[] }).facts;
    const [last, first, ...more] = await changes();
    expect(more).toEqual([]);
    expect(last).toMatchObject({
      kind: 'row-changed',
      saidBy: 'Zoë',
      toldAt: expect.stringMatching(/^\d{4}-/),
      details: { name: 'Adult B', fields: [{ field: 'away', before: [], after: [ill] }] },
    });
    expect(first).toMatchObject({
      details: {
        how: 'changed',
        fields: expect.arrayContaining([{ field: 'name', before: 'Adult A', after: 'Adult B' }]),
      },
    });
    const back = await app.api.delete(`${farm.path}/told/${(last as { id: string }).id}`);
    expect(expectProblem(back, 400).detail).toMatch(/itself back/);
    expect(await changes()).toHaveLength(2);
  });

  it('deletes one, and raises the revision', async () => {
    const before = Number(await revision());
    await app.api.delete(`${farm.path}/people/${id}`).expect(204);
    expect(await app.rows('people', { id })).toEqual([]);
    expect(await revision()).toBe(before + 1);
    expectProblem(await app.api.get(`${farm.path}/people/${id}`), 404);
  });
});
