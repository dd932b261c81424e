import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { newFarm } from '../support/factories.js';
import { expectProblem } from '../support/problem.js';

describe.each(databases())('farms on $name', (database) => {
  let app: TestApp;
  let id: string;

  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  it('creates a farm with an id and revision 1, and a row for it', async () => {
    const { status, body } = await app.api.post('/api/farms').send(newFarm());
    expect(status).toBe(201);
    expect(body).toEqual({
      ...newFarm(),
      id: expect.any(String),
      isSample: false,
      revision: 1,
      version: 1,
    });
    ({ id } = body as { id: string });
    const [row] = await app.rows('farms', { id });
    expect(row).toMatchObject({
      name: 'Test farm',
      latitudeDeg: 42.9,
      electricityPricePerKWh: '0.20',
      lastFrost: '05-20',
      revision: 1,
    });
    expect(JSON.parse(String(row?.['monthlyMinC']))).toHaveLength(12);
    expect(Boolean(row?.['weatherFetch'])).toBe(false);
  });

  it('gives a farm back as it was sent', async () => {
    const { status, body } = await app.api.get(`/api/farms/${id}`);
    expect(status).toBe(200);
    expect(body).toMatchObject(newFarm());
  });

  it('lists farms by name', async () => {
    await app.api
      .post('/api/farms')
      .send(newFarm({ name: 'Alder farm' }))
      .expect(201);
    const { body } = await app.api.get('/api/farms').expect(200);
    expect((body as { name: string }[]).map((farm) => farm.name)).toEqual([
      'Alder farm',
      'Test farm',
    ]);
  });

  it('changes a farm and raises its revision by one', async () => {
    const { body } = await app.api
      .put(`/api/farms/${id}`)
      .send(newFarm({ name: 'Élan ferme 鶏', units: 'us' }))
      .expect(200);
    expect(body).toMatchObject({ id, name: 'Élan ferme 鶏', units: 'us', revision: 2 });
    expect((await app.rows('farms', { id }))[0]).toMatchObject({
      name: 'Élan ferme 鶏',
      units: 'us',
      revision: 2,
    });
  });

  it('keeps prices as the text that was sent', async () => {
    const price = '123456789.123456';
    const { body } = await app.api
      .post('/api/farms')
      .send(newFarm({ gasPricePerL: price }))
      .expect(201);
    const [row] = await app.rows('farms', { id: (body as { id: string }).id });
    expect(row?.['gasPricePerL']).toBe(price);
  });

  it('deletes a farm, its row, and then knows it no more', async () => {
    const { status, text } = await app.api.delete(`/api/farms/${id}`);
    expect(status).toBe(204);
    expect(text).toBe('');
    expect(await app.rows('farms', { id })).toEqual([]);
    const { detail } = expectProblem(await app.api.get(`/api/farms/${id}`), 404);
    expect(detail).toContain(id);
  });

  it.each(['get', 'put', 'delete'] as const)(
    'answers 404 to %s of an unknown farm',
    async (verb) => {
      const before = await app.contents();
      const path = '/api/farms/00000000-0000-4000-8000-000000000000';
      const request = app.api[verb](path);
      expectProblem(await (verb === 'put' ? request.send(newFarm()) : request), 404);
      expect(await app.contents()).toBe(before);
    },
  );

  it.each([
    ['a quote', "'%20OR%201=1"],
    ['a zero byte', '%00'],
    ['five hundred letters', 'x'.repeat(500)],
    ['letters of another script', '%E9%B6%8F'],
  ])('answers 404 to an id that is %s', async (_what, id404) => {
    expectProblem(await app.api.get(`/api/farms/${id404}`), 404);
  });
});
