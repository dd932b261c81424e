import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { Cow } from '../../shared/farm/cow.js';
import type { Herd } from '../../shared/farm/herd.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { inDays, saveFarm, type SavedFarm } from '../support/orders.js';
import { expectFieldProblem, expectProblem } from '../support/problem.js';

type SavedCow = Cow & { readonly version: number };

const GROUPS = [
  { classId: 'dry-cow', head: 2 },
  { classId: 'milk-cow', head: 1 },
];

describe.each(databases())('cows with a name on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;
  let herd: Herd;

  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());
  beforeEach(async () => {
    farm = await saveFarm(app);
    herd = await newHerd('Cows');
  });

  const newHerd = async (name: string): Promise<Herd> =>
    (await app.api.post(`${farm.path}/herds`).send({ name, groups: GROUPS }).expect(201))
      .body as Herd;
  const bodyOf = (name: string, more: object = {}): object => ({
    ...{ name, herdId: herd.id, classId: 'dry-cow', ...more },
  });
  const post = (body: object) => app.api.post(`${farm.path}/cows`).send(body);
  const add = async (name: string, more: object = {}): Promise<SavedCow> =>
    (await post(bodyOf(name, more)).expect(201)).body as SavedCow;
  const putHerd = (groups: object[]) =>
    app.api.put(`${farm.path}/herds/${herd.id}`).send({ name: 'Cows', groups });
  const cows = async (): Promise<SavedCow[]> =>
    (await app.api.get(`${farm.path}/cows`).expect(200)).body as SavedCow[];

  it('are kept as they were sent, and given back by name with the picture of the farm', async () => {
    const known = {
      ...{ earTag: 'A 12', bornOn: '2020-04-17', weightKg: 610, gainKgPerDay: 0.1 },
      ...{ milkKgPerDay: 22, bredOn: inDays(-40), breedId: 'jersey', notes: 'Kicks.\nTwice.' },
    };
    const clover = await add('Clover', { classId: 'milk-cow', ...known });
    expect(clover).toEqual({
      ...{ id: expect.any(String), version: 1, name: 'Clover', herdId: herd.id },
      ...{ classId: 'milk-cow', ...known },
    });
    const bluebell = await add('Bluebell');
    expect(await cows()).toEqual([bluebell, clover]);
    const picture = (await app.api.get(`${farm.path}/picture`).expect(200)).body as object;
    expect(picture).toMatchObject({ cows: [bluebell, clover] });
    const at = `${farm.path}/cows/${clover.id}`;
    const { body } = await app.api
      .put(at)
      .send(bodyOf('Clover', { version: 1 }))
      .expect(200);
    expect(body).toEqual({ ...bluebell, id: clover.id, name: 'Clover', version: 2 });
    expect((await app.api.get(at).expect(200)).body).toEqual(body);
    await app.api.delete(at).expect(204);
    expect(await cows()).toEqual([bluebell]);
    expectProblem(await app.api.get(at), 404);
  });

  it('take the medicine of a herd along into another, and the record knows where they were', async () => {
    const other = await newHerd('Others');
    const daisy = await add('Daisy');
    const treated = {
      ...{ kind: 'treated', about: herd.id, on: inDays(-1) },
      details: { product: 'Wormer', meatDays: 21, milkDays: 2 },
    };
    await app.api
      .post(`${farm.path}/told`)
      .send({ facts: [treated] })
      .expect(201);
    await app.api
      .put(`${farm.path}/cows/${daisy.id}`)
      .send(bodyOf('Daisy', { herdId: other.id, version: 1 }))
      .expect(200);
    const picture = (await app.api.get(`${farm.path}/picture`).expect(200)).body as object;
    expect(picture).toMatchObject({
      treatments: [{ about: herd.id }, { about: other.id, cowId: daisy.id, meatDays: 21 }],
    });
    const left = {
      ...{ kind: 'cattle-left', about: other.id, on: inDays(0) },
      details: { how: 'slaughtered', head: 1, cowId: daisy.id },
    };
    await app.api
      .post(`${farm.path}/told`)
      .send({ facts: [left] })
      .expect(201);
    const { body } = await app.api.get(`${farm.path}/today`).expect(200);
    expect((body as { attention: object[] }).attention).toContainEqual(
      expect.objectContaining({ words: 'slaughtered while a medicine ran' }),
    );
    const history = await app.api.get(`${farm.path}/told?kind=row-changed`).expect(200);
    expect((history.body as { facts: object[] }).facts).toContainEqual(
      expect.objectContaining({
        about: daisy.id,
        details: {
          ...{ of: 'cow', name: 'Daisy', how: 'changed' },
          fields: [{ field: 'herdId', before: herd.id, after: other.id }],
        },
      }),
    );
  });

  it('are never more than the head of their class, nor of a class that is not in the herd', async () => {
    await add('Bluebell');
    await add('Clover');
    const before = await app.contents();
    expectFieldProblem(await post(bodyOf('Poppy')), {
      ...{ field: 'herdId', code: 'out-of-bounds', given: 3, max: 2 },
      fix: expect.stringContaining(
        'All 2 head of the class “Beef cow, in calf” in Cows have a name.',
      ),
    });
    for (const [field, given] of [
      ['classId', 'heifer'],
      ['herdId', 'no-herd'],
      ['bornOn', inDays(3)],
    ] as const) {
      const body = bodyOf('Poppy', { classId: 'milk-cow', [field]: given });
      expectFieldProblem(await post(body), { field, given });
    }
    expect(await app.contents()).toBe(before);
  });

  it('are all named when two are named at once for one head, or one is refused', async () => {
    const asked = ['Bluebell', 'Clover'].map((name) => post(bodyOf(name, { classId: 'milk-cow' })));
    const answers = await Promise.all(asked.map(async (each) => (await each).status));
    expect(answers.sort()).toEqual([201, 400]);
    expect(await cows()).toHaveLength(1);
  });

  it('hold a herd to their head, and are named by what refuses it', async () => {
    await add('Bluebell');
    await add('Clover');
    const before = await app.contents();
    expectFieldProblem(await putHerd([{ classId: 'dry-cow', head: 1 }, GROUPS[1]!]), {
      ...{ field: 'groups.0.head', code: 'out-of-bounds', given: 1, min: 2 },
      fix: expect.stringContaining('Bluebell, Clover are of that class'),
    });
    expectFieldProblem(await putHerd([GROUPS[1]!]), {
      ...{ field: 'groups', code: 'conflict' },
      fix: expect.stringContaining('Bluebell, Clover are of it'),
    });
    expect(await app.contents()).toBe(before);
    await putHerd([{ classId: 'dry-cow', head: 5 }, GROUPS[1]!]).expect(200);
  });

  it('go along when their group becomes another class, as cows that have calved do', async () => {
    const bluebell = await add('Bluebell');
    const clover = await add('Clover', { classId: 'milk-cow' });
    await putHerd([{ classId: 'cow-calf', head: 2 }, GROUPS[1]!]).expect(200);
    expect(await cows()).toEqual([{ ...bluebell, classId: 'cow-calf', version: 2 }, clover]);
    await putHerd([{ classId: 'heifer', head: 1 }, GROUPS[1]!]).expect(200);
    expect((await cows())[0]).toMatchObject({ classId: 'heifer', version: 3 });
  });

  it('go to another herd by its id, where there is head for them', async () => {
    const bluebell = await add('Bluebell');
    const other = await newHerd('Others');
    const at = `${farm.path}/cows/${bluebell.id}`;
    await app.api
      .put(at)
      .send(bodyOf('Bluebell', { herdId: other.id }))
      .expect(200);
    await add('Clover');
    await add('Poppy');
    expectFieldProblem(await app.api.put(at).send(bodyOf('Bluebell')), { field: 'herdId' });
    // A herd that goes takes its own along, and no others.
    await app.api.delete(`${farm.path}/herds/${herd.id}`).expect(204);
    expect((await cows()).map(({ name }) => name)).toEqual(['Bluebell']);
  });

  it('refuse to be overwritten by an older page, and show both', async () => {
    const bluebell = await add('Bluebell');
    const at = `${farm.path}/cows/${bluebell.id}`;
    await app.api
      .put(at)
      .send(bodyOf('Bluebell', { earTag: 'A 1', version: 1 }))
      .expect(200);
    const mine = bodyOf('Bluebell', { earTag: 'B 2', version: 1 });
    expect(expectProblem(await app.api.put(at).send(mine), 409)).toMatchObject({
      ...{ current: { earTag: 'A 1', version: 2 }, yours: mine },
    });
    expectProblem(await app.api.delete(at).set('If-Match', '"1"'), 409);
  });

  it('of another farm are not found, and another farm’s herd is none', async () => {
    const bluebell = await add('Bluebell');
    const theirs = await saveFarm(app);
    const before = await app.contents();
    const at = `${theirs.path}/cows/${bluebell.id}`;
    expectProblem(await app.api.get(at), 404);
    expectProblem(await app.api.put(at).send(bodyOf('Bluebell')), 404);
    expectProblem(await app.api.delete(at), 404);
    const there = await app.api.post(`${theirs.path}/cows`).send(bodyOf('Clover'));
    expectFieldProblem(there, { field: 'herdId' });
    expect(await app.contents()).toBe(before);
  });
});
