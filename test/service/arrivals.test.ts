import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { weekdayOf } from '../../shared/calendar/plain-date.js';
import type { ArrivalWeek } from '../../shared/plan/arrival-finder.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { newBatch } from '../support/factories.js';
import { exampleOrder, saveFarm } from '../support/orders.js';
import { expectFieldProblem } from '../support/problem.js';

const YEAR = { from: '2027-01-01', to: '2027-12-31' };

describe.each([anyDatabase()])('the search for an arrival on $name', (database) => {
  let app: TestApp;

  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  const search = async (body: object): Promise<ArrivalWeek[]> =>
    (await app.api.post('/api/plans/arrivals').send(body).expect(200)).body as ArrivalWeek[];

  it('scores every Wednesday of 2027, each with reasons', async () => {
    const weeks = await search({ ...exampleOrder(), ...YEAR });
    expect(weeks).toHaveLength(52); // 6 January to 29 December
    expect(weeks[0]?.arrivalDate).toBe('2027-01-06');
    expect(weeks[51]?.arrivalDate).toBe('2027-12-29');
    expect(weeks.map((week) => week.rank).sort((a, b) => a - b)).toEqual(
      Array.from({ length: 52 }, (_, i) => i + 1),
    );
    for (const { reasons, score, leavingDate, arrivalDate } of weeks) {
      expect(reasons.length).toBeGreaterThan(0);
      for (const reason of reasons) expect(reason.text).toMatch(/\S.*[.!]$/);
      expect(0 <= score && score <= 100).toBe(true);
      expect(arrivalDate < leavingDate).toBe(true);
    }
  });

  it('ranks by score', async () => {
    const weeks = await search({ ...exampleOrder(), ...YEAR });
    const ranked = [...weeks].sort((a, b) => a.rank - b.rank).map((week) => week.score);
    expect(ranked).toEqual([...ranked].sort((a, b) => b - a));
  });

  it('keeps to the weekday that is asked for', async () => {
    const weeks = await search({ ...exampleOrder(), ...YEAR, weekday: 1 });
    expect(new Set(weeks.map((week) => weekdayOf(week.arrivalDate)))).toEqual(new Set([1]));
  });

  it('counts an absence of everybody against a week', async () => {
    const away = [{ from: '2027-05-10', to: '2027-05-14' }];
    const people = [{ name: 'Adult A', away }];
    const weeks = await search({ ...exampleOrder(), people, ...YEAR });
    const week = weeks.find((each) => each.arrivalDate === '2027-05-05');
    expect(week?.reasons.find((reason) => reason.code === 'people')?.points).toBeGreaterThan(0);
  });

  it('searches on a saved farm, and saves nothing', async () => {
    const farm = await saveFarm(app);
    const before = await app.contents();
    const batch = newBatch({ brooderId: farm.brooderId });
    const weeks = await search({ farmId: farm.id, batch, today: '2026-11-25', ...YEAR });
    expect(weeks).toHaveLength(52);
    expect(await app.contents()).toBe(before);
  });

  it('names the end of a span that ends before it begins', async () => {
    const body = { ...exampleOrder(), from: '2027-06-01', to: '2027-05-01' };
    expectFieldProblem(await app.api.post('/api/plans/arrivals').send(body), {
      field: 'to',
      code: 'out-of-bounds',
      given: '2027-05-01',
      min: '2027-06-01',
    });
  });
});
