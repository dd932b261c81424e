import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { startWeatherStub, type Misbehave, type WeatherStub } from '../support/weather-stub.js';
import { requestsOf, type Document } from '../support/openapi-requests.js';

/** Requests of each operation; FUZZ_RUNS and FUZZ_SEED ask for more, and for others. */
const RUNS = Number(process.env['FUZZ_RUNS'] ?? 1);
const SEED = Number(process.env['FUZZ_SEED'] ?? 20261126);
const TIME_MS = 60_000 + RUNS * 15_000;

/** What only programrs read: stacks, paths, and messages of the engine and its libraries. */
const RAW =
  /\n\s+at |node_modules|\/src\/|\/dist\/|SyntaxError|TypeError|Unexpected (token|end|non)|in JSON at|Failed to decode|is not a function|Cannot (read|convert|set)|nested property|unknown value was passed|each value in|must be an? (object|array|string|number)\b.*conforming|SQLITE|QueryFailed/i;

const unavailable: Misbehave = (response) => void response.writeHead(503).end();

// What a request is answered does not depend on the database, so one is enough.
describe('requests as the OpenAPI document describes them, and spoilt', () => {
  let app: TestApp;
  let document: Document;
  let ids: Record<string, string>;
  let stub: WeatherStub;

  beforeAll(async () => {
    // Nothing goes out of this machine, whatever is switched on: the weather service is one that fails.
    stub = await startWeatherStub(1000);
    stub.misbehave = {
      archive: unavailable,
      forecast: unavailable,
      places: unavailable,
      height: unavailable,
    };
    app = await openApp(anyDatabase(), stub.settings);
    document = (await app.api.get('/api/openapi.json').expect(200)).body as Document;
    const farm = (await app.api.post('/api/farms/sample').expect(201)).body as { id: string };
    const batches = (await app.api.get(`/api/farms/${farm.id}/batches`).expect(200)).body as {
      id: string;
    }[];
    ids = { farmId: farm.id, id: batches[0]!.id, person: 'none', kind: 'csv' };
  }, 60_000);
  afterAll(async () => {
    await app.close();
    await stub.close();
  });

  it(
    'answer only what it says, in a problem document when refused, and never break',
    async () => {
      const operations = Object.entries(document.paths).flatMap(([path, methods]) =>
        Object.entries(methods).map(([method, operation]) => ({ path, method, operation })),
      );
      expect(operations.length).toBeGreaterThan(70);
      let asked = 0;
      for (const { path, method, operation } of operations) {
        const isDeletingAll = method === 'delete' && path === '/api/farms/{farmId}';
        const known = isDeletingAll ? {} : ids;
        await fc.assert(
          fc.asyncProperty(
            requestsOf(document, path, operation, known),
            async ({ path: at, type, body }) => {
              const response = await fetch(app.url + at, {
                method: method.toUpperCase(),
                ...(body === undefined ? {} : { body, headers: { 'content-type': type! } }),
              });
              const text = await response.text();
              asked++;
              const { status } = response;
              // 502 is the weather service.
              if (500 <= status && status !== 502) throw new Error(`${status} ${at}: ${text}`);
              const documented = Object.keys(operation.responses);
              if (!documented.includes(status < 400 ? String(status) : 'default'))
                throw new Error(
                  `${method} ${at} answered ${status}, which is not documented: ${text}`,
                );
              if (status < 400) return;
              expect(response.headers.get('content-type')).toContain('application/problem+json');
              const told = text.replace(JSON.stringify(at), '');
              if (RAW.test(told)) throw new Error(`Raw text for ${method} ${at}: ${text}`);
            },
          ),
          { numRuns: RUNS, seed: SEED },
        );
      }
      expect(asked).toBeGreaterThan(operations.length * RUNS * 0.9);
      await app.api.get('/api/farms').expect(200);
    },
    TIME_MS,
  );
});
