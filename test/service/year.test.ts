import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { addDays, plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { Saved } from '../../shared/farm/saved.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import type { WorkPlan } from '../../shared/plan/work/work-plan.js';
import type { YearPlan } from '../../shared/plan/year/year-plan.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { newFarm } from '../support/factories.js';

describe.each([anyDatabase()])('the year on $name', (database) => {
  let app: TestApp;
  let path: string;
  let today: string;

  beforeAll(async () => {
    app = await openApp(database);
    const { body } = await app.api.post('/api/farms/sample').expect(201);
    const { id, timeZone } = body as { id: string; timeZone: string };
    path = `/api/farms/${id}`;
    today = plainDateAt(Date.now(), timeZone);
  });
  afterAll(() => app.close());

  const get = async <T>(what: string): Promise<T> =>
    (await app.api.get(`${path}${what}`).expect(200)).body as T;
  const year = () => get<YearPlan>('/year');
  const batches = () => get<Saved<Batch>[]>('/batches');

  it('has every batch and herd, by the dates of their own plans', async () => {
    const { rows, span, weeks, unplanned } = await year();
    expect(unplanned).toEqual([]);
    expect(span.from.slice(0, 7)).toBe(today.slice(0, 7));
    for (const { id, name } of await batches()) {
      const plan = await get<BatchPlan>(`/batches/${id}/plan`);
      const row = rows.find((each) => each.id === id)!;
      expect(row).toMatchObject({ kind: 'batch', name });
      expect(row.bars.find(({ kind }) => kind === 'brooder')).toEqual({
        kind: 'brooder',
        from: plan.arrivalDate,
        until: plan.outdoors.moveOut!.value,
      });
    }
    expect(rows.filter(({ kind }) => kind === 'herd')).toHaveLength(1);
    const work = await get<WorkPlan>('/work');
    // The strip is told in tenths of an hour.
    expect(weeks[0]!.hoursAvailable).toBeLessThanOrEqual(work.weeks[0]!.hours + 0.05);
    expect(weeks.length).toBeGreaterThan(50);
  });

  it('follows an arrival that is moved, a set that is taken and somebody who goes away', async () => {
    const before = await year();
    const [batch] = (await batches()).filter(({ arrivalDate }) => today < arrivalDate);
    const { id, version, ...order } = batch!;
    const arrivalDate = addDays(order.arrivalDate, 7);
    await app.api
      .put(`${path}/batches/${id}`)
      .set('If-Match', `"${version}"`)
      .send({ ...order, arrivalDate })
      .expect(200);
    const anchorOn = addDays(today, 200);
    await app.api.post(`${path}/jobs/sets/berries`).send({ anchorOn, count: 2 }).expect(201);
    const [{ id: personId, version: _version, ...person }] =
      await get<[{ id: string; version: number }]>('/people');
    const away = [{ from: addDays(today, 300), to: addDays(today, 310) }];
    await app.api
      .put(`${path}/people/${personId}`)
      .send({ ...person, away })
      .expect(200);
    const after = await year();
    expect(before.rows.map(({ id: row }) => row)).not.toContain('berries');
    expect(after.rows.find((row) => row.id === id)!.arrivesOn).toBe(arrivalDate);
    expect(after.rows.find((row) => row.id === 'berries')!.dates.length).toBeGreaterThan(1);
    expect(after.rows.find((row) => row.id === personId)!.bars).toEqual([
      { kind: 'away', from: away[0]!.from, until: addDays(away[0]!.to, 1) },
    ]);
  });

  it('of a farm with nothing on it is its weather', async () => {
    const { body } = await app.api.post('/api/farms').send(newFarm()).expect(201);
    const empty = await app.api.get(`/api/farms/${(body as { id: string }).id}/year`).expect(200);
    const { rows, weather, unplanned } = empty.body as YearPlan;
    expect({ rows, unplanned }).toEqual({ rows: [], unplanned: [] });
    expect(weather.turns.length).toBeGreaterThan(3);
  });

  it('of no farm is not there', async () => {
    const id = '00000000-0000-4000-8000-000000000000';
    await app.api.get(`/api/farms/${id}/year`).expect(404);
  });
});
