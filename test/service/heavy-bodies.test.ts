import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { LARGE, LIGHT, weightOf } from '../../src/common/body-weight.js';
import { fieldsInText, type FieldsInText } from '../../src/common/fields-in-text.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { newFarm } from '../support/factories.js';
import { newPaddocks } from '../support/pasture-factories.js';
import { saveFarm, type SavedFarm } from '../support/orders.js';
import { expectFieldProblem, expectProblem } from '../support/problem.js';

const fields = (count: number): object =>
  Object.fromEntries(Array.from({ length: count }, (_, i) => [`u${i}`, 1]));

function fieldsOf(value: unknown): FieldsInText {
  if (typeof value !== 'object' || value === null) return { all: 0, inOneObject: 0 };
  const own = Array.isArray(value) ? 0 : Object.keys(value).length;
  const inner = Object.values(value).map(fieldsOf);
  return {
    all: inner.reduce((sum, { all }) => sum + all, own),
    inOneObject: Math.max(own, ...inner.map(({ inOneObject }) => inOneObject)),
  };
}

// What is refused before anything is read or written does not depend on the database.
describe('bodies that are too much at once', () => {
  let app: TestApp;
  let farm: SavedFarm;
  beforeAll(async () => {
    app = await openApp(anyDatabase());
    farm = await saveFarm(app);
  }, 60_000);
  afterAll(() => app.close());

  it('with 80,000 unknown fields are refused, with their number', async () => {
    const response = await app.api.post('/api/farms').send({ ...newFarm(), ...fields(80_000) });
    expectFieldProblem(response, { field: 'body', code: 'out-of-bounds', max: LARGE.fields });
    expect((response.body as { detail: string }).detail).toContain('a body with 80014 fields');
  });

  it('with 50,000 unknown fields in one object too', async () => {
    const response = await app.api.post('/api/farms').send({ ...newFarm(), ...fields(50_000) });
    expectFieldProblem(response, { field: 'body', code: 'out-of-bounds', max: LIGHT.fields });
    expect((response.body as { detail: string }).detail).toContain('an object with 50014 fields');
  });

  it('with 5,000 fields in several objects name the first of the one that is too much', async () => {
    const parts = { name: fields(1500), currency: fields(1500), units: fields(2000) };
    const response = await app.api.post('/api/farms').send({ ...newFarm(), ...parts });
    expectFieldProblem(response, { field: 'units', code: 'out-of-bounds', max: LIGHT.fields });
    expect((response.body as { detail: string }).detail).toMatch(/2000 fields.*begins with "u0", /);
  });

  it('count fields by their colons, not by those within text', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 4 }), (text) => {
        expect(fieldsInText(Buffer.from(text))).toEqual(fieldsOf(JSON.parse(text)));
      }),
    );
    expect(fieldsInText(Buffer.from(String.raw`{"a:\\":"\":{", "b": ["c:"]}`))).toEqual({
      all: 2,
      inOneObject: 2,
    });
  });

  it('with a thousand unknown fields name twenty, and say how many there are', async () => {
    const response = await app.api.post('/api/farms').send({ ...newFarm(), ...fields(1000) });
    const { problems, detail } = expectProblem(response, 400);
    expect(detail).toContain('1000 unknown fields');
    expect(problems!.map(({ field }) => field)).toEqual([
      'body',
      ...Array.from({ length: 20 }, (_, i) => `u${i}`),
    ]);
  });

  it('with more problems than are told say how many there are', async () => {
    const people = Array.from({ length: 40 }, () => ({}));
    const order = { farm: newFarm(), people, batches: [], facilities: [] };
    const document = expectProblem(await app.api.post('/api/plans/work').send(order), 400);
    expect(document.problems).toHaveLength(50);
    expect(document.problemsInAll).toBe(80); // each lacks a name and its days away
  });

  it.each([
    ['objects in each other', 'name', (): unknown => nested(40, (inner) => ({ inner }))],
    ['lists in each other', 'name', (): unknown => nested(40, (inner) => [inner])],
    ['an endless list', 'noDeliveryDates', (): unknown => Array(30_000).fill('2027-01-01')],
    ['thousands of objects', 'noDeliveryDates', (): unknown => Array(5000).fill({})],
  ])('that are %s are refused by their place', async (_what, field, value) => {
    const response = await app.api.post('/api/farms').send({ ...newFarm(), [field]: value() });
    expectFieldProblem(response, { field: expect.stringMatching(`^${field}(\\.|$)`) });
  });

  it.each(['facilities', 'paddocks', 'jobs', 'people', 'batches', 'herds', 'handovers'])(
    'are refused as %s',
    async (what) => {
      const response = await app.api
        .post(`${farm.path}/${what}`)
        .send({ kind: 'brooder', ...fields(50_000) });
      expect(expectProblem(response, 400).detail).toContain('50001 fields');
    },
  );

  it('are planned when they are a farm: two hundred paddocks with all their readings', async () => {
    const paddocks = newPaddocks(200);
    const readings = Array.from({ length: 1000 }, (_, k) => ({
      paddockId: paddocks[k % 200]!.id,
      date: '2027-04-20',
      heightCm: 12,
    }));
    const order = { farm: newFarm(), paddocks, herds: [], readings, today: '2027-04-21' };
    expect(weightOf(order, { ...LIGHT, fields: 1e6 })).toBeGreaterThan(LIGHT.fields);
    await app.api.post('/api/pasture/preview').send(order).expect(200);
    const wrong = { ...order, readings: [...readings, { paddockId: 'p1', date: '2027-04-20' }] };
    expectFieldProblem(await app.api.post('/api/pasture/preview').send(wrong), {
      field: 'readings.1000.heightCm',
    });
  }, 60_000);
});

const nested = (deep: number, wrap: (inner: unknown) => unknown): unknown =>
  Array.from({ length: deep }).reduce<unknown>((inner) => wrap(inner), 1);

describe('coordinates of outlines', () => {
  let app: TestApp;
  let farm: SavedFarm;
  beforeAll(async () => {
    app = await openApp(anyDatabase());
    farm = await saveFarm(app);
  }, 60_000);
  afterAll(() => app.close());

  it.each([
    ['an object', {}],
    ['an object that cannot be a number', { toString: 1 }],
    ['null', null],
    ['true', true],
    ['text', '42.9'],
    ['a list', [42.9]],
    ['nothing', undefined],
  ])('that are %s are refused by name', async (_what, value) => {
    const ring = [
      [-75.3, 42.9],
      [-75.29, value],
      [-75.29, 42.91],
      [-75.3, 42.9],
    ];
    const polygon = { type: 'Polygon', coordinates: [ring] };
    const response = await app.api.post(`${farm.path}/paddocks/geojson`).send(polygon);
    expectFieldProblem(response, { field: 'geojson.1', code: 'not-allowed' });
    expect((await app.counts()).paddocks).toBe(0);
  });

  it('of more polygons than are taken are not looked at', async () => {
    const polygon = { type: 'Polygon', coordinates: [[[0, 0]]] };
    const features = Array.from({ length: 5000 }, () => ({ type: 'Feature', geometry: polygon }));
    const response = await app.api
      .post(`${farm.path}/paddocks/geojson/preview`)
      .send({ type: 'FeatureCollection', features });
    expectFieldProblem(response, { field: 'geojson', given: 5000, max: 200 });
  });
});
