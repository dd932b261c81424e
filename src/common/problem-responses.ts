import type { OpenAPIObject } from '@nestjs/swagger';

type Operation = NonNullable<OpenAPIObject['paths'][string]['get']>;
type Schema = NonNullable<NonNullable<OpenAPIObject['components']>['schemas']>[string];

const TEXT: Schema = { type: 'string' };

/** A problem document (RFC 9457), as the error filter sends it. */
const PROBLEM: Schema = {
  type: 'object',
  required: ['type', 'title', 'status', 'detail', 'instance'],
  properties: {
    type: { ...TEXT, example: 'urn:broodfold:problem:fields' },
    title: TEXT,
    status: { type: 'integer' },
    detail: { ...TEXT, description: 'What is wrong and what to do, in words.' },
    instance: { ...TEXT, description: 'The address that was asked.' },
    problems: {
      type: 'array',
      maxItems: 50,
      description: 'Fields that are wrong; with a 400 whose type ends in fields.',
      items: {
        type: 'object',
        required: ['field', 'code', 'fix', 'text'],
        properties: {
          field: { ...TEXT, example: 'batch.wantedBirds' },
          code: {
            type: 'string',
            enum: [
              'out-of-bounds',
              'not-a-number',
              'not-a-date',
              'not-allowed',
              'missing',
              'conflict',
              'unreadable',
            ],
          },
          given: { description: 'What was sent, cut when it is long.' },
          min: { oneOf: [{ type: 'number' }, TEXT] },
          max: { oneOf: [{ type: 'number' }, TEXT] },
          unit: TEXT,
          allowed: { type: 'array', items: TEXT },
          fix: TEXT,
          text: TEXT,
        },
      },
    },
    problemsInAll: { type: 'integer', description: 'How many there are, when not all are told.' },
  },
};

const MEANINGS: Readonly<Record<string, string>> = {
  400: 'A field is wrong; each is named with its value, its bounds and the fix.',
  403: 'Asked under a name that is not allowed, from another site, or without the key it needs.',
  404: 'There is nothing with that id.',
  409: 'It contradicts what is there, or what somebody else saved meanwhile.',
  413: 'The body is larger than this address takes.',
  415: 'The body’s encoding or character set is not known.',
  500: 'Something went wrong here. Nothing was changed.',
  503: 'The database cannot be reached or written. Nothing was changed.',
  507: 'The disk is full. Nothing was changed.',
};

/** Adds to every operation the problems that it may answer with. */
export function withProblems(document: OpenAPIObject): OpenAPIObject {
  for (const [path, item] of Object.entries(document.paths)) {
    for (const [method, operation] of Object.entries(item) as [string, Operation][]) {
      for (const status of statusesOf(path, method, operation)) {
        operation.responses[status] ??= { $ref: `#/components/responses/Problem${status}` };
      }
    }
  }
  const responses = Object.entries(MEANINGS).map(([status, description]) => [
    `Problem${status}`,
    {
      description,
      content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
    },
  ]);
  return {
    ...document,
    components: {
      ...document.components,
      schemas: { ...document.components?.schemas, Problem: PROBLEM },
      responses: { ...document.components?.responses, ...Object.fromEntries(responses) },
    },
  };
}

function statusesOf(path: string, method: string, { requestBody, parameters = [] }: Operation) {
  const isWrite = method !== 'get';
  return [
    ...(requestBody || 0 < parameters.length ? ['400'] : []),
    '403',
    ...(path.includes('{') ? ['404'] : []),
    ...(isWrite && path.includes('{') ? ['409'] : []),
    ...(requestBody ? ['413', '415'] : []),
    '500',
    '503',
    ...(isWrite ? ['507'] : []),
  ];
}
