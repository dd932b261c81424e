import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { FarmPicture } from '../../shared/farm/picture.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import type { ReadyBy } from '../../shared/plan/ready-by.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { newFarm } from '../support/factories.js';
import { batchBody, exampleOrder, inDays, saveFarm } from '../support/orders.js';
import { expectFieldProblem } from '../support/problem.js';

describe.each([anyDatabase()])('a plan from the other end on $name', (database) => {
  let app: TestApp;

  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  it('says when chicks must come, and how many at most, and saves nothing', async () => {
    const farm = await saveFarm(app);
    const before = await app.contents();
    const { body } = await app.api
      .post('/api/plans/ready-by')
      .send({
        farmId: farm.id,
        batch: batchBody({ brooderId: farm.brooderId }),
        goal: 'ready',
        on: inDays(150),
      })
      .expect(200);
    const found = body as ReadyBy;
    expect(found.arrivals.length).toBeGreaterThanOrEqual(2);
    expect(found.largest!.limits.map(({ kind }) => kind)).toContain('brooder');
    expect(await app.contents()).toEqual(before);
  });

  it('refuses a day that is none, and eggs of meat birds', async () => {
    const order = exampleOrder();
    const ask = (more: object) =>
      app.api
        .post('/api/plans/ready-by')
        .send({ ...order, goal: 'ready', on: '2027-07-04', ...more });
    expectFieldProblem(await ask({ on: '2027-02-30' }), { field: 'on' });
    expectFieldProblem(await ask({ goal: 'eggs' }), { field: 'goal' });
  });

  it('knows the holidays of a farm’s country, as days without post', async () => {
    const farm = await saveFarm(app, { country: 'US', region: 'VT' });
    const picture = (await app.api.get(`${farm.path}/picture`).expect(200)).body as FarmPicture;
    const year = Number(picture.today.slice(0, 4)) + 1;
    expect(picture.publicHolidays).toContainEqual({
      date: `${year}-01-01`,
      name: "New Year's Day",
    });
    const { body } = await app.api
      .post('/api/plans/preview')
      .send({ farmId: farm.id, batch: batchBody({ arrivalDate: `${year}-01-01` }) })
      .expect(200);
    expect((body as BatchPlan).issues.map(({ code }) => code)).toContain('no-post');
  });

  it('takes holidays of a farm that is sent whole', async () => {
    const order = exampleOrder();
    const { body } = await app.api
      .post('/api/plans/preview')
      .send({
        ...order,
        farm: { ...order.farm, country: 'DE', region: 'BY' },
        batch: { ...order.batch, arrivalDate: '2027-05-27' },
      })
      .expect(200);
    const issue = (body as BatchPlan).issues.find(({ code }) => code === 'no-post');
    expect(issue?.text).toContain('Corpus Christi'); // not a holiday of all of Germany
  });

  it('lists countries with their regions, and refuses others', async () => {
    const { body } = await app.api.get('/api/reference/countries').expect(200);
    const countries = body as { id: string; regions: { id: string }[] }[];
    const us = countries.find(({ id }) => id === 'US');
    expect(us!.regions.map(({ id }) => id)).toContain('NY');
    const post = (more: object) => app.api.post('/api/farms').send({ ...newFarm(), ...more });
    expectFieldProblem(await post({ country: 'ZZ' }), { field: 'country' });
    expectFieldProblem(await post({ country: 'US', region: 'BY' }), { field: 'region' });
  });
});
