import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { FarmPicture } from '../../shared/farm/picture.js';
import type { Herd } from '../../shared/farm/herd.js';
import type { GrassReading, Paddock } from '../../shared/farm/paddock.js';
import type { Saved } from '../../shared/farm/saved.js';
import type { ToldFact } from '../../shared/farm/told-fact.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import type { PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import type { ToldPage } from '../../src/told/facts-of-farm.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { batchBody, inDays, saveFarm, saveJob, type SavedFarm } from '../support/orders.js';
import { newHerd, newPaddock } from '../support/pasture-factories.js';
import { expectFieldProblem, expectProblem } from '../support/problem.js';
import { smallJpeg } from '../support/small-jpeg.js';

describe.each(databases())('what is told on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;
  let paddocks: Saved<Paddock>[];
  let herd: Saved<Herd>;

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app);
    paddocks = [];
    for (const name of ['A', 'B', 'C']) {
      const { id: _id, ...paddock } = newPaddock({ name });
      const { body } = await app.api.post(`${farm.path}/paddocks`).send(paddock).expect(201);
      paddocks.push(body as Saved<Paddock>);
    }
    const { id: _id, ...cows } = newHerd();
    herd = (await app.api.post(`${farm.path}/herds`).send(cows).expect(201)).body as Saved<Herd>;
  }, 60_000);
  afterAll(() => app.close());

  const tell = (...facts: object[]) => app.api.post(`${farm.path}/told`).send({ facts });
  const told = async (query = ''): Promise<ToldPage> =>
    (await app.api.get(`${farm.path}/told${query}`).expect(200)).body as ToldPage;
  const reading = (more: object = {}) => ({
    kind: 'grass-reading',
    about: paddocks[0]!.id,
    on: inDays(-3),
    details: { heightCm: 12 },
    ...more,
  });
  const readings = async (): Promise<GrassReading[]> =>
    (await app.api.get(`${farm.path}/grass-readings`)).body as GrassReading[];

  it('is kept with who said it and when, and raises the revision', async () => {
    const before = Number((await app.rows('farms', { id: farm.id }))[0]!['revision']);
    const [fact] = (await tell(reading({ saidBy: 'Adult A' })).expect(201)).body as ToldFact[];
    expect(fact).toEqual({
      ...reading({ saidBy: 'Adult A' }),
      id: expect.any(String),
      key: expect.any(String),
      toldAt: expect.stringMatching(/^\d{4}-.*Z$/),
    });
    expect((await app.rows('farms', { id: farm.id }))[0]).toMatchObject({ revision: before + 1 });
    expect(await readings()).toMatchObject([{ id: fact!.id, heightCm: 12 }]);
    await app.api.delete(`${farm.path}/told/${fact!.id}`).expect(204);
  });

  it('told twice under one key is told once, even at once', async () => {
    const said = reading({ key: 'walk-1' });
    const answers = await Promise.all([1, 2, 3, 4].map(() => tell(said)));
    const ids = answers.map(({ body }) => (body as ToldFact[])[0]!.id);
    expect(new Set(ids).size).toBe(1);
    expect(await app.rows('told_facts', { farmId: farm.id, key: 'walk-1' })).toHaveLength(1);
    const other = await tell(reading({ key: 'walk-1', details: { heightCm: 20 } }));
    expectFieldProblem(other, { field: 'facts.0.key', code: 'conflict', given: 'walk-1' });
    await app.api.delete(`${farm.path}/told/${ids[0]}`).expect(204);
  });

  it('knows a paddock that came between two entries, and no longer one that went', async () => {
    await tell(reading({ key: 'before-it-came' })).expect(201);
    const { id: _id, ...row } = newPaddock({ name: 'Between' });
    const { body: paddock } = await app.api.post(`${farm.path}/paddocks`).send(row).expect(201);
    const { id: about } = paddock as Saved<Paddock>;
    const { body: ofIt } = await tell(reading({ about, key: 'of-it' })).expect(201);
    await app.api.delete(`${farm.path}/paddocks/${about}`).expect(204);
    const late = await tell(reading({ about, key: 'too-late' }));
    expectFieldProblem(late, { field: 'facts.0.about', code: 'not-allowed', given: about });
    const [first] = (await told('?kind=grass-reading')).facts.filter(
      ({ key }) => key === 'before-it-came',
    );
    for (const { id } of [first!, ...(ofIt as ToldFact[])])
      await app.api.delete(`${farm.path}/told/${id}`).expect(204);
  });

  it('may be nothing at all', async () => {
    expect((await tell().expect(201)).body).toEqual([]);
    const walk = app.api.post(`${farm.path}/grass-readings`).send({ readings: [] });
    expect((await walk.expect(201)).body).toEqual([]);
  });

  it('is all kept, or nothing is', async () => {
    const before = await app.contents();
    const answer = await tell(reading(), reading({ on: inDays(2) }));
    expectFieldProblem(answer, { field: 'facts.1.on', code: 'out-of-bounds' });
    expect(await app.contents()).toBe(before);
  });

  it('replaces what it changes; taken back, what was before holds again; it can be told again', async () => {
    const [first] = (await tell(reading()).expect(201)).body as ToldFact[];
    const [second] = (await tell(reading({ details: { heightCm: 14 } })).expect(201))
      .body as ToldFact[];
    expect(second!.replaces).toBe(first!.id);
    expect(await readings()).toMatchObject([{ heightCm: 14 }]);
    await app.api.delete(`${farm.path}/told/${second!.id}`).expect(204);
    expect(await readings()).toMatchObject([{ heightCm: 12 }]);
    await app.api.delete(`${farm.path}/told/${second!.id}`).expect(204); // once more is the same
    await tell(reading({ details: { heightCm: 15 } })).expect(201);
    expect(await readings()).toMatchObject([{ heightCm: 15 }]);
    const now = await told('?kind=grass-reading');
    expect(now.facts.map(({ details }) => details)).toEqual([{ heightCm: 15 }]);
    const history = await told(`?kind=grass-reading&about=${paddocks[0]!.id}&history=true`);
    expect(history.total).toBeGreaterThanOrEqual(5);
    const of = history.facts.find((each) => each.id === second!.id);
    expect(of!.takenBackAt).toBeDefined();
    const { id } = now.facts[0]!;
    // The reading's own address forgets the whole day.
    await app.api.delete(`${farm.path}/grass-readings/${id}`).expect(204);
    expect(await readings()).toEqual([]);
  });

  it('is given in pages, which say how many there are', async () => {
    const other = await saveFarm(app);
    const facts = Array.from({ length: 7 }, (_, k) => ({
      kind: 'ground-check',
      about: 'ground',
      on: inDays(-k),
      details: { isWorkable: k % 2 === 0 },
    }));
    await app.api.post(`${other.path}/told`).send({ facts }).expect(201);
    const page = async (query: string): Promise<ToldPage> =>
      (await app.api.get(`${other.path}/told?${query}`).expect(200)).body as ToldPage;
    const days = async (query: string) => (await page(query)).facts.map(({ on }) => on);
    expect(await page('take=3')).toMatchObject({ total: 7, skip: 0 });
    expect(await days('take=3')).toEqual([0, -1, -2].map(inDays));
    expect(await days('take=3&skip=6')).toEqual([inDays(-6)]);
    expect(await days(`from=${inDays(-1)}`)).toEqual([0, -1].map(inDays));
    expectFieldProblem(await app.api.get(`${other.path}/told?take=5000`), { field: 'take' });
    expectFieldProblem(await app.api.get(`${other.path}/told?kind=rumor`), { field: 'kind' });
    expectProblem(await app.api.get('/api/farms/none/told'), 404);
    expectProblem(await app.api.delete(`${other.path}/told/nothing`), 404);
  });

  it('of ticks and looks is what the work takes, whichever way it was told', async () => {
    const mark = (body: object) => app.api.put(`${farm.path}/work/progress`).send(body).expect(200);
    const key = await saveJob(app, farm.path, 'Mend the gate');
    await mark({ key, doneOn: inDays(-1), hours: 2 });
    await mark({ key, doneOn: inDays(0), hours: 3 });
    expect((await told(`?about=${key}`)).facts).toMatchObject([
      { kind: 'work-progress', on: inDays(0), details: { doneOn: inDays(0), hours: 3 } },
    ]);
    await mark({ key });
    expect((await told(`?about=${key}`)).total).toBe(0);
    expect((await told(`?about=${key}&history=true`)).total).toBe(2);
    const wrong = await app.api
      .put(`${farm.path}/work/progress`)
      .send({ key: 'mow', doneOn: inDays(0) });
    expectFieldProblem(wrong, { field: 'key', code: 'not-allowed', given: 'mow' });
  });

  it('of moves says where herds stand and when paddocks were grazed', async () => {
    const [a, b, c] = paddocks as [Saved<Paddock>, Saved<Paddock>, Saved<Paddock>];
    const at = `${farm.path}/herds/${herd.id}`;
    const place = async () => {
      const { inPaddockId, inSince } = (await app.api.get(at).expect(200)).body as Herd;
      return [inPaddockId, inSince];
    };
    const grazed = async (paddock: Paddock) =>
      ((await app.api.get(`${farm.path}/paddocks/${paddock.id}`)).body as Paddock).lastGrazedOn;
    const move = (to: Paddock, on: string) =>
      app.api.post(`${at}/moved`).send({ paddockId: to.id, on }).expect(200);
    await move(a, inDays(-9));
    await move(c, inDays(-2));
    await move(b, inDays(-5)); // told late
    expect(await place()).toEqual([c.id, inDays(-2)]);
    expect([await grazed(a), await grazed(b), await grazed(c)]).toEqual([
      inDays(-6),
      inDays(-3),
      undefined,
    ]);
    // Led to where they stand already: asked about, and nothing is told.
    const again = {
      kind: 'herd-move',
      about: herd.id,
      on: inDays(-1),
      details: { paddockId: c.id },
    };
    const refused = await app.api.post(`${farm.path}/told`).send({ facts: [again] });
    expectFieldProblem(refused, { code: 'conflict', given: c.id });
    const { facts } = await told(`?kind=herd-move&about=${herd.id}`);
    await app.api.delete(`${farm.path}/told/${facts[0]!.id}`).expect(204);
    expect(await place()).toEqual([b.id, inDays(-5)]);
    expect(await grazed(b)).toBeUndefined();
    // A form that was opened before says nothing of the place, and is older now.
    const stale = { ...newHerd({ name: 'Renamed' }), id: undefined, version: herd.version };
    expect(expectProblem(await app.api.put(at).send(stale), 409)).toMatchObject({
      current: { inPaddockId: b.id },
    });
    // What is typed in a form counts as well.
    const { id: _id, ...typed } = newHerd({ inPaddockId: c.id, inSince: inDays(-1) });
    expect((await app.api.put(at).send(typed).expect(200)).body).toMatchObject({
      inPaddockId: c.id,
      inSince: inDays(-1),
    });
    expect(await grazed(b)).toBe(inDays(-2));
    const { id: _b, version: _version, ...paddock } = b;
    const put = (lastGrazedOn: string | undefined) =>
      app.api.put(`${farm.path}/paddocks/${b.id}`).send({ ...paddock, lastGrazedOn });
    await put(inDays(-4)).expect(200); // a correction
    expect(await grazed(b)).toBe(inDays(-4));
    expectFieldProblem(await put(inDays(1)), { field: 'lastGrazedOn', code: 'out-of-bounds' });
    await move(b, inDays(0));
    const { body } = await app.api.get(`${farm.path}/paddocks/${c.id}`);
    expect(body).toMatchObject({ lastGrazedOn: inDays(-1) });
  });

  it('of years ago says when a paddock was grazed; moved back by years, it is no longer of now', async () => {
    const post = async (what: string, { id: _id, ...row }: { id: string }) =>
      ((await app.api.post(`${farm.path}/${what}`).send(row).expect(201)).body as { id: string })
        .id;
    const [old, next] = [
      await post('paddocks', newPaddock({ name: 'Old' })),
      await post('paddocks', newPaddock({ name: 'Next' })),
    ];
    const about = await post('herds', newHerd({ name: 'Steers' }));
    const move = (paddockId: string, on: string) => ({
      ...{ kind: 'herd-move', about, on, details: { paddockId } },
    });
    await tell(move(old, inDays(-1200))).expect(201);
    await tell(move(next, inDays(-1000))).expect(201);
    const { body } = await app.api.get(`${farm.path}/paddocks/${old}`).expect(200);
    expect(body).toMatchObject({ lastGrazedOn: inDays(-1001) });
    const mown = async () => {
      const picture = (await app.api.get(`${farm.path}/picture`).expect(200)).body as FarmPicture;
      return picture.mowings?.filter(({ paddockId }) => paddockId === next);
    };
    const mowing = { kind: 'paddock-mown', about: next, details: {} };
    const { body: first } = await tell({ ...mowing, on: inDays(-3) }).expect(201);
    expect(await mown()).toHaveLength(1);
    const [{ id: replaces }] = first as [ToldFact];
    await tell({ ...mowing, on: inDays(-1090), replaces }).expect(201);
    expect(await mown()).toHaveLength(0);
  });

  it('is in the picture as if all of it were read anew', async () => {
    const [a, , b] = paddocks;
    const key = await saveJob(app, farm.path, 'Fence');
    const work = { key, doneOn: inDays(-1), hours: 2 };
    const ways = [
      () =>
        tell({ kind: 'herd-move', about: herd.id, on: inDays(-2), details: { paddockId: a!.id } }),
      () =>
        tell({ kind: 'herd-move', about: herd.id, on: inDays(0), details: { paddockId: b!.id } }),
      () => tell(reading({ on: inDays(0) })),
      () => tell({ kind: 'paddock-mown', about: a!.id, on: inDays(0), details: {} }),
      () => app.api.put(`${farm.path}/work/progress`).send(work),
      () => app.api.put(`${farm.path}/work/progress`).send({ key: work.key, undo: true }),
      () =>
        tell({
          kind: 'ground-check',
          about: 'ground',
          on: inDays(0),
          details: { isWorkable: true },
        }),
    ];
    const read = async (since = '') => {
      const { body, headers } = await app.api.get(`${farm.path}/picture${since}`).expect(200);
      return { parts: body as Record<string, unknown>, headers };
    };
    const picture = async () => {
      const { farm: _farm, keptPlans: _kept, ...rest } = (await read()).parts;
      return rest;
    };
    for (const way of ways) {
      const before = await read();
      const { status, body } = await way();
      expect({ isTold: status < 300, body }).toMatchObject({ isTold: true });
      // Whoever knows the one before is given what has changed, and has the whole by it.
      const changed = await read(`?since=${before.headers['mark']}`);
      expect(changed.headers['since']).toBe(before.headers['mark']);
      expect(changed.parts).not.toHaveProperty('climate');
      expect({ ...before.parts, ...changed.parts }).toEqual((await read('?since=unknown')).parts);
      const taken = await picture();
      // Somebody comes and goes: that is no telling, so that everything is read.
      const person = await app.api.post(`${farm.path}/people`).send({ name: 'Guest', away: [] });
      const { id } = person.body as { id: string };
      await app.api.delete(`${farm.path}/people/${id}`).expect(204);
      expect(taken).toEqual(await picture());
    }
  });

  it('of birds on a scale corrects the plan of their batch, until it is taken back', async () => {
    const order = batchBody({ brooderId: farm.brooderId, arrivalDate: inDays(-27) });
    const { body } = await app.api.post(`${farm.path}/batches`).send(order).expect(201);
    const { id } = body as { id: string };
    const planned = async () =>
      (await app.api.get(`${farm.path}/batches/${id}/plan`).expect(200)).body as BatchPlan;
    const before = await planned();
    const weighed = (details: object) => ({ kind: 'weighed', about: id, on: inDays(0), details });
    const [fact] = (await tell(weighed({ birds: 10, totalKg: 7 })).expect(201)).body as ToldFact[];
    const after = await planned();
    expect(after.birds.weighed).toMatchObject({
      rows: [{ id: fact!.id, on: inDays(0), birds: 10, average: { value: 0.7 } }],
      speed: { mark: 'own-record' },
    });
    expect(after.leaving!.liveEach.value).toBeLessThan(before.leaving!.liveEach.value);
    expect(after.feed.total.value).toBeLessThan(before.feed.total.value);
    const changed = (await app.api.get(`${farm.path}/record/changed/${fact!.id}`).expect(200))
      .body as { because: string; changes: { id: string; words: string }[] };
    expect(changed.because).toMatch(/^10 birds weighed/);
    expect(changed.changes.map((each) => each.id)).toEqual(
      expect.arrayContaining(['weight', 'feed']),
    );
    await app.api.get(`${farm.path}/record/changed/${farm.brooderId}`).expect(404);
    const wrongs = [
      [{ birds: 10 }, 'details.averageKg', 'missing'],
      [{ birds: 10, averageKg: 1, totalKg: 10 }, 'details.averageKg', 'conflict'],
      [{ birds: 10, totalKg: 0.1 }, 'details.totalKg', 'out-of-bounds'],
      [{ birds: 0, totalKg: 7 }, 'details.birds', 'out-of-bounds'],
      // Pounds typed as kilograms of a chick, or grams as such: no bird of four weeks.
      [{ birds: 10, averageKg: 15 }, 'details.averageKg', 'out-of-bounds'],
      [{ birds: 10, totalKg: 150 }, 'details.totalKg', 'out-of-bounds'],
      [{ birds: 10, averageKg: 0.03 }, 'details.averageKg', 'out-of-bounds'],
    ] as const;
    for (const [details, field, code] of wrongs)
      expectFieldProblem(await tell(weighed(details)), { field: `facts.0.${field}`, code });
    // A bird that cannot weigh so much is not processed at that weight, and chicks sell no eggs.
    const others = [
      ['processed', { birds: 1, liveKg: 66 }, 'details.liveKg'],
      ['processed', { birds: 1, dressedKg: 66 }, 'details.dressedKg'],
      ['eggs-gone', { eggs: 12, how: 'sold' }, 'on'],
    ] as const;
    for (const [kind, of, field] of others)
      expectFieldProblem(await tell({ kind, about: id, on: inDays(0), details: of }), {
        field: `facts.0.${field}`,
        code: 'out-of-bounds',
      });
    // What may be is said as a scale has it.
    const [strange] = (await tell(weighed({ birds: 10, averageKg: 15 }))).body.problems;
    expect(strange).toMatchObject({ unit: 'kg' });
    expect(String(strange.max)).toMatch(/^\d(\.\d)?$/);
    const other = { ...weighed({ birds: 1, totalKg: 1 }), about: paddocks[0]!.id };
    expectFieldProblem(await tell(other), { field: 'facts.0.about', code: 'not-allowed' });
    await app.api.delete(`${farm.path}/told/${fact!.id}`).expect(204);
    expect(await planned()).toEqual(before);
  });

  it('of counted eggs draws what the hens of that batch lay, until it is taken back', async () => {
    const hens = { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' } as const;
    const order = batchBody({ ...hens, wantedBirds: 12, arrivalDate: inDays(-260) });
    const { body } = await app.api.post(`${farm.path}/batches`).send(order).expect(201);
    const { id } = body as { id: string };
    const planned = async () =>
      ((await app.api.get(`${farm.path}/batches/${id}/plan`).expect(200)).body as BatchPlan)
        .laying!;
    const before = await planned();
    expect(before).not.toHaveProperty('counts');
    const counted = (details: object) => ({
      ...{ kind: 'eggs-counted', about: id, on: inDays(-1), details },
    });
    const facts = (await tell(counted({ days: 30, eggs: 30 })).expect(201)).body as ToldFact[];
    const after = await planned();
    expect(after.counts).toMatchObject([{ id: facts[0]!.id, date: inDays(-1), days: 30 }]);
    expect(after.own!.value).toBeLessThan(1);
    expect(after.eggsInYear.value).toBeLessThan(before.eggsInYear.value);
    // Counted again to the same day, it is put right.
    const [again] = (await tell(counted({ days: 30, eggs: 300 })).expect(201)).body as ToldFact[];
    expect((await planned()).counts).toMatchObject([{ id: again!.id, eggs: 300 }]);
    const wrongs = [
      [{ eggs: 30 }, 'details.days', 'missing'],
      [{ days: 0, eggs: 30 }, 'details.days', 'out-of-bounds'],
      [{ days: 7, eggs: -1 }, 'details.eggs', 'out-of-bounds'],
    ] as const;
    for (const [details, field, code] of wrongs)
      expectFieldProblem(await tell(counted(details)), { field: `facts.0.${field}`, code });
    // Pullets of three weeks lay nothing; that there were no eggs is so.
    const young = (eggs: number) => ({ ...counted({ days: 1, eggs }), on: inDays(-239) });
    const tooYoung = { field: 'facts.0.on', code: 'out-of-bounds' } as const;
    expectFieldProblem(await tell(young(3)), tooYoung);
    const [none] = (await tell(young(0)).expect(201)).body as ToldFact[];
    await app.api.delete(`${farm.path}/told/${none!.id}`).expect(204);
    for (const fact of [again!, facts[0]!])
      await app.api.delete(`${farm.path}/told/${fact.id}`).expect(204);
    expect(await planned()).toEqual(before);
  });

  it('of mowing puts the bales into the plan, until it is taken back', async () => {
    const [a] = paddocks;
    const planned = async () =>
      ((await app.api.get(`${farm.path}/pasture/plan`).expect(200)).body as PasturePlan).hay;
    const choices = { hayInStoreKg: 100, hayInStoreOn: inDays(-1) };
    await app.api.put(`${farm.path}/pasture/choices`).send(choices).expect(200);
    const before = await planned();
    expect(before).not.toHaveProperty('baled');
    const on = inDays(0);
    const mown = { kind: 'paddock-mown', about: a!.id, on, details: { bales: 3 } };
    const [fact] = (await tell(mown).expect(201)).body as ToldFact[];
    const after = await planned();
    expect(after.baled!.value).toBeGreaterThan(0);
    expect(after.toBuy.value).toBeCloseTo(before.toBuy.value - after.baled!.value, 0);
    const lying = { ...mown, details: { bales: 3, isLeftLying: true } };
    expectFieldProblem(await tell(lying), { field: 'facts.0.details.bales', code: 'conflict' });
    await app.api.delete(`${farm.path}/told/${fact!.id}`).expect(204);
    expect(await planned()).toEqual(before);
  });

  it('of a paddock that is gone is history', async () => {
    const [, , c] = paddocks;
    await tell(reading({ about: c!.id })).expect(201);
    await app.api.delete(`${farm.path}/paddocks/${c!.id}`).expect(204);
    expect((await readings()).map(({ paddockId }) => paddockId)).not.toContain(c!.id);
    expect((await told(`?kind=grass-reading&about=${c!.id}`)).total).toBe(1);
    await app.api.get(`${farm.path}/pasture/plan`).expect(200);
  });

  it('of a photo keeps it once, gives it as a picture, and goes with its farm', async () => {
    const other = await saveFarm(app);
    const photo = smallJpeg(2000);
    const send = (id: string, body: Buffer, path = farm.path) =>
      app.api.put(`${path}/photos/${id}`).type('image/jpeg').send(body);
    const id = 'photo-of-the-gate';
    const note = (...photos: string[]) =>
      tell({ kind: 'note', about: 'farm', on: inDays(0), details: { text: 'Gate', photos } });
    expectFieldProblem(await note(id), { field: 'facts.0.details.photos.0', code: 'not-allowed' });
    await send(id, photo).expect(204);
    await send(id, photo).expect(204);
    expect(await app.rows('photos', { id })).toHaveLength(1);
    const { revision } = (await app.rows('farms', { id: farm.id }))[0]!;
    const [fact] = (await note(id).expect(201)).body as ToldFact[];
    expect((await app.rows('farms', { id: farm.id }))[0]).toMatchObject({ revision });
    expect((await told('?kind=note')).facts).toMatchObject([{ id: fact!.id }]);
    const given = await app.api.get(`${farm.path}/photos/${id}`).expect(200);
    expect(given.headers).toMatchObject({
      'content-type': 'image/jpeg',
      'x-content-type-options': 'nosniff',
      'cache-control': 'private, max-age=31536000, immutable',
    });
    expect(given.body).toEqual(photo);
    // Words are not needed beside it, but one or the other is.
    const alone = { kind: 'note', about: 'farm', on: inDays(0), details: { photos: [id] } };
    await tell(alone).expect(201);
    const empty = await tell({ ...alone, details: {} });
    expectFieldProblem(empty, { field: 'facts.0.details.text', code: 'missing' });
    // Another one under its id, or another farm's, takes nothing away.
    expectFieldProblem(await send(id, smallJpeg(10)), { field: 'id', code: 'conflict' });
    expectFieldProblem(await send(id, photo, other.path), { field: 'id', code: 'conflict' });
    expectProblem(await app.api.get(`${other.path}/photos/${id}`), 404);
    const unreadable = { field: 'photo', code: 'unreadable' } as const;
    for (const body of [Buffer.from('<svg onload=alert(1)>'), photo.subarray(0, 1000)])
      expectFieldProblem(await send('none', body), unreadable);
    expectFieldProblem(await send('none', Buffer.alloc(0)), { field: 'photo', code: 'missing' });
    expectFieldProblem(await send('none', smallJpeg(2_000_000)), {
      ...{ field: 'photo', code: 'out-of-bounds', given: 2.1, max: 2, unit: 'MB' },
    });
    expectFieldProblem(await send('no.id', photo), { field: 'id', code: 'not-allowed' });
    expectProblem(await send('none', photo, '/api/farms/none'), 404);
    await send('of-other', photo, other.path).expect(204);
    await app.api.delete(other.path).expect(204);
    expect(await app.rows('photos')).toMatchObject([{ id }]);
  });
});
