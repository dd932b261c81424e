import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Paddock } from '../../shared/farm/paddock.js';
import type { Saved } from '../../shared/farm/saved.js';
import type { ToldFact } from '../../shared/farm/told-fact.js';
import type { ToldPage } from '../../src/told/facts-of-farm.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { batchBody, inDays, saveFarm, saveJob, type SavedFarm } from '../support/orders.js';
import { newHerd, newPaddock } from '../support/pasture-factories.js';
import { expectFieldProblem, expectProblem } from '../support/problem.js';

interface ClashAnswer {
  readonly current: readonly ToldFact[];
  readonly yours: readonly object[];
}

describe.each(databases())('what is told by phones without signal, on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;
  let paddocks: Saved<Paddock>[];

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app);
    paddocks = [];
    for (const name of ['A', 'B']) {
      const { id: _id, ...paddock } = newPaddock({ name });
      const { body } = await app.api.post(`${farm.path}/paddocks`).send(paddock).expect(201);
      paddocks.push(body as Saved<Paddock>);
    }
  }, 60_000);
  afterAll(() => app.close());

  const tell = (...facts: object[]) => app.api.post(`${farm.path}/told`).send({ facts });
  const told = async (query: string): Promise<ToldPage> =>
    (await app.api.get(`${farm.path}/told${query}`).expect(200)).body as ToldPage;
  const progress = (body: object) => app.api.put(`${farm.path}/work/progress`).send(body);
  /** The moment of a read, as a phone learns it. */
  const readNow = async (): Promise<string> =>
    (await app.api.get(`${farm.path}/told?take=1`).expect(200)).headers['asked-at'] as string;
  const reading = (heightCm: number, more: object = {}) => ({
    kind: 'grass-reading',
    about: paddocks[0]!.id,
    on: inDays(-1),
    details: { heightCm },
    ...more,
  });

  it('is asked about where somebody else told another meanwhile, and nothing is kept', async () => {
    const until = await readNow();
    const [hers] = (await tell(reading(12, { saidBy: 'Anna' })).expect(201)).body as ToldFact[];
    const before = await app.contents();
    const other = { kind: 'ground-check', about: 'ground', on: inDays(0) };
    const mine = reading(15, { key: 'mine', seen: { until } });
    const answer = await tell({ ...other, details: { isWorkable: true } }, mine);
    const clash = expectProblem(answer, 409) as unknown as ClashAnswer;
    expect(clash.current).toEqual([hers]);
    expect(clash.yours).toEqual([mine]);
    expect(await app.contents()).toBe(before);
    // Seen and said all the same, it takes the place; sent again, nothing changes.
    const seen = { until: hers!.toldAt };
    for (const _ of [1, 2]) await tell(reading(15, { key: 'mine', seen })).expect(201);
    const { facts } = await told('?kind=grass-reading');
    expect(facts).toMatchObject([{ key: 'mine', details: { heightCm: 15 }, replaces: hers!.id }]);
  });

  it('stands beside the other where both are so, and only where both can be', async () => {
    const until = await readNow();
    await tell(reading(20, { about: paddocks[1]!.id })).expect(201);
    const mine = { about: paddocks[1]!.id, key: 'beside', seen: { until } };
    expectProblem(await tell(reading(22, mine)), 409);
    await tell(reading(22, { ...mine, isBeside: true })).expect(201);
    const { facts } = await told(`?kind=grass-reading&about=${paddocks[1]!.id}`);
    expect(facts.map(({ details }) => details)).toEqual([{ heightCm: 22 }, { heightCm: 20 }]);
    const ground = { kind: 'ground-check', about: 'ground', on: inDays(0) };
    const answer = await tell({ ...ground, details: { isWorkable: true }, isBeside: true });
    expectFieldProblem(answer, { field: 'facts.0.isBeside', code: 'not-allowed' });
  });

  it('needs no question when both say the same, or the teller corrects himself', async () => {
    const until = await readNow();
    const about = await saveJob(app, farm.path, 'Hens');
    const chore = (key: string) => ({
      ...{ kind: 'chore-done', about, on: inDays(-2), details: {}, key },
      seen: { until },
    });
    await tell(chore('anna-1')).expect(201);
    await tell(chore('ben-1')).expect(201);
    expect((await told('?kind=chore-done')).total).toBe(1);
    const day = { on: inDays(-4) };
    await tell(reading(10, { ...day, key: 'first', seen: { until } })).expect(201);
    await tell(reading(11, { ...day, key: 'then', seen: { until, ownKeys: ['first'] } })).expect(
      201,
    );
    expect(await told(`?kind=grass-reading&about=${paddocks[0]!.id}`)).toMatchObject({
      facts: expect.arrayContaining([expect.objectContaining({ details: { heightCm: 11 } })]),
    });
  });

  it('clashes with what took the place of the fact that it changes', async () => {
    const day = { on: inDays(-6) };
    const [first] = (await tell(reading(8, day)).expect(201)).body as ToldFact[];
    const until = await readNow();
    const [second] = (await tell(reading(9, { ...day, replaces: first!.id })).expect(201))
      .body as ToldFact[];
    const mine = reading(7, { ...day, replaces: first!.id, key: 'third' });
    const answer = await tell({ ...mine, seen: { until } });
    expect((expectProblem(answer, 409) as unknown as ClashAnswer).current).toEqual([second]);
    // Who does not say what was seen is told what can be changed.
    expectFieldProblem(await tell(mine), { field: 'facts.0.replaces', code: 'not-allowed' });
  });

  it('of work goes together, hours of one and days of the other, and is said once', async () => {
    const until = await readNow();
    const key = await saveJob(app, farm.path, 'Fence');
    await progress({ key, ownHours: 3, tellKey: 'a1', seen: { until } }).expect(200);
    const mine = { key, dueOn: inDays(9), tellKey: 'b1', seen: { until }, saidBy: 'Ben' };
    for (const _ of [1, 2]) {
      expect((await progress(mine).expect(200)).body).toEqual({
        ...{ key, ownHours: 3, dueOn: inDays(9) },
      });
    }
    const facts = await told(`?kind=work-progress&about=${key}&history=true`);
    expect(facts.facts.map((fact) => [fact.key, fact.saidBy])).toEqual([
      ['b1', 'Ben'],
      ['a1', undefined],
    ]);
  });

  it('of work is asked about where one did it and the other put it off', async () => {
    const until = await readNow();
    const key = await saveJob(app, farm.path, 'Coop');
    await progress({ key, doneOn: inDays(-1), tellKey: 'a2' }).expect(200);
    const mine = { key, notBefore: inDays(3), tellKey: 'b2' };
    const answer = await progress({ ...mine, seen: { until } });
    const clash = expectProblem(answer, 409) as unknown as ClashAnswer;
    expect(clash.current).toMatchObject([{ key: 'a2', details: { doneOn: inDays(-1) } }]);
    // Both did it on the same day: that is no question, and a repeat after it was taken back is none.
    await progress({ key, doneOn: inDays(-1), tellKey: 'b3', seen: { until } }).expect(200);
    const { facts } = await told(`?kind=work-progress&about=${key}`);
    await app.api.delete(`${farm.path}/told/${facts[0]!.id}`).expect(204);
    await progress({ key, doneOn: inDays(-1), tellKey: 'b3', seen: { until } }).expect(200);
    expect((await told(`?kind=work-progress&about=${key}`)).facts[0]!.key).toBe('a2');
  });

  it('of a trip that both ticked off is bought once, and asked about where it was more bags', async () => {
    const until = await readNow();
    const batch = batchBody({ brooderId: farm.brooderId });
    const { body } = await app.api.post(`${farm.path}/batches`).send(batch).expect(201);
    const key = `batch/${(body as { id: string }).id}/meat.fetch-feed`;
    const line = (name: string, amount: number, from: string) => ({
      ...{ kind: 'bought', about: key, on: inDays(-1), key: `${from}-${name}` },
      details: { what: 'feed', name, amount, eachKg: 22, money: '30.00', work: key },
      seen: { until },
    });
    const held = async (): Promise<(string | number)[][]> =>
      (await told(`?kind=bought&about=${key}`)).facts
        .flatMap((fact) => (fact.kind === 'bought' ? [fact.details] : []))
        .map(({ name, amount }): (string | number)[] => [name!, amount])
        .sort();
    // Two lines alike of one telling are two purchases.
    await tell(line('Starter', 3, 'a'), line('Grower', 5, 'a'), {
      ...line('Starter', 3, 'a'),
      key: 'a-again',
    }).expect(201);
    expect(await held()).toEqual([
      ['Grower', 5],
      ['Starter', 3],
      ['Starter', 3],
    ]);
    await tell(line('Grower', 5, 'b')).expect(201);
    expect(await held()).toHaveLength(3);
    const clash = expectProblem(await tell(line('Grower', 6, 'c')), 409) as unknown as ClashAnswer;
    expect(clash.current).toMatchObject([{ key: 'b-Grower', details: { amount: 5 } }]);
    const seen = { until: clash.current[0]!.toldAt };
    await tell({ ...line('Grower', 6, 'c'), seen }).expect(201);
    expect((await held())[0]).toEqual(['Grower', 6]);
    // Typed by itself it is another purchase, whatever the tick told.
    const { work: _work, ...typed } = line('Grower', 6, 'd').details;
    await tell({ ...line('Grower', 6, 'd'), details: typed }).expect(201);
    expect(await held()).toHaveLength(4);
  });

  it('of a cow that calved is asked about where two tell another day, and she calved once', async () => {
    const { id: _id, ...herd } = newHerd();
    const post = async (what: string, body: object): Promise<string> =>
      ((await app.api.post(`${farm.path}/${what}`).send(body).expect(201)).body as { id: string })
        .id;
    const about = await post('herds', herd);
    const cow = { herdId: about, classId: 'cow-calf' };
    const cowId = await post('cows', { ...cow, name: 'Bluebell' });
    const other = await post('cows', { ...cow, name: 'Rosa' });
    const until = await readNow();
    const calved = (on: string, more: object = {}) => ({
      ...{ kind: 'calved', about, on, details: { calves: 1, cowId }, ...more },
    });
    const calves = async (): Promise<[string, object][]> =>
      (await told('?kind=calved')).facts.map(({ on, details }) => [on, details]);
    await tell(calved(inDays(-20), { details: { calves: 2, cowId: other } })).expect(201);
    await tell(calved(inDays(-2), { key: 'anna', seen: { until } })).expect(201);
    // Both phones tell the same: one calf.
    await tell(calved(inDays(-2), { key: 'ben', seen: { until } })).expect(201);
    expect(await calves()).toHaveLength(2);
    const mine = calved(inDays(-1), { key: 'carl' });
    const answer = await tell({ ...mine, seen: { until } });
    const clash = expectProblem(answer, 409) as unknown as ClashAnswer;
    expect(clash.current).toMatchObject([{ key: 'ben', on: inDays(-2) }]);
    // Who has seen it, or does not say, is told the day before; twins are one entry.
    const refused = { field: 'facts.0.on', code: 'conflict', given: inDays(-1) };
    expectFieldProblem(await tell(mine), refused);
    // A twin that is told alone is no second telling of the first.
    expectFieldProblem(await tell(calved(inDays(-2))), { ...refused, given: inDays(-2) });
    expectFieldProblem(await tell(calved(inDays(-2), { details: { calves: 2, cowId } })), {
      ...refused,
      given: inDays(-2),
    });
    expectFieldProblem(await tell(calved(inDays(-270))), { ...refused, given: inDays(-270) });
    const seen = { until: clash.current[0]!.toldAt };
    await tell({ ...mine, replaces: clash.current[0]!.id, seen }).expect(201);
    await tell(calved(inDays(-370))).expect(201);
    expect(await calves()).toEqual([
      [inDays(-1), { calves: 1, cowId }],
      [inDays(-20), { calves: 2, cowId: other }],
      [inDays(-370), { calves: 1, cowId }],
    ]);
  });

  it('names what cannot be read of what was seen', async () => {
    const answer = await tell(reading(10, { seen: { until: 'yesterday' } }));
    expectFieldProblem(answer, { field: 'facts.0.seen.until', code: 'not-a-date' });
  });
});
