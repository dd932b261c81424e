import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { addDays, plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { OwnJob, Progress } from '../../shared/farm/job.js';
import type { Saved } from '../../shared/farm/saved.js';
import type { WorkComparison } from '../../shared/plan/work/compare-plans.js';
import type { WorkOutlook } from '../../shared/plan/work/work-outlook.js';
import type { WorkPlan } from '../../shared/plan/work/planned-work.js';
import { openApp, type TestApp } from '../support/app.js';
import { dailyCsv, syntheticDays } from '../support/daily-weather.js';
import { anyDatabase } from '../support/databases.js';
import { expectProblem } from '../support/problem.js';
import { service } from '../support/outside.js';

const { KeptPlanEntity } = service;

describe.each([anyDatabase()])('looking further at the work on $name', (database) => {
  let app: TestApp;
  let path: string;
  let id: string;
  let today: string;

  beforeAll(async () => {
    app = await openApp(database);
    const { body } = await app.api.post('/api/farms/sample').expect(201);
    ({ id } = body as { id: string });
    path = `/api/farms/${id}`;
    today = plainDateAt(Date.now(), (body as { timeZone: string }).timeZone);
  });
  afterAll(() => app.close());

  const plan = async (): Promise<WorkPlan> =>
    (await app.api.get(`${path}/work`).expect(200)).body as WorkPlan;
  const save = async (more: object = {}): Promise<OwnJob> =>
    (
      await app.api
        .post(`${path}/jobs`)
        .send({
          name: 'Dig the long bed',
          hours: 1,
          dueOn: addDays(today, 20),
          priority: 'should',
          conditions: {},
          canBeSpread: true,
          ...more,
        })
        .expect(201)
    ).body as OwnJob;
  const remove = (job: OwnJob) => app.api.delete(`${path}/jobs/${job.id}`).expect(204);

  it('keeps its plan, and says on a later day what changed and why', async () => {
    const job = await save({ notBefore: addDays(today, 1) });
    expect((await plan()).changes).toBeUndefined();
    // A day goes by: what was planned today is now yesterday's plan.
    const rows = app.source.getRepository(KeptPlanEntity);
    const [kept] = await rows.findBy({ farmId: id });
    expect(kept!.plannedOn).toBe(today);
    await rows.update({ farmId: id }, { plannedOn: addDays(today, -1) });
    await app.api
      .put(`${path}/work/progress`)
      .send({ key: `own/${job.id}`, notBefore: addDays(today, 5) })
      .expect(200);
    const { changes } = await plan();
    expect(changes!.since).toBe(addDays(today, -1));
    expect(changes!.list).toContainEqual(
      expect.objectContaining({
        key: `own/${job.id}`,
        kind: 'moved',
        to: addDays(today, 5),
        why: expect.stringMatching(/^You put it off to /),
      }),
    );
    expect(await rows.countBy({ farmId: id })).toBe(2);
    // Two days later only the newest of the former days is kept beside that day's own.
    await rows.update({ farmId: id, plannedOn: addDays(today, -1) }, { plannedOn: '2020-01-01' });
    await rows.update({ farmId: id, plannedOn: today }, { plannedOn: addDays(today, -1) });
    await remove(job);
    await plan();
    expect((await rows.findBy({ farmId: id })).map(({ plannedOn }) => plannedOn).sort()).toEqual([
      addDays(today, -1),
      today,
    ]);
  });

  it('keeps what work took with what it was reckoned at, and reckons with it the next time', async () => {
    const before = (await plan()).jobs.find(({ kind }) => kind === 'batch/meat.set-batch-size')!;
    const { body } = await app.api
      .put(`${path}/work/progress`)
      .send({ key: before.key, doneOn: today, hours: 4 * before.hours })
      .expect(200);
    expect(body as Progress).toMatchObject({
      kind: before.kind,
      reckonedHours: before.hours,
      hours: 4 * before.hours,
    });
    const batches = (await app.api.get(`${path}/batches`).expect(200)).body as object[];
    const meat = batches.find((each) => (each as { purpose: string }).purpose === 'meat')!;
    const { id: _id, ...another } = meat as { id: string; arrivalDate: string };
    const { body: second } = await app.api
      .post(`${path}/batches`)
      .send({ ...another, name: 'Second', arrivalDate: addDays(another.arrivalDate, 42) })
      .expect(201);
    const again = (await plan()).jobs.find(
      ({ kind, belongsTo }) => kind === before.kind && belongsTo?.name === 'Second',
    )!;
    expect(again.learned).toMatchObject({ times: 1 });
    expect(again.hours).toBeCloseTo(2 * again.learned!.reckonedHours, 6); // √4: half of the way
    await app.api.delete(`${path}/batches/${(second as { id: string }).id}`).expect(204);
    await app.api.put(`${path}/work/progress`).send({ key: before.key }).expect(200);
  });

  it('keeps what is done of a piece of work until it is opened again', async () => {
    const job = await save({ hours: 6 });
    const key = `own/${job.id}`;
    const mark = (body: object) =>
      app.api
        .put(`${path}/work/progress`)
        .send({ key, ...body })
        .expect(200);
    const planned = async () => (await plan()).jobs.find((each) => each.key === key);
    await mark({ hoursDone: 2.5 });
    expect(await planned()).toMatchObject({ hours: 3.5, hoursDone: 2.5 });
    await mark({ doneOn: today });
    expect((await plan()).done).toContainEqual(
      expect.objectContaining({ key, name: job.name, on: today }),
    );
    await mark({ hours: 5 });
    await mark({ undo: true });
    expect(await planned()).toMatchObject({ hours: 3.5, hoursDone: 2.5 });
    await mark({ struckOut: true, because: 'The shed is let' });
    expect(await planned()).toBeUndefined();
    expect((await plan()).struckOut).toEqual([{ key, name: job.name, because: 'The shed is let' }]);
    await mark({ undo: true });
    expect(await planned()).toMatchObject({ hours: 3.5, hoursDone: 2.5 });
    await mark({});
    expect(await planned()).toMatchObject({ hours: 6, hoursDone: 0 });
    await remove(job);
  });

  it('takes a look at the ground, and forgets it', async () => {
    const look = (isWorkable?: boolean) =>
      app.api.put(`${path}/work/ground`).send({ date: today, isWorkable }).expect(200);
    for (const isWorkable of [true, false]) {
      await look(isWorkable);
      const { groundToday, weather } = await plan();
      expect(groundToday).toBe(isWorkable);
      expect(weather.isWorkable[0]).toBe(isWorkable ? 1 : 0);
    }
    await look();
    expect((await plan()).groundToday).toBeUndefined();
    expectProblem(
      await app.api.put(`${path}/work/ground`).send({ date: addDays(today, 1), isWorkable: true }),
      400,
    );
  });

  // What the core works out of a picture does not hang on where that was kept.
  if (database.name === 'SQLite')
    it('gives chances from monthly means, and from the daily record once there is one', async () => {
      const drawn = (await app.api.get(`${path}/work/outlook`).expect(200)).body as WorkOutlook;
      expect(drawn).toMatchObject({ isMeasured: false, years: 300 });
      expect(drawn.frost).toHaveLength(3);
      const { body } = await app.api.get(`${path}/work/outlook/progress`).expect(200);
      expect(body).toEqual({ played: 1 });
      const year = Number(today.slice(0, 4));
      const days = syntheticDays(`${year - 14}-01-01`, `${year - 1}-12-31`);
      await app.api
        .put(`${path}/weather/csv`)
        .set('content-type', 'text/csv')
        .send(dailyCsv(days))
        .expect(200);
      const measured = (await app.api.get(`${path}/work/outlook`).expect(200)).body as WorkOutlook;
      expect(measured).toMatchObject({ isMeasured: true, hasRain: false });
      expect(measured.years).toBeGreaterThanOrEqual(12);
      await app.api.delete(`${path}/weather/csv`).expect(200);
    });

  describe('a forecast', () => {
    const type = (days: object[]) => app.api.put(`${path}/weather/forecast`).send({ days });
    const day = (k: number, more: object = {}) => ({
      date: addDays(today, k),
      minC: 3,
      maxC: 11,
      rainMm: 4,
      ...more,
    });

    it('is typed with a gap, which keeps its usual weather', async () => {
      expect((await type([day(0), day(1), day(3)]).expect(200)).body).toMatchObject({
        forecastDays: 3,
      });
      const { weather } = await plan();
      expect(weather.isForecast.slice(0, 5)).toEqual([1, 1, 0, 1, 0]);
      expect(weather.rainMm.slice(0, 2)).toEqual([4, 4]);
      expect([weather.minC[3], weather.maxC[3]]).toEqual([3, 11]);
    });

    it('is read from a file with the columns of daily history', async () => {
      const lines = [0, 1].map((k) => `${addDays(today, k)},32,50,0.5`);
      const csv = ['date,tmin_f,tmax_f,prcp_in', ...lines].join('\n');
      const put = (text: string) =>
        app.api.put(`${path}/weather/forecast`).set('content-type', 'text/csv').send(text);
      await put(csv).expect(200);
      const { weather } = await plan();
      expect([weather.minC[0], weather.maxC[0], weather.rainMm[0]]).toEqual([0, 10, 12.7]);
      const { problems } = expectProblem(await put(csv.replaceAll(today, '2020-01-01')), 400);
      expect(problems![0]!.field).toBe('csv.row2.date');
    });

    it('is refused with a day that is past, comes twice, or is colder by day than by night', async () => {
      const before = await app.contents();
      const fields = async (days: object[]): Promise<string[]> =>
        expectProblem(await type(days), 400).problems!.map(({ field }) => field);
      expect(await fields([day(-1)])).toEqual(['days.0.date']);
      expect(await fields([day(40)])).toEqual(['days.0.date']);
      expect(await fields([day(1), day(1)])).toEqual(['days.1.date']);
      expect(await fields([day(1, { minC: 20 })])).toEqual(['days.0.minC']);
      expect(await fields([day(1, { maxC: 200 })])).toEqual(['days.0.maxC']);
      expect(await app.contents()).toBe(before);
    });

    it('is forgotten by an empty list', async () => {
      await type([]).expect(200);
      expect((await plan()).weather.forecastDays).toBe(0);
    });
  });

  if (database.name === 'SQLite')
    it('says what follows when everybody falls ill today, and changes nothing', async () => {
      const { id } = (await app.api.post('/api/farms/sample').expect(201)).body as { id: string };
      const path = `/api/farms/${id}`;
      const people = (await app.api.get(`${path}/people`).expect(200)).body as { id: string }[];
      const { today } = (await app.api.get(`${path}/picture`).expect(200)).body as {
        today: string;
      };
      const before = await app.contents();
      const to = addDays(today, 2);
      const ask = (awayIds: readonly string[], until = to) =>
        app.api.post(`${path}/work/if-away`).send({ awayIds, to: until });
      const all = (await ask(people.map((each) => each.id)).expect(200)).body as WorkComparison;
      expect(all.newGaps.find(({ kind }) => kind === 'nobody-there')).toMatchObject({
        ...{ from: today, to },
      });
      const one = (await ask([people[0]!.id]).expect(200)).body as WorkComparison;
      expect(one.newGaps.filter(({ kind }) => kind === 'nobody-there')).toEqual([]);
      expect(await app.contents()).toBe(before);
      const field = async (awayIds: readonly string[], until?: string): Promise<string> =>
        expectProblem(await ask(awayIds, until), 400).problems![0]!.field;
      expect(await field([])).toBe('awayIds');
      expect(await field(['ghost'])).toBe('awayIds.0');
      expect(await field([people[0]!.id], addDays(today, -1))).toBe('to');
    });

  if (database.name === 'SQLite')
    it('says what an arrival a week later would do, and changes nothing by it', async () => {
      const batches = (await app.api.get(`${path}/batches`).expect(200)).body as {
        id: string;
        arrivalDate: string;
      }[];
      const [batch] = batches
        .filter(({ arrivalDate: on }) => today < on)
        .sort((a, b) => (a.arrivalDate < b.arrivalDate ? -1 : 1));
      const before = await app.contents();
      const arrivalDate = addDays(batch!.arrivalDate, 7);
      const answer = (
        await app.api
          .post(`${path}/work/if-arrival-moves`)
          .send({ batchId: batch!.id, arrivalDate })
          .expect(200)
      ).body as WorkComparison;
      expect(answer.changes.length).toBeGreaterThan(5);
      expect(
        answer.plan.events.find(({ id: event }) => event === `event/${batch!.id}/arrival`),
      ).toEqual(expect.objectContaining({ date: arrivalDate }));
      expect(await app.contents()).toBe(before);
      const field = async (body: object): Promise<string> =>
        expectProblem(await app.api.post(`${path}/work/if-arrival-moves`).send(body), 400)
          .problems![0]!.field;
      expect(await field({ batchId: 'ghost', arrivalDate })).toBe('batchId');
      const other = { batchId: batch!.id };
      expect(await field({ ...other, arrivalDate: '2020-01-01' })).toBe('arrivalDate');
      expect(await field({ ...other, arrivalDate: addDays(today, 900) })).toBe('arrivalDate');
    });

  it('moves own work along when the arrival that it hangs on moves', async () => {
    const event = (await plan()).events.find(({ id: each }) => each.endsWith('/arrival'))!;
    const batchId = event.id.split('/')[1]!;
    const job = await save({
      notBefore: addDays(event.date, -5),
      dueOn: addDays(event.date, -1),
      tiedTo: { eventId: event.id, on: event.date },
    });
    const { body } = await app.api.get(`${path}/batches/${batchId}`).expect(200);
    const { id: _id, version: _version, ...batch } = body as Saved<Batch>;
    const put = (arrivalDate: string) =>
      app.api
        .put(`${path}/batches/${batchId}`)
        .send({ ...batch, arrivalDate })
        .expect(200);
    await put(addDays(event.date, 7));
    const moved = (await plan()).jobs.find(({ key }) => key === `own/${job.id}`)!;
    expect(moved.latest).toBe(addDays(event.date, 6));
    await put(event.date);
    await remove(job);
  });

  describe('a ready-made set', () => {
    const take = (setId: string, more: object = {}) =>
      app.api
        .post(`${path}/jobs/sets/${setId}`)
        .send({ anchorOn: addDays(today, 60), count: 2, ...more });

    it('is taken whole, refused a second time, and left whole', async () => {
      const jobs = (await take('berries').expect(201)).body as OwnJob[];
      expect(jobs.length).toBeGreaterThan(1);
      expect(jobs.every(({ setId }) => setId === 'berries')).toBe(true);
      const ids = new Set(jobs.map(({ id: own }) => own));
      const waits = jobs.flatMap(({ waitsForId }) => waitsForId ?? []);
      expect(waits).not.toEqual([]);
      expect(waits.filter((waited) => !ids.has(waited))).toEqual([]);
      expect((await plan()).jobs.some(({ key }) => key === `own/${jobs[0]!.id}`)).toBe(true);
      const before = await app.contents();
      const { problems } = expectProblem(await take('berries'), 400);
      expect(problems![0]).toMatchObject({ field: 'setId', code: 'conflict' });
      expect(await app.contents()).toBe(before);
      await app.api.delete(`${path}/jobs/sets/berries`).expect(204);
      const left = (await app.api.get(`${path}/jobs`).expect(200)).body as OwnJob[];
      expect(left.some(({ setId }) => setId === 'berries')).toBe(false);
    });

    it('is refused when all of it is past, when it is unknown, and in a wrong number', async () => {
      expectProblem(await take('berries', { anchorOn: '2020-04-01' }), 400);
      expectProblem(await take('berries', { count: -1 }), 400);
      expectProblem(await take('cathedral'), 404);
      expectProblem(await app.api.delete(`${path}/jobs/sets/cathedral`), 404);
    });
  });
});
