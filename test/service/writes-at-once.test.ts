import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { newFarm } from '../support/factories.js';
import { saveFarm } from '../support/orders.js';

const each20 = <T>(make: (i: number) => PromiseLike<T>): Promise<T[]> =>
  Promise.all(Array.from({ length: 20 }, (_, i) => make(i)));

describe.each(databases())('writes at once on $name', (database) => {
  let app: TestApp;

  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  it('all arrive, and each raises the revision', async () => {
    const { id, path } = await saveFarm(app); // revision 2: made, and given a brooder
    const answers = await each20((i) =>
      app.api.post(`${path}/people`).send({ name: `Adult ${i}`, away: [] }),
    );
    expect(answers.map((answer) => answer.status)).toEqual(Array(20).fill(201));
    expect(await app.rows('people', { farmId: id })).toHaveLength(20);
    expect((await app.rows('farms', { id }))[0]).toMatchObject({ revision: 22 });
  });

  it('are not undone by one among them that fails', async () => {
    const { id, path } = await saveFarm(app);
    const answers = await each20((i) =>
      i % 2 === 0
        ? app.api.post(`${path}/people`).send({ name: `Adult ${i}`, away: [] })
        : app.api.delete(`${path}/people/none`),
    );
    expect(answers.map((answer) => answer.status)).toEqual(
      Array.from({ length: 20 }, (_, i) => (i % 2 === 0 ? 201 : 404)),
    );
    expect(await app.rows('people', { farmId: id })).toHaveLength(10);
    expect((await app.rows('farms', { id }))[0]).toMatchObject({ revision: 12 });
  });

  it('to the farm itself each raise the revision, so that no cached plan is stale', async () => {
    const { id, path } = await saveFarm(app);
    const answers = await each20((i) => app.api.put(path).send(newFarm({ elevationM: i })));
    expect(answers.map((answer) => answer.status)).toEqual(Array(20).fill(200));
    expect((await app.rows('farms', { id }))[0]).toMatchObject({ revision: 22 });
  });

  it('to the farm and to what is in it both raise the revision', async () => {
    const { id, path } = await saveFarm(app);
    const answers = await each20((i) =>
      i % 2 === 0
        ? app.api.put(path).send(newFarm({ elevationM: i }))
        : app.api.post(`${path}/people`).send({ name: `Adult ${i}`, away: [] }),
    );
    expect(answers.every((answer) => answer.status < 300)).toBe(true);
    expect((await app.rows('farms', { id }))[0]).toMatchObject({ revision: 22 });
  });
});
