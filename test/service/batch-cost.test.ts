import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Comparison } from '../../shared/plan/compare/compare-choices.js';
import type { BatchCost } from '../../shared/plan/cost/batch-cost.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { batchBody, saveFarm } from '../support/orders.js';
import { expectFieldProblem } from '../support/problem.js';

const FEEDS = { starter: '24.00', grower: '22.00', finisher: '21.00' };
const PRICES = { perBird: '3.00', beddingPerBag: '8.00', iceBag: '3.00', feedPerBag: FEEDS };

describe.each([anyDatabase()])('what a batch costs on $name', (database) => {
  let app: TestApp;
  let farm: Awaited<ReturnType<typeof saveFarm>>;
  let path: string;

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app);
    const body = batchBody({ brooderId: farm.brooderId, prices: PRICES });
    const saved = await app.api.post(`${farm.path}/batches`).send(body).expect(201);
    path = `${farm.path}/batches/${(saved.body as { id: string }).id}`;
  }, 60_000);
  afterAll(() => app.close());

  it('says the best day and what it must bring, with the place’s own costs, and saves nothing', async () => {
    const product = (body: object) => app.api.post(`${farm.path}/products`).send(body).expect(201);
    await product({ kind: 'own-hour', name: 'An hour', price: '12.00' });
    await product({ kind: 'trip', name: 'Trip', price: '5.00' });
    await product({ kind: 'meat', name: 'Whole birds', price: '9.00' });
    const gear = { kind: 'gear', name: 'Pens', price: '600.00', years: 10, batchesAYear: 2 };
    await product(gear);
    const before = await app.contents();
    const { body } = await app.api.get(`${path}/cost`).expect(200);
    const { breakEven, stop } = body as BatchCost;
    expect(breakEven.ownHours!.cost.value).toBeGreaterThan(0);
    expect(breakEven.beside.map(({ label }) => label)).toEqual([
      'Fetching the feed',
      'Share of Pens',
    ]);
    expect(breakEven.priceWanted!.value).toBe(900);
    expect(stop!.stop!.best.value).toMatch(/^\d{4}-\d\d-\d\d$/);
    expect(await app.contents()).toEqual(before);
  });

  it('refuses own costs that are none, and names the field', async () => {
    const send = (body: object) => app.api.post(`${farm.path}/products`).send(body);
    const gear = { kind: 'gear', name: 'Pens', price: '600.00', years: 10, batchesAYear: 2 };
    expectFieldProblem(await send({ ...gear, years: 0 }), { field: 'years' });
    expectFieldProblem(await send({ ...gear, batchesAYear: 0.5 }), { field: 'batchesAYear' });
    expectFieldProblem(await send({ ...gear, price: '-1' }), { field: 'price' });
    const meat = { kind: 'meat', name: 'Whole birds', price: '9.00' };
    expectFieldProblem(await send({ ...meat, fromDressedKg: 0 }), { field: 'fromDressedKg' });
    expectFieldProblem(await send({ ...meat, strainId: 'none-such' }), { field: 'strainId' });
  });

  it('sets other ways to raise it beside its plan', async () => {
    const choices = [{ wantedBirds: 12 }, { twoWeeksApart: 4 }];
    const { body } = await app.api.post(`${path}/compare`).send({ choices }).expect(200);
    const { columns } = body as Comparison;
    expect(columns).toHaveLength(3);
    expect(columns.every(({ costs }) => costs && 0 < costs.value)).toBe(true);
    expect(columns[1]!.said.length).toBeGreaterThan(0);
  });

  it('refuses choices that are none, and more than stand side by side', async () => {
    const send = (choices: unknown) => app.api.post(`${path}/compare`).send({ choices });
    expectFieldProblem(await send([{ wantedBirds: 0 }]), { field: 'choices.0.wantedBirds' });
    expectFieldProblem(await send([{ twoWeeksApart: 60 }]), { field: 'choices.0.twoWeeksApart' });
    expectFieldProblem(await send([{}, {}, {}, {}]), { field: 'choices' });
    expect((await send(undefined)).status).toBe(400);
    await app.api.get(`${farm.path}/batches/none-such/cost`).expect(404);
  });
});
