import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { Cow } from '../../shared/farm/cow.js';
import type { CattleGroup, Herd } from '../../shared/farm/herd.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import type { ToldFact } from '../../shared/farm/told-fact.js';
import type { YearCounts } from '../../shared/plan/record/year-counts.js';
import type { TickedToday } from '../../shared/plan/today/today.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { inDays, saveFarm, type SavedFarm } from '../support/orders.js';
import { expectFieldProblem } from '../support/problem.js';

const GROUPS: CattleGroup[] = [
  { classId: 'dry-cow', head: 4, weightKg: 600, calvesOn: inDays(60) },
  { classId: 'stocker', head: 6, weightKg: 300, arrivesOn: inDays(-90), leavesOn: inDays(30) },
];

describe.each(databases())('cattle that die or go on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;
  let herd: Herd;

  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());
  beforeEach(async () => {
    farm = await saveFarm(app);
    const body = { name: 'Cows', groups: GROUPS };
    herd = (await app.api.post(`${farm.path}/herds`).send(body).expect(201)).body as Herd;
  });

  const tell = (details: object, day = 0, more: object = {}) =>
    app.api.post(`${farm.path}/told`).send({
      facts: [{ kind: 'cattle-left', about: herd.id, on: inDays(day), details, ...more }],
    });
  const told = async (details: object, day = 0, more: object = {}): Promise<ToldFact> =>
    ((await tell(details, day, more).expect(201)).body as ToldFact[])[0]!;
  const undo = (id: string) => app.api.delete(`${farm.path}/told/${id}`).expect(204);
  const get = async <T>(path: string): Promise<T> =>
    (await app.api.get(`${farm.path}/${path}`).expect(200)).body as T;
  const groups = async (): Promise<Herd['groups']> => (await get<Herd>(`herds/${herd.id}`)).groups;
  const line = async () =>
    (await get<TickedToday>('today')).animals.find(({ id }) => id === herd.id) as
      | { head: { value: number }; water: { value: number } }
      | undefined;

  it('are told on the day and on what is to come once one of several due has calved', async () => {
    const groups = [{ classId: 'dry-cow', head: 3, calvesOn: inDays(3) }];
    const body = { name: 'Due', groups };
    const due = (await app.api.post(`${farm.path}/herds`).send(body).expect(201)).body as Herd;
    const said = async () =>
      (await get<TickedToday>('today')).animals.find(({ id }) => id === due.id);
    expect(await said()).not.toHaveProperty('calving');
    const facts = [{ kind: 'calved', about: due.id, on: inDays(-1), details: { calves: 1 } }];
    const { body: kept } = await app.api.post(`${farm.path}/told`).send({ facts }).expect(201);
    expect(await said()).toMatchObject({
      calving: [expect.stringMatching(/^1 of 3 has calved, 2 to come, due around /)],
    });
    await undo((kept as ToldFact[])[0]!.id);
    expect(await said()).not.toHaveProperty('calving');
  });

  it('give no more milk in a day than their milk cows can, whatever else is in the herd', async () => {
    const groups = [...GROUPS, { classId: 'milk-cow', head: 1, calvesOn: inDays(-60) }];
    const body = { name: 'Milked', groups };
    const milked = (await app.api.post(`${farm.path}/herds`).send(body).expect(201)).body as Herd;
    const milk = (liters: number) =>
      app.api.post(`${farm.path}/told`).send({
        facts: [{ kind: 'milked', about: milked.id, on: inDays(-1), details: { liters } }],
      });
    expectFieldProblem(await milk(106), {
      ...{ field: 'facts.0.details.liters', code: 'out-of-bounds', given: 106, max: 70, unit: 'L' },
    });
    await milk(28).expect(201);
  });

  it('have no more calves than so many cows can have', async () => {
    const calved = (details: object) =>
      app.api.post(`${farm.path}/told`).send({
        facts: [{ kind: 'calved', about: herd.id, on: inDays(-1), details }],
      });
    // Ten head, all of them with twins.
    expectFieldProblem(await calved({ calves: 40 }), {
      ...{ field: 'facts.0.details.calves', code: 'out-of-bounds', given: 40, min: 0, max: 20 },
    });
    expectFieldProblem(await calved({ calves: 12, dead: 9 }), {
      ...{ field: 'facts.0.details.calves', given: 12, max: 11 },
    });
    await calved({ calves: 2, dead: 1 }).expect(201);
    const { id: cowId } = (
      await app.api
        .post(`${farm.path}/cows`)
        .send({ name: 'Daisy', herdId: herd.id, classId: 'dry-cow' })
        .expect(201)
    ).body as Cow;
    expectFieldProblem(await calved({ calves: 4, cowId }), {
      ...{ field: 'facts.0.details.calves', given: 4, max: 3 },
    });
  });

  it('are fewer from that day on, in herd, day and record, and all are there again when undone', async () => {
    const before = (await line())!;
    expect(before.head.value).toBe(10);
    const died = await told({ how: 'died', head: 1, classId: 'dry-cow' }, -3);
    await told({
      ...{ how: 'sold', head: 2, classId: 'stocker' },
      ...{ weightKg: 640, money: '2150.50', to: 'A neighbor' },
    });
    const after = (await line())!;
    expect(after.head.value).toBe(7);
    expect(after.water.value).toBeLessThan(before.water.value);
    const at = (await groups()).map(({ head, leavesOn }) => [head, leavesOn]);
    // Groups keep their places; those that left stand behind.
    expect(at).toEqual([
      ...[
        [3, undefined],
        [4, inDays(30)],
      ],
      ...[
        [1, inDays(-3)],
        [2, inDays(0)],
      ],
    ]);
    const counts = await get<YearCounts>(`record/years/${inDays(0).slice(0, 4)}`);
    expect(counts.cattle.sold).toBe(2);
    expect(counts.money.taken).toBe(215_050);
    await undo(died.id);
    await undo(died.id);
    expect((await line())!.head.value).toBe(8);
  });

  it('come back with all that was known of them, when the last of a class was told by mistake', async () => {
    const all = await told({ how: 'sold', head: 6, classId: 'stocker', money: '5000' });
    expect((await line())!.head.value).toBe(4);
    await undo(all.id);
    expect(await groups()).toEqual(GROUPS);
  });

  it('are changed, not counted twice', async () => {
    const one = await told({ how: 'died', head: 1, classId: 'dry-cow' });
    const two = await told({ how: 'died', head: 2, classId: 'dry-cow' }, 0, { replaces: one.id });
    expect((await line())!.head.value).toBe(8);
    await undo(two.id);
    expect((await line())!.head.value).toBe(9);
    await undo(one.id);
    expect(await groups()).toEqual(GROUPS);
  });

  it('are told once under one key', async () => {
    const fact = { how: 'died', head: 1, classId: 'dry-cow' };
    await told(fact, 0, { key: 'the-same' });
    await told(fact, 0, { key: 'the-same' });
    expect((await line())!.head.value).toBe(9);
  });

  it('are a cow with a name, who stands nowhere any more', async () => {
    const body = { name: 'Clover', herdId: herd.id, classId: 'dry-cow' };
    const cow = (await app.api.post(`${farm.path}/cows`).send(body).expect(201)).body as Cow;
    const gone = await told({ how: 'put-down', head: 1, cowId: cow.id });
    expect((await get<FarmPicture>('picture')).cows).toEqual([]);
    // The record still calls her by her name.
    expect(await get<Cow[]>('cows')).toMatchObject([{ id: cow.id, name: 'Clover' }]);
    expect((await line())!.head.value).toBe(9);
    expectFieldProblem(await tell({ how: 'sold', head: 1, cowId: cow.id }), {
      ...{ field: 'facts.0.details.cowId', code: 'conflict' },
    });
    await undo(gone.id);
    expect((await get<FarmPicture>('picture')).cows).toMatchObject([{ name: 'Clover' }]);
  });

  it('are not more than there were, and of a class that is known', async () => {
    const of = (details: object, day?: number) => tell({ how: 'sold', ...details }, day);
    expectFieldProblem(await of({ head: 5, classId: 'dry-cow' }), {
      ...{ field: 'facts.0.details.head', code: 'out-of-bounds', max: 4 },
    });
    // Before they came.
    expectFieldProblem(await of({ head: 1, classId: 'stocker' }, -100), {
      ...{ field: 'facts.0.details.head', code: 'out-of-bounds', max: 0 },
    });
    expectFieldProblem(await of({ head: 1 }), {
      ...{ field: 'facts.0.details.classId', code: 'missing' },
    });
    expectFieldProblem(await of({ head: 1, classId: 'bull' }), {
      ...{ field: 'facts.0.details.classId', code: 'not-allowed' },
    });
    expectFieldProblem(await of({ head: 1, classId: 'dry-cow', weightKg: 6000 }), {
      ...{ field: 'facts.0.details.weightKg', code: 'out-of-bounds', max: 1500 },
    });
    expectFieldProblem(await tell({ how: 'died', head: 1, classId: 'dry-cow', money: '9' }), {
      ...{ field: 'facts.0.details.money', code: 'conflict' },
    });
    expect(await groups()).toEqual(GROUPS);
  });
});
