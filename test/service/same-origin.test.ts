import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { databases } from '../support/databases.js';
import { openApp, type TestApp } from '../support/app.js';
import { expectProblem } from '../support/problem.js';

describe.each(databases().slice(0, 1))('requests from elsewhere on $name', (database) => {
  let app: TestApp;
  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  it('refuses a write from a page of another site, and writes nothing', async () => {
    const response = await app.api.post('/api/farms/sample').set('Origin', 'https://example.org');
    expectProblem(response, 403);
    expect(await app.rows('farms', {})).toEqual([]);
  });

  it('refuses a name of another site for the loopback address (DNS rebinding)', async () => {
    expectProblem(await app.api.get('/api/farms').set('Host', 'farm.example.org'), 403);
  });

  it('answers its own page and scripts', async () => {
    await app.api
      .get('/api/farms')
      .set('Host', 'localhost:1')
      .set('Origin', 'http://localhost:1')
      .expect(200);
    await app.api.get('/api/farms').expect(200);
  });
});
