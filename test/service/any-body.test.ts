import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { anyJson, mutated } from '../support/any-body.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { newFarm } from '../support/factories.js';
import { brooderBody, exampleOrder, saveFarm, type SavedFarm } from '../support/orders.js';

/** Bodies sent of each kind to each address and database; the seed makes every run the same. */
const RUNS = { numRuns: 60, seed: 20261125 };
const TIME_MS = 60_000;

/** Bodies that look like paddocks, herds, walks or outlines, with anything in their fields. */
const loosePasture = fc.record(
  {
    farm: fc.constant(newFarm()),
    name: anyJson,
    areaM2: anyJson,
    forageId: fc.constantFrom('mixed', 'plastic', 7),
    closed: fc.oneof(fc.constant([]), anyJson),
    outline: fc.array(fc.array(anyJson, { maxLength: 3 }), { maxLength: 5 }),
    groups: fc.array(fc.record({ classId: fc.constant('stocker'), head: anyJson })),
    readings: fc.array(fc.record({ paddockId: anyJson, date: anyJson, heightCm: anyJson })),
    type: fc.constantFrom('FeatureCollection', 'Feature', 'Polygon', 'MultiPolygon'),
    features: anyJson,
    geometry: anyJson,
    coordinates: anyJson,
    stand: anyJson,
    hours: anyJson,
    dueOn: anyJson,
    priority: fc.constantFrom('must', 'urgent', 3),
    conditions: anyJson,
    canBeSpread: anyJson,
    shares: anyJson,
    ids: anyJson,
    paddocks: fc.array(anyJson, { maxLength: 3 }),
    herds: fc.array(anyJson, { maxLength: 3 }),
  },
  { requiredKeys: [] },
);

describe.each([anyDatabase()])('any body at all on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app);
  }, TIME_MS);
  afterAll(() => app.close());

  /** Sends bodies; none may break the service, and one that is refused may leave nothing behind. */
  const send = (
    path: string,
    bodies: fc.Arbitrary<unknown>,
    numRuns = RUNS.numRuns,
  ): Promise<void> =>
    fc.assert(
      fc.asyncProperty(bodies, async (body) => {
        const before = await app.counts();
        const response = await fetch(`${app.url}${path}`, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify(body),
        });
        const text = await response.text();
        if (500 <= response.status) {
          throw new Error(`${response.status} for ${JSON.stringify(body)}: ${text}`);
        }
        if (400 <= response.status) {
          expect(response.headers.get('content-type')).toContain('application/problem+json');
        }
        if (response.status !== 201) expect(await app.counts()).toEqual(before);
      }),
      { ...RUNS, numRuns },
    );

  it.each([
    '/api/pasture/preview',
    'paddocks',
    'paddocks/geojson',
    'paddocks/geojson/preview',
    'paddocks/join',
    'herds',
    'cows',
    'products',
    'jobs',
    'grass-readings',
  ])(
    'never breaks %s',
    (path) =>
      send(
        path.startsWith('/') ? path : `${farm.path}/${path}`,
        fc.oneof(anyJson, loosePasture),
        100,
      ),
    TIME_MS,
  );

  it(
    'never breaks the preview, and saves nothing',
    () => send('/api/plans/preview', anyJson),
    TIME_MS,
  );

  it(
    'that is nearly an order never breaks the preview',
    () => send('/api/plans/preview', mutated(exampleOrder())),
    TIME_MS,
  );

  it(
    'that is nearly a laying order never breaks the preview',
    () => send('/api/plans/preview', mutated(layingOrder())),
    TIME_MS,
  );

  it(
    'that is nearly a search never breaks the arrivals',
    () =>
      send(
        '/api/plans/arrivals',
        mutated({ ...exampleOrder(), from: '2027-03-01', to: '2027-06-30', weekday: 3 }),
      ),
    TIME_MS,
  );

  it('never breaks the farms', () => send('/api/farms', anyJson), TIME_MS);

  it(
    'that is nearly a farm never breaks the farms',
    () => send('/api/farms', mutated(newFarm())),
    TIME_MS,
  );

  it('never breaks the facilities', () => send(`${farm.path}/facilities`, anyJson), TIME_MS);

  it(
    'that is nearly a brooder never breaks the facilities',
    () => send(`${farm.path}/facilities`, mutated(brooderBody())),
    TIME_MS,
  );
});

function layingOrder(): object {
  const { batch, ...order } = exampleOrder();
  const { penId: _pen, freezerId: _freezer, leaveAgeDays: _age, processing: _how, ...rest } = batch;
  return {
    ...order,
    previousArrivalDate: '2027-04-14',
    batches: [{ ...batch, name: 'Other' }],
    batch: {
      ...rest,
      purpose: 'layers',
      strainId: 'brown-layer',
      sex: 'pullets',
      coopId: 'hen-house',
    },
  };
}
