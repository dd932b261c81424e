import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { BOUNDS } from '../../shared/farm/bounds.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { newFarm } from '../support/factories.js';

interface Schema {
  readonly properties: Record<string, Record<string, unknown>>;
  readonly required?: readonly string[];
}

interface OpenApi {
  readonly openapi: string;
  readonly paths: Record<string, Record<string, { requestBody?: unknown; responses: object }>>;
  readonly components: { readonly schemas: Record<string, Schema> };
}

interface Layer {
  readonly route?: { readonly path: string; readonly methods: Record<string, boolean> };
}

/** Bounds of twelve numbers at once, which the document gives in words. */
const NUMBERS_IN_LISTS = ['airC', 'rainMm', 'rainShare', 'dayHours'];

// The document does not depend on the database, so one is enough.
describe('the OpenAPI document', () => {
  let app: TestApp;
  let document: OpenApi;

  beforeAll(async () => {
    app = await openApp(databases()[0]!);
    document = (await app.api.get('/api/openapi.json').expect(200)).body as OpenApi;
  }, 60_000);
  afterAll(() => app.close());

  const schema = (name: string): Schema => document.components.schemas[name]!;

  it('lists every route of the service', () => {
    const { router } = app.nest.getHttpAdapter().getInstance() as unknown as {
      router: { stack: Layer[] };
    };
    const served = router.stack.flatMap(({ route }) =>
      route && !route.path.includes('openapi') && !route.path.includes('*')
        ? Object.keys(route.methods).map(
            (method) => `${method} ${route.path.replace(/:(\w+)/g, '{$1}')}`,
          )
        : [],
    );
    const listed = Object.entries(document.paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method} ${path}`),
    );
    expect(listed.sort()).toEqual(served.sort());
    expect(listed).toHaveLength(83); // counted in the controllers
  });

  it('describes a farm with its bounds', () => {
    expect(Object.keys(schema('FarmDto').properties).sort()).toEqual(
      [...Object.keys(newFarm()), 'gardenSoilId', 'monthlyRainMm', 'version'].sort(),
    );
    expect(schema('FarmDto').properties).toMatchObject({
      name: { type: 'string', minLength: 1, maxLength: 80 },
      latitudeDeg: { type: 'number', minimum: -90, maximum: 90 },
      elevationM: { minimum: -430, maximum: 6000 },
      units: { enum: ['metric', 'us'] },
      electricityPricePerKWh: { type: 'string' },
      monthlyMinC: { type: 'array', minItems: 12, maxItems: 12 },
      noDeliveryDates: { type: 'array', maxItems: 200 },
    });
    expect([...schema('FarmDto').required!].sort()).toEqual(Object.keys(newFarm()).sort());
  });

  it('describes a batch with its bounds', () => {
    expect(schema('BatchDto').properties).toMatchObject({
      purpose: { enum: ['meat', 'layers'] },
      wantedBirds: { type: 'integer', minimum: 1, maximum: 5000 },
      hatchToArrivalDays: { type: 'integer', minimum: 0, maximum: 3 },
      dressingShare: { type: 'number', minimum: 0.4, maximum: 0.9 },
      arrivalDate: { format: 'date' },
    });
  });

  it('says which fields of a batch may be left out', () => {
    expect([...schema('BatchDto').required!].sort()).toEqual([
      'arrivalDate',
      'hatchToArrivalDays',
      'name',
      'purpose',
      'sex',
      'strainId',
      'wantedBirds',
    ]);
  });

  it('says which fields of an order may be left out', () => {
    expect(schema('OrderDto').required).toEqual(['batch']);
    expect([...schema('ArrivalSearchDto').required!].sort()).toEqual(['batch', 'from', 'to']);
  });

  it('describes an order by its parts', () => {
    const { farm, batch, people, batches } = schema('OrderDto').properties;
    expect(JSON.stringify(farm)).toContain('#/components/schemas/FarmDto');
    expect(JSON.stringify(batch)).toContain('#/components/schemas/BatchDto');
    expect(JSON.stringify(people)).toContain('#/components/schemas/PersonDto');
    expect(JSON.stringify(batches)).toContain('#/components/schemas/BatchDto');
  });

  it.each(['BrooderDto', 'CoopDto', 'FieldPenDto', 'FreezerDto', 'FeedStoreDto', 'CircuitDto'])(
    'describes a facility as a %s',
    (name) => {
      expect(schema(name).properties).toMatchObject({ kind: { enum: [expect.any(String)] } });
      const body = document.paths['/api/farms/{farmId}/facilities']?.['post']?.requestBody;
      expect(JSON.stringify(body)).toContain(`#/components/schemas/${name}`);
    },
  );

  it('says which fields of a brooder may be left out', () => {
    const { required } = schema('BrooderDto');
    for (const name of ['id', 'roof', 'roomC', 'circuitId', 'feederCm', 'drinkerCm']) {
      expect(required).not.toContain(name);
    }
  });

  it('gives the bounds of every number that people type', () => {
    const text = JSON.stringify(document.components.schemas);
    const missing = Object.entries(BOUNDS).filter(
      ([name, { min, max }]) =>
        !NUMBERS_IN_LISTS.includes(name) && !text.includes(`"minimum":${min},"maximum":${max}`),
    );
    expect(missing).toEqual([]);
  });

  it('says which problems every operation may answer with', () => {
    const operations = Object.entries(document.paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, { requestBody, responses }]) => ({
        name: `${method} ${path}`,
        responses: Object.keys(responses),
        expected: [
          '403',
          '500',
          '503',
          ...(requestBody ? ['400', '413', '415'] : []),
          ...(path.includes('{') ? ['404'] : []),
          ...(method === 'get' ? [] : ['507']),
        ],
      })),
    );
    for (const { name, responses, expected } of operations) {
      expect({ name, responses }).toEqual({ name, responses: expect.arrayContaining(expected) });
    }
    expect(Object.keys(schema('Problem').properties)).toEqual(
      expect.arrayContaining(['type', 'title', 'status', 'detail', 'instance', 'problems']),
    );
  });

  it('refers only to what it describes', () => {
    const names = [...JSON.stringify(document).matchAll(/#\/components\/schemas\/(\w+)/g)].map(
      (match) => match[1]!,
    );
    expect(names.length).toBeGreaterThan(15);
    for (const name of names) expect(document.components.schemas).toHaveProperty(name);
  });
});
