import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import { addDays, plainDateAt } from '../../shared/calendar/plain-date.js';
import type { KeptJob } from '../../shared/farm/resting-jobs.js';
import type { Saved } from '../../shared/farm/saved.js';
import type { PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import type { WorkPlan } from '../../shared/plan/work/planned-work.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase, databases } from '../support/databases.js';
import { ServiceDate } from '../support/outside.js';
import { batchBody } from '../support/orders.js';
import { expectFieldProblem, expectProblem } from '../support/problem.js';
import { newOwnJob } from '../support/season-factories.js';

type Row = Saved<{ readonly name: string }>;

const NOW = Date.now();
const today = plainDateAt(NOW, 'America/New_York');

/** The date of the service stands still from then on. */
const setYears = (years: number): void => {
  jest.spyOn(ServiceDate, 'now').mockReturnValue(NOW + years * 365.25 * 24 * 3600 * 1000);
};

describe.each([anyDatabase()])('years later on $name', (database) => {
  let app: TestApp;
  let path: string;

  const get = async <T>(what: string): Promise<T> =>
    (await app.api.get(`${path}${what}`).expect(200)).body as T;
  const post = async <T>(what: string, body: object): Promise<T> =>
    (await app.api.post(`${path}${what}`).send(body).expect(201)).body as T;

  beforeAll(async () => {
    app = await openApp(database);
    const { body } = await app.api.post('/api/farms/sample').expect(201);
    path = `/api/farms/${(body as { id: string }).id}`;
    const [paddocks, herds, people] = await Promise.all([
      get<Row[]>('/paddocks'),
      get<Row[]>('/herds'),
      get<Row[]>('/people'),
    ]);
    const { id: _id, ...job } = newOwnJob({
      dueOn: addDays(today, 5),
      tiedTo: { eventId: 'event/gone/arrival', on: today },
    });
    const done = await post<Row>('/jobs', { ...job, name: 'Done' });
    await post('/jobs', { ...job, name: 'Lost', noUseAfter: addDays(today, 9) });
    await post('/jobs', { ...job, name: 'Still open', waitsForId: done.id });
    const mark = (body: object) => app.api.put(`${path}/work/progress`).send(body).expect(200);
    await mark({ key: `own/${done.id}`, doneOn: today, hours: 2 });
    const gone = `herd/${herds[0]!.id}/h9.turn-out.walk-and-repair-perimeter-fence`;
    await mark({ key: gone, notBefore: addDays(today, 9), hoursDone: 1 });
    await app.api.put(`${path}/work/ground`).send({ date: today, isWorkable: true }).expect(200);
    await post('/handovers', {
      personId: people[0]!.id,
      ...{ from: addDays(today, 3), to: addDays(today, 6), hoursPerDay: 3 },
      ...{ roundOrder: [], phones: [], whereabouts: [] },
    });
    const days = [0, 1, 2].map((k) => ({ date: addDays(today, k), minC: 1, maxC: 9, rainMm: 2 }));
    await app.api.put(`${path}/weather/forecast`).send({ days }).expect(200);
    const moved = `${path}/herds/${herds[0]!.id}/moved`;
    await app.api.post(moved).send({ paddockId: paddocks[0]!.id, on: addDays(today, -3) });
    await app.api.post(moved).send({ paddockId: paddocks[1]!.id, on: today }).expect(200);
    const year = Number(today.slice(0, 4)) + 1;
    await app.api
      .put(`${path}/pasture/choices`)
      .send({ from: `${year}-04-10`, to: `${year}-10-10`, restFactor: 1.2 })
      .expect(200);
    const {
      id,
      version: _version,
      ...paddock
    } = paddocks[2] as unknown as { id: string; version: number };
    await app.api
      .put(`${path}/paddocks/${id}`)
      .send({
        ...paddock,
        closedDays: [{ from: today, to: addDays(today, 20), why: 'hay' }],
        harvestOn: addDays(today, 400),
      })
      .expect(200);
  }, 120_000);
  afterAll(async () => {
    jest.restoreAllMocks();
    await app.close();
  });

  const further = database.name === 'SQLite' ? [0, 5, 10] : [0, 10];
  describe.each(further)('%i years on', (years) => {
    beforeAll(() => setYears(years));
    afterAll(() => {
      jest.restoreAllMocks();
    });

    it('every list, plan, sheet and calendar is there', async () => {
      const batches = await get<Row[]>('/batches');
      const handovers = await get<Row[]>('/handovers');
      for (const what of [
        ...[
          '',
          '/facilities',
          '/products',
          '/people',
          '/batches',
          '/paddocks',
          '/herds',
          '/cows',
          '/jobs',
        ],
        ...['/handovers', '/grass-readings', '/told?history=true', '/weather', '/picture'],
        ...['/pasture/plan', '/work', '/calendar.ics'],
        ...batches.map(({ id }) => `/batches/${id}/plan`),
        ...handovers.map(({ id }) => `/handovers/${id}/sheet`),
      ]) {
        const { status, body } = await app.api.get(`${path}${what}`);
        expect({ what, status, body: status === 200 ? 'there' : (body as unknown) }).toEqual({
          what,
          status: 200,
          body: 'there',
        });
      }
    }, 120_000);

    it('the herd is in the work, and nothing that can be planned is left out', async () => {
      const { unplanned, jobs } = await get<WorkPlan>('/work');
      expect(unplanned).toEqual([]);
      if (years === 0) return;
      const [herd] = await get<(Row & { inPaddockId?: string })[]>('/herds');
      expect(herd!.inPaddockId).toBe((await get<Row[]>('/paddocks'))[1]!.id);
      const plan = await get<PasturePlan>('/pasture/plan');
      expect(plan.moves.length).toBeGreaterThan(3);
      // Of birds only hens are still there, which are fed.
      const ofBatches = jobs.filter(({ belongsTo }) => belongsTo?.kind === 'batch');
      expect(ofBatches.filter(({ name }) => !/ × /.test(name)).map(({ name }) => name)).toEqual([]);
      if (5 < years) expect(ofBatches).toEqual([]);
      expect(jobs.some(({ belongsTo }) => belongsTo?.id === herd!.id)).toBe(true);
    }, 60_000);

    it('every row can still be changed', async () => {
      for (const what of [
        ...[
          'facilities',
          'products',
          'people',
          'batches',
          'paddocks',
          'herds',
          'cows',
          'jobs',
          'handovers',
        ],
      ]) {
        for (const row of await get<Row[]>(`/${what}`)) {
          const { id, restingSince: _rest, ...body } = row as Row & { restingSince?: string };
          const response = await app.api.put(`${path}/${what}/${id}`).send(body);
          expect({ what, status: response.status, body: response.body }).toMatchObject({
            what,
            status: 200,
            body: { id },
          });
        }
      }
    }, 60_000);

    it('a date typed with the wrong year is still refused by its field', async () => {
      const [paddock] = await get<Row[]>('/paddocks');
      const read = (date: string) =>
        app.api
          .post(`${path}/grass-readings`)
          .send({ readings: [{ paddockId: paddock!.id, date, heightCm: 9 }] });
      expectFieldProblem(await read('1996-05-01'), {
        field: 'readings.0.date',
        given: '1996-05-01',
      });
      expectFieldProblem(await read('2099-05-01'), { field: 'readings.0.date' });
      const batch = await app.api
        .post(`${path}/batches`)
        .send(batchBody({ arrivalDate: '1996-05-01' }));
      const { problems } = expectProblem(batch, 400);
      expect(problems!.map(({ field }) => field)).toContain('arrivalDate');
    });
  });

  it('done jobs are at rest and take no place among the most there may be', async () => {
    setYears(5);
    const jobs = await get<Saved<KeptJob>[]>('/jobs');
    const resting = jobs.filter(({ restingSince }) => restingSince).map(({ name }) => name);
    expect(resting).toEqual(expect.arrayContaining(['Done', 'Lost']));
    expect(resting).not.toContain('Still open');
    const { id: _id, ...job } = newOwnJob({ dueOn: addDays(today, 2000) });
    const room = 200 - (jobs.length - resting.length);
    const answers = [];
    for (let i = 0; i <= room; i++) {
      answers.push((await app.api.post(`${path}/jobs`).send({ ...job, name: `J${i}` })).status);
    }
    expect(answers).toEqual([...Array<number>(room).fill(201), 400]);
  }, 120_000);
});

describe.each(databases())('more farms than one list holds, on $name', (database) => {
  it('come page by page, and the number is said', async () => {
    const app = await openApp(database);
    try {
      for (let k = 0; k < 3; k++) await app.api.post('/api/farms/sample').expect(201);
      const first = await app.api.get('/api/farms?take=2').expect(200);
      expect(first.body).toHaveLength(2);
      expect(first.headers['x-total-count']).toBe('3');
      const rest = await app.api.get('/api/farms?take=2&skip=2').expect(200);
      const ids = [...(first.body as Row[]), ...(rest.body as Row[])].map(({ id }) => id);
      expect(new Set(ids).size).toBe(3);
      expectFieldProblem(await app.api.get('/api/farms?take=many'), { field: 'take' });
    } finally {
      await app.close();
    }
  }, 60_000);
});
