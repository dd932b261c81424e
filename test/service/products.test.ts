import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { Product } from '../../shared/farm/product.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import type { FeedYear } from '../../shared/plan/feed-year/feed-year.js';
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
    expect(body).toEqual({
      ...feed,
      ...{ price: '19.50', version: 2 },
      earlierPrices: [{ price: '18.00', until: inDays(0) }],
    });
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
    expectFieldProblem(await post({ kind: 'straw', name: 'Straw', price: '4' }), { field: 'kind' });
    expect(await app.counts()).toEqual(before);
    const { id } = await add(FEED);
    const body = { kind: 'chicks', name: 'Chicks', price: '3' };
    expectFieldProblem(await app.api.put(`${farm.path}/products/${id}`).send(body), {
      field: 'kind',
    });
  });

  it('is refused where it costs nothing, is dearer in bulk, or is counted on a day to come', async () => {
    expectFieldProblem(await post({ ...FEED, price: '0' }), { field: 'price' });
    expectFieldProblem(
      await post({ kind: 'ingredient', name: 'Corn', ingredientId: 'corn', bagKg: 20, price: '0' }),
      { field: 'price' },
    );
    expectFieldProblem(await post({ ...FEED, priceBreaks: [{ fromBags: 10, price: '0' }] }), {
      field: 'priceBreaks.0.price',
    });
    expectFieldProblem(await post({ ...FEED, phaseIds: [] }), { field: 'phaseIds' });
    expectFieldProblem(
      await post({ ...FEED, earlierPrices: [{ price: '15', until: inDays(3) }] }),
      { field: 'earlierPrices.0.until' },
    );
    expectFieldProblem(await post({ ...FEED, priceBreaks: [{ fromBags: 10, price: '18.50' }] }), {
      field: 'priceBreaks.0.price',
    });
    const falling = [
      { fromBags: 10, price: '17' },
      { fromBags: 10, price: '16' },
    ];
    expectFieldProblem(await post({ ...FEED, priceBreaks: falling }), {
      field: 'priceBreaks.1.fromBags',
    });
    expectFieldProblem(await post({ ...FEED, storeBags: 3 }), { field: 'storeOn' });
    expectFieldProblem(await post({ ...FEED, storeBags: 3, storeOn: inDays(2) }), {
      field: 'storeOn',
    });
    expectFieldProblem(await post({ ...FEED, supplierId: 'nobody' }), { field: 'supplierId' });
  });

  it('keeps every price it had, and loses its seller with the seller', async () => {
    const sellers = `${farm.path}/suppliers`;
    const mill = { name: 'Mill', comes: 'fetched', tripCost: '9.00', openWeekdays: [6] };
    const { id: supplierId } = (await app.api.post(sellers).send(mill).expect(201)).body as {
      id: string;
    };
    const feed = await add({ ...FEED, supplierId });
    const at = `${farm.path}/products/${feed.id}`;
    await app.api
      .put(at)
      .send({ ...FEED, supplierId, price: '19.00' })
      .expect(200);
    const { body } = await app.api
      .put(at)
      .send({ ...FEED, supplierId, bagKg: 25 })
      .expect(200);
    // Changed twice on one day, only the price of the day before counts.
    expect(body).toMatchObject({ earlierPrices: [{ price: '19.00', until: inDays(0) }] });
    await app.api.delete(`${sellers}/${supplierId}`).expect(204);
    expect((await app.api.get(at).expect(200)).body).not.toHaveProperty('supplierId');
  });

  it('is bought for the year on trips, as a list for a spreadsheet too', async () => {
    const batch = newBatch({ arrivalDate: inDays(30), brooderId: farm.brooderId });
    await app.api.post(`${farm.path}/batches`).send(batch).expect(201);
    await add({ ...FEED, name: '=Starter', phaseIds: ['starter', 'grower', 'finisher'] });
    const year = (await app.api.get(`${farm.path}/feed`).expect(200)).body as FeedYear;
    const lines = year.trips.flatMap((trip) => trip.lines);
    expect(lines.length).toBeGreaterThan(0);
    const sum = lines.reduce((all, { cost }) => all + cost!.value, 0);
    expect(year.total.value).toBe(sum);
    const { text } = await app.api.get(`${farm.path}/feed/list.csv`).expect(200);
    expect(text.trim().split('\r\n')).toHaveLength(1 + lines.length);
    expect(text).toContain(`"'=Starter"`);
  });

  it('counts what was told as bought as in store, without a new plan of anything else', async () => {
    const batch = newBatch({ arrivalDate: inDays(10), brooderId: farm.brooderId });
    await app.api.post(`${farm.path}/batches`).send(batch).expect(201);
    await add(FEED);
    const starter = async () =>
      ((await app.api.get(`${farm.path}/feed`).expect(200)).body as FeedYear).feeds.find(
        ({ name }) => name === FEED.name,
      )!;
    expect((await starter()).inStore).toBeUndefined();
    const details = { what: 'feed', name: 'meat starter', amount: 2, eachKg: 20, money: '36' };
    const fact = { kind: 'bought', about: 'farm', on: inDays(0), details };
    await app.api
      .post(`${farm.path}/told`)
      .send({ facts: [fact] })
      .expect(201);
    expect((await starter()).inStore!.value).toBe(40);
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
