import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { Herd } from '../../shared/farm/herd.js';
import type { Paddock } from '../../shared/farm/paddock.js';
import type { WorkPlan } from '../../shared/plan/work/planned-work.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { inDays, saveFarm, type SavedFarm } from '../support/orders.js';
import { newHerd, newPaddock } from '../support/pasture-factories.js';
import { service } from '../support/outside.js';

const { Database, PersonEntity } = service;

const atOnce = <T>(count: number, make: (i: number) => PromiseLike<T>): Promise<T[]> =>
  Promise.all(Array.from({ length: count }, (_, i) => make(i)));
const statuses = (answers: readonly { status: number }[]): number[] =>
  [...new Set(answers.map(({ status }) => status))].sort();

describe.each(databases())('many writers on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;

  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());
  beforeEach(async () => {
    farm = await saveFarm(app);
  });

  const revision = async (): Promise<number> =>
    Number((await app.rows('farms', { id: farm.id }))[0]!['revision']);
  const add = async <T>(what: string, { id: _id, ...body }: { id?: string }): Promise<T> =>
    (await app.api.post(`${farm.path}/${what}`).send(body).expect(201)).body as T;

  it('answers fifty at once, and loses none', async () => {
    const answers = await atOnce(50, (i) =>
      app.api.post(`${farm.path}/people`).send({ name: `Adult ${i}`, away: [] }),
    );
    expect(statuses(answers)).toEqual([201]);
    expect(await app.rows('people', { farmId: farm.id })).toHaveLength(50);
    expect(await revision()).toBe(52);
  });

  it('keeps twelve ticks with hours while the plan is made', async () => {
    const { body } = await app.api.post('/api/farms/sample').expect(201);
    const path = `/api/farms/${(body as { id: string }).id}`;
    const { jobs, today, done } = (await app.api.get(`${path}/work`).expect(200)).body as WorkPlan;
    const keys = jobs.slice(0, 12).map(({ key }) => key);
    // A change, so that the plan has to be made again while the ticks come in.
    await app.api.post(`${path}/people`).send({ name: 'Adult C', away: [] }).expect(201);
    const answers = await atOnce(12, (i) =>
      app.api.put(`${path}/work/progress`).send({ key: keys[i], doneOn: today, hours: 1 + i / 4 }),
    );
    expect(statuses(answers)).toEqual([200]);
    const after = (await app.api.get(`${path}/work`).expect(200)).body as WorkPlan;
    const all = [...keys, ...done.map(({ key }) => key)];
    expect(after.done.map(({ key }) => key).sort()).toEqual(all.sort());
  }, 120_000);

  it('moves a dozen herds at once, and none into a paddock where another stands', async () => {
    const paddocks = await Promise.all(
      Array.from({ length: 13 }, (_, i) =>
        add<Paddock>('paddocks', newPaddock({ name: `Paddock ${i}` })),
      ),
    );
    const herds = await Promise.all(
      Array.from({ length: 12 }, (_, i) => add<Herd>('herds', newHerd({ name: `Herd ${i}` }))),
    );
    const moves = await atOnce(12, (i) =>
      app.api
        .post(`${farm.path}/herds/${herds[i]!.id}/moved`)
        .send({ paddockId: paddocks[i]!.id, on: inDays(-2) }),
    );
    expect(statuses(moves)).toEqual([200]);
    const toOne = await atOnce(12, (i) =>
      app.api
        .post(`${farm.path}/herds/${herds[i]!.id}/moved`)
        .send({ paddockId: paddocks[12]!.id, on: inDays(-1) }),
    );
    expect(toOne.map(({ status }) => status).sort()).toEqual([200, ...Array<number>(11).fill(400)]);
    const now = (await app.api.get(`${farm.path}/herds`).expect(200)).body as Herd[];
    expect(new Set(now.map(({ inPaddockId }) => inPaddockId)).size).toBe(12);
    await app.api.get(`${farm.path}/paddocks`).expect(200); // nothing hangs
  }, 60_000);

  it('splits paddocks at once', async () => {
    const paddocks = await Promise.all(
      Array.from({ length: 12 }, (_, i) =>
        add<Paddock>('paddocks', newPaddock({ name: `Paddock ${i}` })),
      ),
    );
    const answers = await atOnce(12, (i) =>
      app.api.post(`${farm.path}/paddocks/${paddocks[i]!.id}/split`).send({ parts: 2 }),
    );
    expect(statuses(answers)).toEqual([201]);
    expect(await app.rows('paddocks', { farmId: farm.id })).toHaveLength(24);
  }, 60_000);

  it('lets no two pass who would together be too many', async () => {
    await atOnce(195, (i) =>
      app.api
        .post(`${farm.path}/people`)
        .send({ name: `Adult ${i}`, away: [] })
        .expect(201),
    );
    const answers = await atOnce(10, (i) =>
      app.api.post(`${farm.path}/people`).send({ name: `More ${i}`, away: [] }),
    );
    expect(answers.filter(({ status }) => status === 201)).toHaveLength(5);
    expect(await app.rows('people', { farmId: farm.id })).toHaveLength(200);
  }, 60_000);

  describe('a write', () => {
    const newPerson = (name: string) => ({
      id: `${farm.id}-${name}`,
      farmId: farm.id,
      name,
      away: [],
    });

    it('that fails leaves those before and after it alone', async () => {
      const base = app.nest.get(Database);
      const outcomes = await Promise.allSettled(
        ['a', 'b', 'c'].map((name) =>
          base.write(farm.id, async (manager) => {
            await manager.insert(PersonEntity, newPerson(name));
            if (name === 'b') throw new Error('changed its mind');
          }),
        ),
      );
      expect(outcomes.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled']);
      const names = (await app.rows('people', { farmId: farm.id })).map(({ name }) => name);
      expect(names.sort()).toEqual(['a', 'c']);
      expect(await revision()).toBe(4);
    });

    it('is not seen by others before it is whole, and sees itself', async () => {
      const base = app.nest.get(Database);
      const seen = {
        within: [] as InstanceType<typeof PersonEntity>[],
        elsewhere: -1,
        revision: 0,
      };
      await expect(
        base.write(farm.id, async (manager) => {
          await manager.insert(PersonEntity, newPerson('a'));
          seen.within = await base.manager.findBy(PersonEntity, { farmId: farm.id });
          // Another request, in the middle of this one.
          const { body } = await app.api.get(`${farm.path}/people`);
          seen.elsewhere = (body as unknown[]).length;
          seen.revision = ((await app.api.get(farm.path)).body as { revision: number }).revision;
          throw new Error('changed its mind');
        }),
      ).rejects.toThrow('changed its mind');
      expect(seen.within.map(({ name }) => name)).toEqual(['a']);
      expect(seen).toMatchObject({ elsewhere: 0, revision: 2 });
      expect(await revision()).toBe(2);
    });

    it('within a write of the same farm joins in, and of another farm is refused', async () => {
      const base = app.nest.get(Database);
      const other = await saveFarm(app);
      await base.write(farm.id, () =>
        base.write(farm.id, (manager) => manager.insert(PersonEntity, newPerson('a'))),
      );
      expect(await revision()).toBe(3);
      await expect(
        base.write(farm.id, () => base.write(other.id, () => Promise.resolve())),
      ).rejects.toThrow('another farm');
      await expect(
        base.snapshot(() => base.write(farm.id, () => Promise.resolve())),
      ).rejects.toThrow('snapshot');
    });
  });

  it('shows one state to a snapshot, whatever is written meanwhile', async () => {
    const base = app.nest.get(Database);
    const count = () => base.manager.countBy(PersonEntity, { farmId: farm.id });
    const [before, after] = await base.snapshot(async () => {
      const first = await count();
      await app.api.post(`${farm.path}/people`).send({ name: 'A', away: [] }).expect(201);
      return [first, await count()];
    });
    expect([before, after]).toEqual([0, 0]);
    expect(await base.snapshot(count)).toBe(1);
  });

  it('shows a writer at once what it wrote', async () => {
    await atOnce(20, async (i) => {
      const { body } = await app.api
        .post(`${farm.path}/people`)
        .send({ name: `Adult ${i}`, away: [{ from: inDays(i), to: addDays(inDays(i), 1) }] });
      await app.api.get(`${farm.path}/people/${(body as { id: string }).id}`).expect(200);
    });
  });
});

describe('a write outside of a transaction', () => {
  it('is refused by the connection that reads', async () => {
    const [sqlite] = databases();
    const app = await openApp(sqlite!);
    try {
      const { manager } = app.nest.get(Database);
      await expect(manager.delete(PersonEntity, { id: 'a' })).rejects.toThrow('readonly');
    } finally {
      await app.close();
    }
  });
});
