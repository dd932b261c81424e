import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Field } from '../../shared/farm/field.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { DESCRIPTIONS } from '../support/descriptions.js';
import { newFarm } from '../support/factories.js';

interface Schema {
  readonly properties: Record<string, Record<string, unknown>>;
  readonly required?: readonly string[];
}

interface OpenApi {
  readonly openapi: string;
  readonly paths: Record<
    string,
    Record<
      string,
      {
        readonly requestBody?: unknown;
        readonly responses: Record<string, { readonly content?: Record<string, unknown> }>;
      }
    >
  >;
  readonly components: { readonly schemas: Record<string, Schema> };
}

interface Layer {
  readonly route?: { readonly path: string; readonly methods: Record<string, boolean> };
}

/** What the document must at least say of a field. */
function saidOf(field: Field): Record<string, unknown> {
  switch (field.kind) {
    case 'number': {
      const { min, max, integer } = field.bounds;
      return { type: integer ? 'integer' : 'number', minimum: min, maximum: max };
    }
    case 'text':
      return { type: 'string', minLength: 1, maxLength: field.most };
    case 'choice':
      return { type: 'string', enum: field.allowed };
    case 'yes-no':
      return { type: 'boolean' };
    case 'word':
      return { type: 'string', ...field.word.schema };
    case 'list':
      return { type: 'array', maxItems: field.most, items: saidOf(field.of) };
    case 'record':
      return { additionalProperties: saidOf(field.of) };
    case 'outline':
      return { type: 'array', maxItems: field.most };
    case 'row':
      return { allOf: [{ $ref: `#/components/schemas/${field.row.name}Dto` }] };
    case 'one-of':
      return { discriminator: { propertyName: field.by } };
  }
}

// The document does not depend on the database, so one is enough.
describe('the OpenAPI document', () => {
  let app: TestApp;
  let document: OpenApi;

  beforeAll(async () => {
    app = await openApp(anyDatabase());
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
    expect(listed).toHaveLength(134); // counted in the controllers
  });

  it('describes a farm with its bounds', () => {
    expect(schema('FarmDto').properties).toMatchObject({
      name: { type: 'string', minLength: 1, maxLength: 80 },
      latitudeDeg: { type: 'number', minimum: -90, maximum: 90 },
      elevationM: { minimum: -430, maximum: 6000 },
      units: { enum: ['metric', 'us'] },
      electricityPricePerKWh: { type: 'string' },
      monthlyMinC: {
        type: 'array',
        minItems: 12,
        maxItems: 12,
        items: { minimum: -60, maximum: 60 },
      },
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

  it.each(DESCRIPTIONS.map((described) => [described.name, described] as const))(
    'gives every field of a %s with its bounds, and says which may be left out',
    (name, { fields }) => {
      const isKept = 'id' in fields && !fields['id']!.isOptional;
      const { properties, required = [] } = schema(isKept ? name : `${name}Dto`);
      expect(Object.keys(properties)).toEqual(Object.keys(fields));
      for (const [field, of] of Object.entries(fields)) {
        expect({ field, ...properties[field] }).toMatchObject({ field, ...saidOf(of) });
        expect(properties[field]!['description']).toContain(of.label);
      }
      expect([...required].sort()).toEqual(
        Object.keys(fields)
          .filter((field) => !fields[field]!.isOptional)
          .sort(),
      );
    },
  );

  it('says of every operation what it answers, and what it says when it refuses', () => {
    const operations = Object.entries(document.paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, { responses }]) => ({
        what: `${method} ${path}`,
        responses,
      })),
    );
    const silent = operations.filter(({ responses }) =>
      Object.entries(responses).every(
        ([status, { content }]) =>
          ['default', '409'].includes(status) || (status !== '204' && !content),
      ),
    );
    expect(silent.map(({ what }) => what)).toEqual([]);
    for (const { responses } of operations) {
      expect(responses['default']?.content).toEqual({
        'application/problem+json': { schema: { $ref: '#/components/schemas/ProblemDocument' } },
      });
    }
  });

  it('says that a row that is answered has its id', () => {
    for (const name of ['Batch', 'Person', 'Herd', 'Paddock', 'Job', 'Handover', 'Brooder']) {
      expect(schema(name).required).toContain('id');
      expect(schema(`${name}Dto`).required).not.toContain('id');
    }
  });

  it('refers only to what it describes', () => {
    const names = [...JSON.stringify(document).matchAll(/#\/components\/schemas\/(\w+)/g)].map(
      (match) => match[1]!,
    );
    expect(names.length).toBeGreaterThan(15);
    for (const name of names) expect(document.components.schemas).toHaveProperty(name);
  });
});
