import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { batchBody, brooderBody, saveFarm, type SavedFarm } from '../support/orders.js';
import { expectProblem } from '../support/problem.js';

describe.each(databases())('ids of another farm on $name', (database) => {
  let app: TestApp;
  let mine: SavedFarm;
  const theirs: Record<string, string> = {};
  const bodies: Record<string, object> = {};

  beforeAll(async () => {
    app = await openApp(database);
    mine = await saveFarm(app);
    const other = await saveFarm(app);
    bodies['facilities'] = brooderBody();
    bodies['people'] = { name: 'Adult A', away: [] };
    bodies['batches'] = batchBody();
    for (const [kind, body] of Object.entries(bodies)) {
      const saved = await app.api.post(`${other.path}/${kind}`).send(body).expect(201);
      theirs[kind] = (saved.body as { id: string }).id;
    }
  }, 60_000);
  afterAll(() => app.close());

  describe.each(['facilities', 'people', 'batches'])('%s', (kind) => {
    it.each(['get', 'put', 'delete'] as const)(
      'answer 404 to %s and change nothing',
      async (verb) => {
        const before = await app.contents();
        const request = app.api[verb](`${mine.path}/${kind}/${theirs[kind]}`);
        const response = await (verb === 'put' ? request.send(bodies[kind]) : request);
        expect(expectProblem(response, 404).detail).toContain(theirs[kind]);
        expect(await app.contents()).toBe(before);
      },
    );
  });

  it('do not plan a batch of another farm', async () => {
    expectProblem(await app.api.get(`${mine.path}/batches/${theirs['batches']}/plan`), 404);
  });

  it('are refused as the brooder of a batch', async () => {
    const before = await app.contents();
    const batch = batchBody({ brooderId: theirs['facilities']! });
    const response = await app.api.post(`${mine.path}/batches`).send(batch);
    expect(expectProblem(response, 400).problems?.[0]).toMatchObject({
      code: 'not-allowed',
      given: theirs['facilities'],
      allowed: [mine.brooderId],
    });
    expect(await app.contents()).toBe(before);
  });

  it.each(['facilities', 'people', 'batches'])(
    'of no farm at all answer 404 to a new one in %s',
    async (kind) => {
      const before = await app.contents();
      const path = `/api/farms/00000000-0000-4000-8000-000000000000/${kind}`;
      expectProblem(await app.api.post(path).send(bodies[kind]), 404);
      expect(await app.contents()).toBe(before);
    },
  );

  it.each(['facilities', 'people', 'batches', 'weather', 'picture'])(
    'of no farm at all answer 404 to a list of %s',
    async (kind) => {
      expectProblem(
        await app.api.get(`/api/farms/00000000-0000-4000-8000-000000000000/${kind}`),
        404,
      );
    },
  );
});
