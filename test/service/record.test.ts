import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { HowItWent } from '../../shared/plan/record/how-it-went.js';
import type { CountedYear } from '../../shared/plan/record/year-limits.js';
import type { TickedToday } from '../../shared/plan/today/today.js';
import { byBreed, type BreedSum } from '../../shared/plan/record/by-breed.js';
import type { LearnedFromBatches } from '../../shared/plan/record/own-batches.js';
import type { YearCounts } from '../../shared/plan/record/year-counts.js';
import type { FactOf, ToldFact } from '../../shared/farm/told-fact.js';
import { TOLD_KINDS } from '../../shared/farm/told-kinds.js';
import type { ToldPage } from '../../src/told/facts-of-farm.js';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { NextYear } from '../../shared/plan/record/next-year.js';
import type { BegunYear } from '../../src/next-year/next-year.service.js';
import { download, uploaded } from '../support/archives.js';
import { newHerd, newPaddock } from '../support/pasture-factories.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { batchBody, inDays, saveFarm, type SavedFarm } from '../support/orders.js';
import { expectFieldProblem, expectProblem } from '../support/problem.js';

const withoutId = <Row extends { id: string }>({ id: _id, ...row }: Row): object => row;
/** Ids are those of the copy: each stands for the place where it is first named. */
function withoutIdsIn(text: string): string {
  const seen = new Map<string, string>();
  return text.replaceAll(/[0-9a-f]{8}-[0-9a-f-]{27}/g, (id) => {
    if (!seen.has(id)) seen.set(id, `id-${seen.size}`);
    return seen.get(id)!;
  });
}

describe.each(databases())('the record on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;
  let batchId: string;

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app);
    const body = batchBody({ name: 'Spring', arrivalDate: inDays(-70), orderedBirds: 50 });
    const saved = await app.api.post(`${farm.path}/batches`).send(body).expect(201);
    batchId = (saved.body as { id: string }).id;
  }, 60_000);
  afterAll(() => app.close());

  const tell = async (kind: string, on: string, details: object, more: object = {}) => {
    const facts = [{ kind, about: batchId, on, details, ...more }];
    const answer = await app.api.post(`${farm.path}/told`).send({ facts }).expect(201);
    return (answer.body as ToldFact[])[0]!;
  };
  /** Hens of last year: chicks sell no eggs. */
  const hens = async (): Promise<string> => {
    const layers = { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' } as const;
    const body = batchBody({ ...layers, name: 'Hens', arrivalDate: inDays(-300) });
    const saved = await app.api.post(`${farm.path}/batches`).send(body).expect(201);
    return (saved.body as { id: string }).id;
  };
  const get = async <T>(path: string): Promise<T> =>
    (await app.api.get(`${farm.path}/record/${path}`).expect(200)).body as T;
  const actual = ({ lines }: HowItWent, id: string) => lines.find((l) => l.id === id)?.actual;

  it('is right to the bird and the cent once the last bird is gone', async () => {
    await tell('arrived', inDays(-70), { birds: 52, dead: 2 });
    const died = await tell('died', inDays(-60), { birds: 7 });
    await tell('died', inDays(-60), { birds: 4 }, { replaces: died.id });
    await tell(
      'bought',
      inDays(-70),
      { what: 'feed', amount: 20, eachKg: 20, money: '320.01' },
      {
        about: 'farm',
      },
    );
    await tell('feed-opened', inDays(-69), { bags: 20, bagKg: 20 });
    await tell('gone', inDays(-20), { birds: 6, how: 'sold', money: '60.10' });
    const before = await get<HowItWent>(`batches/${batchId}`);
    expect(before.isOver).toBe(false);
    await tell('processed', inDays(-14), { birds: 40, liveKg: 100, dressedKg: 72, packs: 40 });
    const went = await get<HowItWent>(`batches/${batchId}`);
    expect(went).toMatchObject({ isOver: true, upTo: inDays(-14), name: 'Spring' });
    expect(actual(went, 'lost')).toBe(4);
    expect(actual(went, 'processed')).toBe(40);
    expect(actual(went, 'conversion')).toBeCloseTo(4, 9);
    expect(actual(went, 'feed-cost')).toBe(32001);
    // Another purchase is at once in what a bag cost, and out again with its undo.
    const more = { what: 'feed', amount: 20, eachKg: 20, money: '320.03' };
    const { id } = await tell('bought', inDays(-50), more, { about: 'farm' });
    expect(actual(await get(`batches/${batchId}`), 'feed-cost')).toBe(32002);
    await app.api.delete(`${farm.path}/told/${id}`).expect(204);
    expect(actual(await get(`batches/${batchId}`), 'feed-cost')).toBe(32001);
    // Planned is what was planned before anything was told: telling does not move it.
    const plannedOf = ({ lines }: HowItWent) =>
      lines.filter(({ id }) => id === 'came' || id === 'processed').map(({ planned }) => planned);
    expect(plannedOf(went)).toEqual(plannedOf(before));
    expect(await get<HowItWent[]>('batches')).toEqual([went]);
    expect(await get<BreedSum[]>('breeds')).toEqual(byBreed([went]));
  });

  it('counts the calendar years in which it happened', async () => {
    const years = [...new Set([-70, -60, -20, -14].map((days) => inDays(days).slice(0, 4)))];
    const counts = await Promise.all(years.map((year) => get<YearCounts>(`years/${year}`)));
    const sum = (of: (each: YearCounts) => number) =>
      counts.reduce((all, each) => all + of(each), 0);
    expect(sum(({ birds }) => birds.processed)).toBe(40);
    expect(sum(({ birds }) => birds.died)).toBe(4);
    expect(sum(({ birds }) => birds.sold)).toBe(6);
    expect(sum(({ money }) => money.taken)).toBe(6010);
    expect(sum(({ money }) => money.spent)).toBe(32001);
  });

  it('says what to plan another batch of the same birds with, and nothing of others', async () => {
    const { body: of } = await app.api.get(`${farm.path}/batches/${batchId}`).expect(200);
    const { strainId, purpose } = of as { strainId: string; purpose: string };
    const learned = (asked: string) => app.api.get(`${farm.path}/record/learned?${asked}`);
    const { body } = await learned(`purpose=${purpose}&strainId=${strainId}`).expect(200);
    const { values, words } = body as LearnedFromBatches;
    expect(values.laterLossPercent).toBeGreaterThan(0);
    expect(words[0]).toMatch(/^0 of 50 were lost in the first week \(one batch\): planned with/);
    expect((await learned('purpose=layers&strainId=brown-layer').expect(200)).body).toEqual({
      ...{ values: {}, words: [] },
    });
    expectFieldProblem(await learned('purpose=meat&strainId=ostrich'), {
      ...{ field: 'strainId', code: 'not-allowed', given: 'ostrich' },
    });
  });

  it('holds the year against the limits of the place, and says so on the day', async () => {
    const year = inDays(0).slice(0, 4);
    const { body } = await app.api.get(farm.path).expect(200);
    const { id: _id, isSample: _s, revision: _r, ...typed } = body as Record<string, unknown>;
    const put = (yearLimits: object) => app.api.put(farm.path).send({ ...typed, yearLimits });
    expectFieldProblem(await put({ eggsSold: -1 }), {
      field: 'yearLimits.eggsSold',
      code: 'out-of-bounds',
      given: -1,
    });
    await put({ birdsProcessed: 10_000, eggsSold: 10 }).expect(200);
    const about = await hens();
    await tell('eggs-gone', inDays(0), { eggs: 11, how: 'sold' }, { about });
    const { limits } = await get<CountedYear>(`years/${year}`);
    expect(limits.map(({ of, limit }) => [of, limit])).toEqual([
      ['birdsProcessed', 10_000],
      ['eggsSold', 10],
    ]);
    const day = (await app.api.get(`${farm.path}/today`).expect(200)).body as TickedToday;
    const alarm = day.attention.find(({ key }) => key.startsWith('alarm/limit/eggsSold'));
    expect(alarm).toMatchObject({ level: 'stop', words: 'eggs sold: 11 of 10' });
    // Whoever looks into a calendar only is told as well, until it was seen.
    const calendar = async () => {
      const { text } = await app.api.get(`${farm.path}/calendar.ics`).expect(200);
      return text.replaceAll('\r\n ', '');
    };
    expect(await calendar()).toContain('eggs sold: 11 of 10');
    await tell('alarm-seen', inDays(0), {}, { about: alarm!.key });
    expect(await calendar()).not.toContain('eggs sold: 11 of 10');
    const later = (await app.api.get(`${farm.path}/today`).expect(200)).body as TickedToday;
    expect(later.attention.filter(({ key }) => key.startsWith('alarm/limit'))).toEqual([]);
    const given = { product: 'Of the label', meatDays: 5, eggDays: 5 };
    await tell('treated', inDays(0), given, { about });
    const treated = (await app.api.get(`${farm.path}/today`).expect(200)).body as TickedToday;
    const went = treated.attention.filter(({ key }) => key.startsWith('alarm/medicine/eggs-went'));
    expect(went).toMatchObject([{ words: '11 eggs sold while a medicine ran' }]);
  });

  it.each([
    ['facilities', { kind: 'coop', name: 'East', floorM2: 6, roostM: 5, nestBoxes: 4, runM2: 40 }],
    ['products', { kind: 'bedding', name: 'Bales', price: '7.50' }],
    [
      'jobs',
      {
        ...{ name: 'Mend the gate', hours: 2, dueOn: inDays(9), priority: 'must' },
        ...{ conditions: {}, canBeSpread: false },
      },
    ],
    ['paddocks', withoutId({ ...newPaddock({ name: 'Creek' }), id: 'x' })],
    ['herds', withoutId({ ...newHerd(), id: 'x' })],
  ])(
    'has of %s what they were before, by whom they were changed and deleted',
    async (rows, row) => {
      const at = `${farm.path}/${rows}`;
      const { body } = await app.api.post(at).send(row).expect(201);
      const { id } = body as { id: string };
      const by = { 'said-by': encodeURIComponent('Zoë') };
      const other = { ...row, name: 'Other' };
      await app.api.put(`${at}/${id}`).set(by).send(other).expect(200);
      await app.api.delete(`${at}/${id}`).set(by).expect(204);
      const { facts } = (await app.api.get(`${farm.path}/told?about=${id}`)).body as ToldPage;
      const [gone, changed, ...more] = facts.filter(({ kind }) => kind === 'row-changed');
      expect(more).toEqual([]);
      const { name } = row as { name: string };
      expect(changed).toMatchObject({
        saidBy: 'Zoë',
        details: { how: 'changed', fields: [{ field: 'name', before: name, after: 'Other' }] },
      });
      expect(gone).toMatchObject({ saidBy: 'Zoë', details: { how: 'deleted', name: 'Other' } });
      const { fields } = (gone as FactOf<'row-changed'>).details;
      expect(Object.fromEntries(fields!.map(({ field, before }) => [field, before]))).toMatchObject(
        {
          ...row,
          name: 'Other',
        },
      );
    },
  );

  it('begins another year from one: those that are named, all of them or none', async () => {
    const year = Number(inDays(-70).slice(0, 4));
    const { body: other } = await app.api
      .post(`${farm.path}/jobs`)
      .send({
        ...{ name: 'Clean the pens', hours: 2, dueOn: inDays(-70), priority: 'must' },
        ...{ conditions: {}, canBeSpread: false },
      })
      .expect(201);
    const jobId = (other as { id: string }).id;
    // Done long ago it rests, and is no longer among what is planned; it comes again all the same.
    await tell('work-progress', inDays(-69), { doneOn: inDays(-69) }, { about: `own/${jobId}` });
    const next = (await app.api.get(`${farm.path}/next-year/${year}`).expect(200)).body as NextYear;
    expect(next.jobs.map(({ ofId }) => ofId)).toContain(jobId);
    const of = next.batches.find(({ ofId }) => ofId === batchId)!;
    expect(of.next.arrivalDate).toBe(addDays(inDays(-70), 364));
    const begin = (batchIds: string[], jobIds: string[]) =>
      app.api.post(`${farm.path}/next-year`).send({ year, batchIds, jobIds });
    const before = (await app.api.get(`${farm.path}/batches`)).body as object[];
    expectFieldProblem(await begin([batchId], [jobId, 'not-there']), {
      field: 'jobIds.1',
      code: 'not-allowed',
      given: 'not-there',
    });
    expect((await app.api.get(`${farm.path}/batches`)).body).toEqual(before);
    const made = (await begin([batchId], [jobId]).expect(201)).body as BegunYear;
    expect(made.batches).toMatchObject([of.next]);
    expect(made.jobs).toMatchObject([{ dueOn: addDays(inDays(-70), 364) }]);
    const again = (await app.api.get(`${farm.path}/next-year/${year}`)).body as NextYear;
    expect(again.batches.find(({ ofId }) => ofId === batchId)!.isThere).toBe(of.next.name);
    const takeOut = (begun: object) => app.api.post(`${farm.path}/next-year/take-out`).send(begun);
    // What somebody changed since stays and is named; all else goes, and a second press finds nothing.
    const [job] = made.jobs;
    await app.api
      .put(`${farm.path}/jobs/${job!.id}`)
      .send({ ...job, name: 'Fence anew' })
      .expect(200);
    const begun = { batchIds: made.batches.map(({ id }) => id), jobIds: [job!.id] };
    expect((await takeOut(begun).expect(201)).body).toEqual({ kept: ['Fence anew'] });
    expect((await app.api.get(`${farm.path}/batches`)).body).toEqual(before);
    await app.api.delete(`${farm.path}/jobs/${job!.id}`).expect(204);
    expect((await takeOut(begun).expect(201)).body).toEqual({ kept: [] });
  });

  it('keeps of a year that is taken out what was told of, and what a job that stays waits for', async () => {
    const year = Number(inDays(-70).slice(0, 4));
    const job = async (name: string, more: object = {}): Promise<string> => {
      const row = {
        ...{ name, hours: 2, dueOn: inDays(-70), priority: 'must' },
        ...{ conditions: {}, canBeSpread: false, ...more },
      };
      return (
        (await app.api.post(`${farm.path}/jobs`).send(row).expect(201)).body as { id: string }
      ).id;
    };
    const first = await job('Dig the holes');
    const then = await job('Set the posts', { waitsForId: first });
    const alone = await job('Oil the mower');
    const ticked = await job('Mend the roof');
    const made = (
      await app.api
        .post(`${farm.path}/next-year`)
        .send({ year, batchIds: [batchId], jobIds: [first, then, alone, ticked] })
        .expect(201)
    ).body as BegunYear;
    const ids = new Map(made.jobs.map(({ name, id }) => [name, id]));
    const posts = made.jobs.find(({ name }) => name === 'Set the posts')!;
    const at = `${farm.path}/jobs/${posts.id}`;
    const changed = (
      await app.api
        .put(at)
        .send({ ...posts, hours: 3 })
        .expect(200)
    ).body as object;
    await tell(
      'work-progress',
      inDays(0),
      { hours: 1, reckonedHours: 1 },
      { about: `own/${ids.get('Mend the roof')}` },
    );
    const [batch] = made.batches;
    await tell('note', inDays(0), { text: 'Ordered by phone.' }, { about: batch!.id });
    const begun = { batchIds: [batch!.id], jobIds: made.jobs.map(({ id }) => id) };
    const { body } = await app.api.post(`${farm.path}/next-year/take-out`).send(begun).expect(201);
    expect((body as { kept: string[] }).kept.toSorted()).toEqual(
      [batch!.name, 'Dig the holes', 'Mend the roof', 'Set the posts'].toSorted(),
    );
    // The one that stays can be saved on, as what it waits for is there.
    await app.api
      .put(at)
      .send({ ...changed, hours: 4 })
      .expect(200);
    for (const id of [...ids.values(), first, then, alone, ticked])
      await app.api.delete(`${farm.path}/jobs/${id}`);
    await app.api.delete(`${farm.path}/batches/${batch!.id}`).expect(204);
  });

  it('begins another year with the calvings of cattle that stay, a year later', async () => {
    const year = Number(inDays(-70).slice(0, 4));
    const calvesOn = inDays(-70);
    const beef = { classId: 'dry-cow', head: 4, calvesOn };
    const post = async (path: string, body: object): Promise<string> =>
      ((await app.api.post(`${farm.path}/${path}`).send(body).expect(201)).body as { id: string })
        .id;
    const herdId = await post('herds', { name: 'Cows', groups: [beef] });
    const daisy = { name: 'Daisy', herdId, classId: 'dry-cow', calvesOn };
    const cowId = await post('cows', daisy);
    const asked = { year, batchIds: [], jobIds: [], herdIds: [herdId] };
    const get = async (path: string): Promise<unknown> =>
      (await app.api.get(`${farm.path}/${path}`).expect(200)).body;
    const made = (await app.api.post(`${farm.path}/next-year`).send(asked).expect(201))
      .body as BegunYear;
    expect(await get(`herds/${herdId}`)).toMatchObject({
      groups: [{ ...beef, calvesOn: addDays(calvesOn, 365) }],
    });
    expect(await get(`cows/${cowId}`)).toMatchObject({ calvesOn: addDays(calvesOn, 365) });
    // Taken out again, herd and cow are as they were.
    const begun = {
      ...{ batchIds: [], jobIds: [] },
      herds: [{ id: herdId, version: made.herds[0]!.version, groups: [beef] }],
      cows: [{ id: cowId, version: made.cows[0]!.version, calvesOn }],
    };
    const answer = await app.api.post(`${farm.path}/next-year/take-out`).send(begun).expect(201);
    expect(answer.body).toEqual({ kept: [] });
    expect(await get(`herds/${herdId}`)).toMatchObject({ groups: [beef] });
    expect(await get(`cows/${cowId}`)).toMatchObject({ calvesOn });
    await app.api.delete(`${farm.path}/herds/${herdId}`).expect(204);
  });

  it('moves what was changed to another year out of the year it had been told of', async () => {
    const about = 'farm';
    const wrong = await tell(
      'bought',
      '2020-05-01',
      { what: 'hay', amount: 1, money: '9' },
      { about },
    );
    expect((await get<YearCounts>('years/2020')).money.spent).toBe(900);
    const details = { what: 'hay', amount: 1, money: '9' };
    await tell('bought', '2021-05-01', details, { about, replaces: wrong.id });
    expect((await get<YearCounts>('years/2020')).money.spent).toBe(0);
    expect((await get<YearCounts>('years/2021')).money.spent).toBe(900);
  });

  it('is the same when the farm is read back from its file', async () => {
    const { body: paddock } = await app.api
      .post(`${farm.path}/paddocks`)
      .send(withoutId(newPaddock()))
      .expect(201);
    const { body: herd } = await app.api
      .post(`${farm.path}/herds`)
      .send(withoutId(newHerd()))
      .expect(201);
    const [paddockId, herdId] = [paddock, herd].map((row) => (row as { id: string }).id);
    const more: Record<string, [string, object]> = {
      weighed: [batchId, { birds: 5, totalKg: 11 }],
      'water-drunk': [batchId, { liters: 9 }],
      'brooder-seen': [batchId, { underHeatC: 33, besideC: 26 }],
      'heat-works': [batchId, { working: 2, of: 7 }],
      'eggs-counted': [batchId, { days: 1, eggs: 0 }],
      'eggs-gone': [await hens(), { eggs: 12, how: 'sold', money: '4.10' }],
      rained: ['ground', { mm: 6 }],
      calved: [herdId!, { calves: 1 }],
      milked: [herdId!, { liters: 8, keptOutL: 8 }],
      treated: [herdId!, { product: 'Of the label', meatDays: 21, milkDays: 4 }],
      'cattle-left': [herdId!, { how: 'died', head: 1 }],
      note: [batchId, { text: 'Shut the north door.' }],
      'grass-reading': [paddockId!, { heightCm: 14 }],
      'paddock-mown': [paddockId!, { isLeftLying: true }],
      'ground-check': ['ground', { isWorkable: true }],
      'herd-move': [herdId!, { paddockId }],
      'work-progress': [
        `batch/${batchId}/meat.weigh-a-sample-and-compare-with`,
        { doneOn: inDays(-40), hours: 1.5 },
      ],
      'chore-done': [`herd/${herdId}/round`, {}],
      'alarm-seen': ['alarm/losses', {}],
    };
    for (const [kind, [about, details]] of Object.entries(more))
      await tell(kind, inDays(-30), details, { about });
    const closedDays = [{ from: inDays(1), to: inDays(9), why: 'hay' }];
    const shut = { ...withoutId(newPaddock()), closedDays };
    await app.api.put(`${farm.path}/paddocks/${paddockId}`).send(shut).expect(200);
    const { facts } = (await app.api.get(`${farm.path}/told?history=true`)).body as ToldPage;
    expect([...new Set(facts.map(({ kind }) => kind))].sort()).toEqual(
      Object.keys(TOLD_KINDS).sort(),
    );
    const copyId = await uploaded(app, await download(app, farm.id));
    const copy = { ...farm, id: copyId, path: `/api/farms/${copyId}` };
    const yearOf = inDays(-30).slice(0, 4);
    for (const path of ['told?history=true', 'record/batches', `record/years/${yearOf}`]) {
      const [one, other] = await Promise.all(
        [farm, copy].map((of) => app.api.get(`${of.path}/${path}`).expect(200)),
      );
      expect(withoutIdsIn(other!.text)).toBe(withoutIdsIn(one!.text));
    }
  });

  it('refuses what is no year, and knows no batch that is not there', async () => {
    for (const given of ['27', '2027x', '0000', '99999'])
      expectFieldProblem(await app.api.get(`${farm.path}/record/years/${given}`), {
        field: 'year',
        code: 'out-of-bounds',
        given,
      });
    expectProblem(await app.api.get(`${farm.path}/record/batches/none`), 404);
  });
});
