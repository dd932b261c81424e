import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { addDays, plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Saved } from '../../shared/farm/saved.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { TickedToday } from '../../shared/plan/today/today.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { expectProblem } from '../support/problem.js';

describe.each([anyDatabase()])('today on $name', (database) => {
  let app: TestApp;
  let path: string;
  let today: string;

  beforeAll(async () => {
    app = await openApp(database);
    const { body } = await app.api.post('/api/farms/sample').expect(201);
    const farm = body as { id: string; timeZone: string };
    path = `/api/farms/${farm.id}`;
    today = plainDateAt(Date.now(), farm.timeZone);
    const batches = (await app.api.get(`${path}/batches`)).body as Saved<Batch>[];
    const { id, version: _version, ...meat } = batches.find(({ purpose }) => purpose === 'meat')!;
    const arrivalDate = addDays(today, -10);
    await app.api.delete(`${path}/batches/${id}`).expect(204);
    await app.api
      .post(`${path}/batches`)
      .send({ ...meat, arrivalDate })
      .expect(201);
  });
  afterAll(() => app.close());

  const day = async (): Promise<TickedToday> =>
    (await app.api.get(`${path}/today`).expect(200)).body as TickedToday;
  const revision = async (): Promise<unknown> => {
    const [farm] = await app.rows('farms');
    expect(Number(farm!['revision'])).toBeGreaterThan(0);
    return farm!['revision'];
  };
  const tick = (key: string, isDone: boolean) =>
    app.api.put(`${path}/today/chores`).send({ key, isDone });

  it('answers all of the day in one request', async () => {
    const { date, animals, chores, hours, weather } = await day();
    expect(date).toBe(today);
    expect(animals.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['batch', 'herd']));
    expect(animals[0]).toMatchObject({ kind: 'batch', stage: 'brooder', age: { value: 11 } });
    expect(chores.length).toBeGreaterThan(0);
    expect(hours.had.value).toBeGreaterThan(0);
    expect(weather.tonight.unit).toBe('degC');
  });

  it('ticks a chore off for the day and takes it back, and no plan is made again for it', async () => {
    const before = await revision();
    const { key } = (await day()).chores[0]!;
    const isDone = async () => (await day()).chores.find((chore) => chore.key === key)!.isDone;
    await tick(key, true).expect(200);
    await tick(key, true).expect(200);
    expect(await isDone()).toBe(true);
    expect(await app.rows('told_facts', { kind: 'chore-done', about: key })).toHaveLength(1);
    await tick(key, false).expect(200);
    expect(await isDone()).toBe(false);
    await tick(key, false).expect(200);
    expect(await revision()).toBe(before);
  });

  it('counts no tick of another day', async () => {
    const { key } = (await day()).chores[0]!;
    const fact = { kind: 'chore-done', about: key, on: addDays(today, -1), details: {} };
    await app.api
      .post(`${path}/told`)
      .send({ facts: [fact] })
      .expect(201);
    expect((await day()).chores.find((chore) => chore.key === key)!.isDone).toBe(false);
  });

  it('says of a chore who did it, as it was told last', async () => {
    const { key } = (await day()).chores[0]!;
    for (const doneBy of ['Ada', 'Ben']) {
      const facts = [{ kind: 'chore-done', about: key, on: today, details: { doneBy } }];
      await app.api.post(`${path}/told`).send({ facts }).expect(201);
    }
    const chore = (await day()).chores.find((each) => each.key === key);
    expect(chore).toMatchObject({ isDone: true, doneBy: 'Ben' });
    await tick(key, false).expect(200);
  });

  it('refuses a key that is none, and changes nothing', async () => {
    const before = await app.contents();
    const { problems } = expectProblem(await tick('nothing', true), 400);
    expect(problems).toContainEqual(expect.objectContaining({ field: 'key', code: 'not-allowed' }));
    expect(await app.contents()).toBe(before);
  });

  it('shows a job that is ticked off, with its hours, and takes both back at once', async () => {
    const job = {
      ...{ name: 'Mend the gate', hours: 0.5, dueOn: today, priority: 'must' },
      ...{ conditions: {}, canBeSpread: false },
    };
    const { id } = (await app.api.post(`${path}/jobs`).send(job).expect(201)).body as Saved<object>;
    const key = `own/${id}`;
    const found = async () => (await day()).jobs.find((each) => each.key === key);
    const mark = (body: object) => app.api.put(`${path}/work/progress`).send({ key, ...body });
    const undo = () => mark({ undo: true }).expect(200);
    expect(await found()).toMatchObject({ state: 'open', hours: 0.5 });
    await mark({ hoursDone: 0.2 }).expect(200);
    await mark({ doneOn: today, doneBy: 'Ada' }).expect(200);
    await mark({ hours: 0.75 }).expect(200);
    await mark({ doneBy: 'Ben' }).expect(200);
    // Whoever it was, its hours stay, and the other way round.
    expect(await found()).toMatchObject({ state: 'done', hours: 0.75, doneBy: 'Ben' });
    await undo();
    // What was said before it was done holds again.
    const open = await found();
    expect(open).toMatchObject({ state: 'open', hoursDone: 0.2 });
    expect(open).not.toHaveProperty('doneBy', 'Ben');
    await undo();
    expect(await found()).toMatchObject({ state: 'open', hours: 0.5 });
    await undo();
  });

  it('says that there is no such farm', async () => {
    await app.api.get('/api/farms/00000000-0000-4000-8000-000000000000/today').expect(404);
  });
});
