import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { batchBody, inDays, saveFarm, saveJob, type SavedFarm } from '../support/orders.js';
import { newHerd } from '../support/pasture-factories.js';
import { expectFieldProblem } from '../support/problem.js';

const FETCH = 'meat.fetch-feed.1';
const FENCE = 'turn-out.walk-and-repair-perimeter-fence';

describe.each([anyDatabase()])('marks of work on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;
  let batchId: string;
  let herdId: string;

  const post = async (what: string, body: object): Promise<string> =>
    ((await app.api.post(`${farm.path}/${what}`).send(body).expect(201)).body as { id: string }).id;
  const mark = (body: object) => app.api.put(`${farm.path}/work/progress`).send(body);
  const done = (key: string) => mark({ key, doneOn: inDays(0) });

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app);
    batchId = await post('batches', batchBody({ brooderId: farm.brooderId }));
    const { id: _id, ...herd } = newHerd();
    herdId = await post('herds', herd);
  });
  afterAll(() => app.close());

  it('are refused of what this farm never had, and nothing is kept', async () => {
    for (const key of [
      'own/nothing',
      'own/nothing/2027-05-01',
      `own/${batchId}`,
      `batch/nothing/${FETCH}`,
      `batch/${herdId}/${FETCH}`,
      `batch/${batchId}/meat.fetch-fed`,
      `batch/${batchId}/${FENCE}`,
      `herd/nothing/${FENCE}`,
      `herd/${herdId}/graze`,
    ]) {
      const field = { field: 'key', code: 'not-allowed', given: key };
      expectFieldProblem(await done(key), field);
      expectFieldProblem(await mark({ key, notBefore: inDays(3) }), field);
      const chore = { key, isDone: true };
      expectFieldProblem(await app.api.put(`${farm.path}/today/chores`).send(chore), field);
    }
    expect(await app.rows('told_facts', { farmId: farm.id })).toEqual([]);
  });

  it('are kept of what a plan has no more, and of rows that are gone', async () => {
    await done(`batch/${batchId}/meat.fetch-feed.17`).expect(200);
    await done(`herd/${herdId}/h8.${FENCE}`).expect(200);
    const key = await saveJob(app, farm.path, 'Mend the roof');
    await app.api.delete(`${farm.path}/jobs/${key.slice('own/'.length)}`).expect(204);
    await done(key).expect(200);
    const gone = await post(
      'batches',
      batchBody({ name: 'Called off', brooderId: farm.brooderId }),
    );
    await app.api.delete(`${farm.path}/batches/${gone}`).expect(204);
    await done(`batch/${gone}/${FETCH}`).expect(200);
    // Taken back always, whatever it is of.
    await mark({ key: 'own/nothing' }).expect(200);
  });

  it('of hours are refused where they are weeks more than the work was reckoned at', async () => {
    const key = await saveJob(app, farm.path, 'Hang a gate'); // reckoned at one hour
    for (const [name, more] of [
      ['hours', { doneOn: inDays(0) }],
      ['hoursDone', {}],
      ['ownHours', {}],
    ] as const) {
      const wrong = await mark({ key, ...more, [name]: 450 });
      expectFieldProblem(wrong, { field: name, code: 'out-of-bounds', given: 450, max: 100 });
    }
    // A gate can turn into a week of evenings.
    await mark({ key, doneOn: inDays(0), hours: 30 }).expect(200);
    const long = { ...JOB, dueOn: inDays(30) };
    const fence = `own/${await post('jobs', long)}`;
    await mark({ key: fence, doneOn: inDays(0), hours: 130 }).expect(200);
  });

  it('of hours are refused alike where they are told among other facts', async () => {
    const about = await saveJob(app, farm.path, 'Hang a second gate'); // reckoned at one hour
    const tell = (key: string, hours: number) => {
      const of = { kind: 'work-progress', about, on: inDays(0) };
      const fact = { ...of, key, details: { doneOn: inDays(0), hours } };
      return app.api.post(`${farm.path}/told`).send({ facts: [fact] });
    };
    const field = { field: 'facts.0.details.hours', code: 'out-of-bounds', given: 450, max: 100 };
    expectFieldProblem(await tell('gate-450', 450), field);
    expect(await app.rows('told_facts', { farmId: farm.id, about })).toEqual([]);
    await tell('gate-30', 30).expect(201);
  });

  it('of hours that were kept are kept when they are sent again, whatever is reckoned by then', async () => {
    const path = `${farm.path}/jobs`;
    const key = `own/${await post('jobs', { ...JOB, dueOn: inDays(30) })}`;
    const sent = { key, tellKey: 'wood-130', hoursDone: 130 };
    await mark(sent).expect(200);
    const { body } = await app.api.get(path).expect(200);
    const job = (body as { id: string; version: number }[]).find(({ id }) => key.endsWith(id))!;
    await app.api
      .put(`${path}/${job.id}`)
      .send({ ...JOB, dueOn: inDays(30), hours: 1, version: job.version })
      .expect(200);
    await mark(sent).expect(200);
    expectFieldProblem(await mark({ key, tellKey: 'wood-131', hoursDone: 131 }), {
      ...{ field: 'hoursDone', code: 'out-of-bounds', given: 131 },
    });
  });
});

/** A fence that was reckoned at two weeks. */
const JOB = {
  name: 'Fence the wood',
  hours: 80,
  priority: 'could',
  conditions: {},
  canBeSpread: true,
};
