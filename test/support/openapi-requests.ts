import fc from 'fast-check';
import { anyJson, ODD_VALUES } from './any-body.js';

interface Schema {
  readonly $ref?: string;
  readonly type?: string;
  readonly format?: string;
  readonly enum?: readonly unknown[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly items?: Schema;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly oneOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
}

interface Parameter {
  readonly name: string;
  readonly in: string;
}

export interface Operation {
  readonly parameters?: readonly Parameter[];
  readonly requestBody?: { readonly content: Readonly<Record<string, { schema?: Schema }>> };
  readonly responses: Readonly<Record<string, unknown>>;
}

export interface Document {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, Schema>> };
}

/** A request as the document describes it, and as a slip of the hand would spoil it. */
export interface AnyRequest {
  readonly path: string;
  readonly type: string | undefined;
  readonly body: string | undefined;
}

const DEEPEST = 5;
const ODD = fc.oneof({ weight: 3, arbitrary: fc.constantFrom(...ODD_VALUES) }, anyJson);

/** Requests of one operation: mostly as described, with something odd in one place of ten. */
export function requestsOf(
  document: Document,
  path: string,
  { parameters = [], requestBody }: Operation,
  knownIds: Readonly<Record<string, string>>,
): fc.Arbitrary<AnyRequest> {
  const inPath = parameters.filter((each) => each.in === 'path');
  const inQuery = parameters.filter((each) => each.in === 'query');
  const wordIn = (name: string): fc.Arbitrary<string> =>
    fc.oneof(
      { weight: 6, arbitrary: fc.constant(knownIds[name] ?? 'none') },
      {
        weight: 1,
        arbitrary: fc.constantFrom('..', '%00', '%ff', "'", '__proto__', 'x'.repeat(300)),
      },
      { weight: 1, arbitrary: fc.string().map(encodeURIComponent) },
    );
  const [type, media] = Object.entries(requestBody?.content ?? {})[0] ?? [];
  const body: fc.Arbitrary<string | undefined> =
    type === undefined
      ? fc.constant(undefined)
      : fc.oneof(
          { weight: 8, arbitrary: valueOf(document, media?.schema ?? {}, 0).map(textOf) },
          { weight: 1, arbitrary: ODD.map(textOf) },
          { weight: 1, arbitrary: fc.string() },
        );
  return fc
    .record({
      words: fc.tuple(...inPath.map(({ name }) => wordIn(name))),
      queries: fc.tuple(...inQuery.map(({ name }) => fc.option(wordIn(name)))),
      body,
    })
    .map(({ words, queries, body: text }) => {
      const filled = inPath.reduce((at, { name }, k) => at.replace(`{${name}}`, words[k]!), path);
      const query = inQuery.flatMap(({ name }, k) => (queries[k] ? [`${name}=${queries[k]}`] : []));
      return {
        path: query.length === 0 ? filled : `${filled}?${query.join('&')}`,
        type,
        body: text,
      };
    });
}

const textOf = (value: unknown): string =>
  typeof value === 'string' ? value : (JSON.stringify(value) ?? '');

function valueOf(document: Document, schema: Schema, depth: number): fc.Arbitrary<unknown> {
  if (DEEPEST < depth) return fc.constant(null);
  return fc.oneof({ weight: 12, arbitrary: asDescribed(document, schema, depth) }, ODD);
}

function asDescribed(document: Document, schema: Schema, depth: number): fc.Arbitrary<unknown> {
  const inner = (each: Schema): fc.Arbitrary<unknown> => valueOf(document, each, depth + 1);
  const { $ref, oneOf, allOf } = schema;
  if ($ref) {
    const named = document.components.schemas[$ref.split('/').at(-1)!] ?? {};
    return asDescribed(document, named, depth);
  }
  if (oneOf) return fc.oneof(...oneOf.map(inner));
  if (allOf) return inner(allOf[0]!);
  if (schema.enum) return fc.constantFrom(...schema.enum);
  switch (schema.type) {
    case 'integer':
    case 'number': {
      const { minimum: min = -1e6, maximum: max = 1e6, type } = schema;
      return type === 'integer'
        ? fc.integer({ min: Math.ceil(min), max: Math.floor(max) })
        : fc.double({ min, max, noNaN: true });
    }
    case 'boolean':
      return fc.boolean();
    case 'array':
      return fc.array(inner(schema.items ?? {}), {
        minLength: Math.min(20, schema.minItems ?? 0),
        maxLength: Math.min(schema.maxItems ?? 3, schema.minItems ?? 3),
      });
    case 'object': {
      const fields = Object.entries(schema.properties ?? {});
      const values = fields.map(([name, each]) => [name, inner(each)] as const);
      const requiredKeys = (schema.required ?? []).filter(
        (name) => name in (schema.properties ?? {}),
      );
      return fc.record(Object.fromEntries(values), { requiredKeys: [...requiredKeys] });
    }
    case 'string':
      return schema.format === 'date'
        ? fc.constantFrom('2027-04-21', '2027-12-31', '2020-02-29')
        : fc.constantFrom(
            'Test',
            'mixed',
            '12.50',
            'USD',
            '05-20',
            'America/New_York',
            'fast-meat',
          );
    default:
      return anyJson;
  }
}
