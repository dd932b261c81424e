import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import { addDays, daysBetween, plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { Farm, Person } from '../../shared/farm/farm.js';
import type { Start, StartUsual } from '../../shared/farm/start.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import type { WorkPlan } from '../../shared/plan/work/planned-work.js';
import type { ToldPage } from '../../src/told/facts-of-farm.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { service } from '../support/outside.js';
import { expectFieldProblem, expectProblem } from '../support/problem.js';

const { JobsService } = service;

const TODAY = plainDateAt(Date.now(), 'America/New_York');
const AWAY = { from: addDays(TODAY, 170), to: addDays(TODAY, 174) };

const START: Start = {
  ...{ latitudeDeg: 44.3, longitudeDeg: -72.5, elevationM: 250, timeZone: 'America/New_York' },
  ...{ place: 'Montpelier', units: 'us', currency: 'USD', country: 'US', region: 'VT' },
  people: [{ free: 'evenings', away: [AWAY] }, { isChild: true }],
  meat: { birds: 75 },
  layers: { birds: 20 },
  cattle: [{ classId: 'cow-calf', head: 5 }],
};

describe.each(databases())('a start on $name', (database) => {
  let app: TestApp;
  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  it('says beforehand what is taken of hours where nobody says them, and takes the height of the town', async () => {
    const { body: usual } = await app.api.get('/api/start-usual').expect(200);
    const { freeTimes } = usual as StartUsual;
    const { elevationM: _height, ...noHeight } = START;
    const made = await app.api.post('/api/farms/start').send(noHeight).expect(201);
    // Montpelier, some five kilometers off, lies 160 m high.
    expect(Math.abs((made.body as Farm).elevationM - 160)).toBeLessThan(20);
    expect((made.body as Farm).assumed).toContain('elevationM');
    const { body } = await app.api.get(`/api/farms/${(made.body as { id: string }).id}/people`);
    const { hoursByWeekday } = freeTimes.find(({ free }) => free === 'evenings')!;
    expect((body as Person[])[0]!.hoursByWeekday).toEqual(hoursByWeekday);
    await app.api.delete(`/api/farms/${(made.body as { id: string }).id}`);
  });

  it('takes up the work of a garden and of hives, and when calves are due', async () => {
    const said = {
      ...START,
      ...{ hasGarden: true, hives: 2 },
      cattle: [{ classId: 'cow-calf', head: 4, calvesOn: '2030-04-01' }],
    };
    const { body } = await app.api.post('/api/farms/start').send(said).expect(201);
    const { id, revision } = body as { id: string; revision: number };
    const rows = async (path: string) => (await app.api.get(`/api/farms/${id}/${path}`)).body;
    const sets = ((await rows('jobs')) as { setId: string }[]).map(({ setId }) => setId);
    expect(new Set(sets)).toEqual(new Set(['garden-beds', 'garden-fall', 'hives', 'hives-fall']));
    expect(await rows('herds')).toMatchObject([{ groups: [{ calvesOn: '2030-04-01' }] }]);
    expect(await app.api.get(`/api/farms/${id}`)).toMatchObject({ body: { revision } });
    await app.api.delete(`/api/farms/${id}`);
  });

  it('takes hens that are here as counted, asks nothing of their past, and refuses a day on which they come', async () => {
    const { meat: _meat, cattle: _cattle, ...rest } = START;
    const asked = (layers: object) =>
      app.api.post('/api/farms/start').send({ ...rest, layers: { birds: 14, ...layers } });
    expectFieldProblem(await asked({ areHere: true, from: '2030-04-01' }), {
      field: 'layers.from',
    });
    const { body } = await asked({ areHere: true }).expect(201);
    const path = `/api/farms/${(body as { id: string }).id}`;
    const [batch] = (await app.api.get(`${path}/batches`).expect(200)).body as (Batch & {
      id: string;
    })[];
    expect(batch!.assumed).toEqual(expect.arrayContaining(['arrivalDate', 'arrivalAgeWeeks']));
    const told = (await app.api.get(`${path}/told?kind=arrived`).expect(200)).body as ToldPage;
    expect(told.facts).toMatchObject([
      { about: batch!.id, on: batch!.arrivalDate, details: { birds: 14 } },
    ]);
    const { body: plan } = await app.api.get(`${path}/batches/${batch!.id}/plan`).expect(200);
    const { daily, today, arrivalDate } = plan as BatchPlan;
    const alive = daily.find(({ label }) => label === 'Birds alive')!;
    expect(alive.values[daysBetween(arrivalDate, today)]).toBe(14);
    const { body: work } = await app.api.get(`${path}/work`).expect(200);
    const { jobs, unplanned } = work as Pick<WorkPlan, 'jobs' | 'unplanned'>;
    // No coop to make ready, no order, no move: what is left of hens in lay is their feed.
    expect(jobs.length).toBeGreaterThan(0);
    for (const key of [...jobs.map((job) => job.key), ...unplanned])
      expect(key).toContain('fetch-feed');
    await app.api.delete(path);
  }, 60_000);

  it('makes a whole farm at once, with plans that stand', async () => {
    const { body } = await app.api.post('/api/farms/start').send(START).expect(201);
    const { id: farmId, ...farm } = body as { id: string; name: string };
    expect(farm).toMatchObject({ name: 'Farm at Montpelier', revision: 1, isSample: false });
    expect(await app.counts()).toMatchObject({
      ...{ farms: 1, people: 2, facilities: 6, batches: 2, herds: 1, paddocks: 12 },
    });
    const batches = (await app.api.get(`/api/farms/${farmId}/batches`).expect(200)).body as {
      id: string;
    }[];
    for (const { id } of batches) {
      const plan = (await app.api.get(`/api/farms/${farmId}/batches/${id}/plan`).expect(200))
        .body as BatchPlan;
      expect(plan.weather.label).toMatch(/^An estimate/);
      expect(plan.heat).toBeDefined();
    }
    const { body: paddocks } = await app.api.get(`/api/farms/${farmId}/paddocks`).expect(200);
    expect((paddocks as { name: string }[]).map(({ name }) => name)).toEqual(
      Array.from({ length: 12 }, (_, k) => `Paddock ${k + 1}`),
    );
    await app.api.get(`/api/farms/${farmId}/pasture/plan`).expect(200);
    await app.api.get(`/api/farms/${farmId}/work`).expect(200);
  }, 60_000);

  it('takes the country of the nearest town where nobody says one, and keeps the one that is said', async () => {
    const { country: _country, region: _region, ...unsaid } = START;
    const farmOf = async (start: object) => {
      const { id } = (await app.api.post('/api/farms/start').send(start).expect(201)).body as {
        id: string;
      };
      return (await app.api.get(`/api/farms/${id}`).expect(200)).body as {
        country?: string;
        assumed: string[];
      };
    };
    const found = await farmOf(unsaid);
    expect(found).toMatchObject({ country: 'US', region: 'VT' });
    expect(found.assumed).toEqual(expect.arrayContaining(['country', 'region']));
    const byBorder = await farmOf({ ...unsaid, latitudeDeg: 45.03, longitudeDeg: -72.1 });
    expect(byBorder).not.toHaveProperty('country');
    expect(byBorder.assumed).not.toContain('country');
    const said = await farmOf({ ...unsaid, country: 'CA' });
    expect(said.country).toBe('CA');
    expect(said.assumed).not.toContain('country');
  });

  it('makes nothing at all of what is wrong or lies beyond the estimate', async () => {
    const before = await app.contents();
    const kenya = { latitudeDeg: -1.3, longitudeDeg: 36.8 };
    const send = (more: object) => app.api.post('/api/farms/start').send({ ...START, ...more });
    expectFieldProblem(await send(kenya), { field: 'climate' });
    expectFieldProblem(await send({ cattle: [{ classId: 'yak', head: 2 }] }), {
      field: 'cattle.0.classId',
    });
    expectFieldProblem(await send({ meat: { birds: 0 } }), { field: 'meat.birds' });
    expectFieldProblem(await send({ country: 'XX' }), { field: 'country' });
    expectFieldProblem(await send({ people: [{ free: 'never' }] }), { field: 'people.0.free' });
    const lastYear = { from: addDays(AWAY.from, -365), to: addDays(AWAY.to, -365) };
    expectFieldProblem(await send({ people: [{ free: 'evenings', away: [AWAY, lastYear] }] }), {
      field: 'people.0.away.1.to',
    });
    expect(await app.contents()).toBe(before);
  });

  it('makes nothing at all where the last of it cannot be kept', async () => {
    const before = await app.contents();
    const taking = jest
      .spyOn(app.nest.get(JobsService), 'takeUsual')
      .mockRejectedValueOnce(new Error('full'));
    const cut = app.api.post('/api/farms/start').send({ ...START, hasGarden: true });
    expectProblem(await cut, 500);
    expect(taking).toHaveBeenCalledTimes(1);
    expect(await app.contents()).toBe(before);
    taking.mockRestore();
  });
});
