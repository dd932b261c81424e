import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { Product } from '../../shared/farm/product.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { newBatch } from '../support/factories.js';
import { inDays, saveFarm, type SavedFarm } from '../support/orders.js';
import { expectFieldProblem, expectProblem } from '../support/problem.js';

const FEED = {
  ...{ kind: 'feed', name: 'Meat starter', phaseIds: ['starter'], feedFor: 'meat' },
  ...{ bagKg: 20, price: '18.00' },
};

describe.each(databases())('what a place buys, on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;

  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());
  beforeEach(async () => {
    farm = await saveFarm(app);
  });

  const post = (body: object) => app.api.post(`${farm.path}/products`).send(body);
  const add = async (body: object): Promise<Product & { version: number }> =>
    (await post(body).expect(201)).body as Product & { version: number };

  it('is kept as it was sent, changed, and gone when it is deleted', async () => {
    const feed = await add(FEED);
    expect(feed).toEqual({ ...FEED, id: expect.any(String), version: 1 });
    const chicks = await add({ kind: 'chicks', name: 'Chicks', price: '3.10' });
    const at = `${farm.path}/products/${feed.id}`;
    expect((await app.api.get(`${farm.path}/products`).expect(200)).body).toEqual([chicks, feed]);
    const picture = (await app.api.get(`${farm.path}/picture`).expect(200)).body as object;
    expect(picture).toMatchObject({ products: [chicks, feed] });
    const { body } = await app.api
      .put(at)
      .send({ ...FEED, price: '19.50', version: 1 })
      .expect(200);
    expect(body).toEqual({ ...feed, price: '19.50', version: 2 });
    await app.api.delete(at).expect(204);
    expectProblem(await app.api.get(at), 404);
  });

  it('is refused with the field that is wrong, and nothing is written', async () => {
    const before = await app.counts();
    expectFieldProblem(await post({ ...FEED, bagKg: 0 }), { field: 'bagKg' });
    expectFieldProblem(await post({ ...FEED, price: '-1' }), { field: 'price' });
    expectFieldProblem(await post({ ...FEED, phaseIds: [] }), { field: 'phaseIds' });
    expectFieldProblem(await post({ ...FEED, phaseIds: ['starter', 'hay'] }), {
      field: 'phaseIds.1',
    });
    expectFieldProblem(
      await post({ kind: 'chicks', name: 'Ducks', strainId: 'duck', price: '4' }),
      { field: 'strainId' },
    );
    expectFieldProblem(await post({ kind: 'hay', name: 'Hay', price: '4' }), { field: 'kind' });
    expect(await app.counts()).toEqual(before);
    const { id } = await add(FEED);
    const body = { kind: 'chicks', name: 'Chicks', price: '3' };
    expectFieldProblem(await app.api.put(`${farm.path}/products/${id}`).send(body), {
      field: 'kind',
    });
  });

  it('prices a batch that says nothing itself, and the plan changes with it', async () => {
    const batch = newBatch({ arrivalDate: inDays(60), brooderId: farm.brooderId });
    const { id } = (await app.api.post(`${farm.path}/batches`).send(batch).expect(201)).body as {
      id: string;
    };
    const billOf = async () =>
      ((await app.api.get(`${farm.path}/batches/${id}/plan`).expect(200)).body as BatchPlan).bill;
    expect((await billOf()).leftOut.join()).toContain('feed');
    const feed = await add({ ...FEED, phaseIds: ['starter', 'grower', 'finisher'] });
    const priced = await billOf();
    expect(priced.leftOut).toEqual([
      'without chicks, bedding, ice and freezer bags: no price given',
    ]);
    expect(priced.lines.find(({ label }) => label === 'Starter feed')!.product).toBe(feed.name);
  });
});
