import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { newBrooder } from '../support/factories.js';
import { expectProblem } from '../support/problem.js';

describe.each(databases())('a brooder on $name', (database) => {
  let app: TestApp;
  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  it('cannot hang on the circuit of another farm, and nothing is saved', async () => {
    const { body: mine } = await app.api.post('/api/farms/sample').expect(201);
    const { body: other } = await app.api.post('/api/farms/sample').expect(201);
    const { body: theirs } = await app.api.get(`/api/farms/${other.id}/facilities`).expect(200);
    const circuit = theirs.find((f: { kind: string }) => f.kind === 'circuit');
    const before = await app.rows('facilities', { farmId: mine.id });
    const { id: _id, ...brooder } = newBrooder({ circuitId: circuit.id });
    const response = await app.api.post(`/api/farms/${mine.id}/facilities`).send(brooder);
    expect(expectProblem(response, 400).problems![0]).toMatchObject({
      field: 'circuitId',
      code: 'not-allowed',
      given: circuit.id,
    });
    expect(await app.rows('facilities', { farmId: mine.id })).toEqual(before);
  });
});
