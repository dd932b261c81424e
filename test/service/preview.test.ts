import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import type { PlanRequest } from '../../shared/plan/request.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { newBatch, newBrooder, newFarm, tables } from '../support/factories.js';
import { batchBody, brooderBody, exampleOrder, saveFarm } from '../support/orders.js';
import { newHerd } from '../support/pasture-factories.js';
import { expectFieldProblem, expectProblem } from '../support/problem.js';
import { plannedBatch } from '../support/pictures.js';

/** As JSON carries it. */
const sent = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

function requestOf(
  order: Omit<PlanRequest, 'climate' | 'occupied' | 'packed' | 'products' | 'tables'>,
): PlanRequest {
  const { monthlyMinC, monthlyMaxC } = order.farm;
  const climate = climateFromMonthlyMeans(
    monthlyMinC,
    monthlyMaxC,
    tables.heat.coldNightMarginK.value,
  );
  return { ...order, climate, occupied: [], packed: [], products: [], tables };
}

describe.each([anyDatabase()])('the preview on $name', (database) => {
  let app: TestApp;

  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  const preview = async (order: object): Promise<BatchPlan> =>
    (await app.api.post('/api/plans/preview').send(order).expect(200)).body as BatchPlan;

  it('plans the example order as the core does', async () => {
    expect(await preview(exampleOrder())).toEqual(sent(plannedBatch(requestOf(exampleOrder()))));
  });

  it('says which tasks moved since an earlier arrival date', async () => {
    const plan = await preview({ ...exampleOrder(), previousArrivalDate: '2027-04-14' });
    expect(plan.tasks.changes).toContainEqual(
      expect.objectContaining({
        movedDays: 7,
        before: expect.any(String),
        after: expect.any(String),
      }),
    );
    expect(plan.tasks).toEqual(
      sent(plannedBatch(requestOf({ ...exampleOrder(), previousArrivalDate: '2027-04-14' })).tasks),
    );
  });

  it('says nothing of moved tasks without one', async () => {
    expect((await preview(exampleOrder())).tasks).not.toHaveProperty('changes');
  });

  it('warns of a place that is held by another batch', async () => {
    const other = { ...exampleOrder().batch, name: 'Others', arrivalDate: '2027-04-14' };
    const plan = await preview({ ...exampleOrder(), batches: [other] });
    expect(plan.issues.map((issue) => issue.code)).toContain('place-taken');
  });

  it('saves nothing', async () => {
    const before = await app.contents();
    await preview(exampleOrder());
    expect(await app.contents()).toBe(before);
  });

  it('uses the buildings of a saved farm', async () => {
    const farm = await saveFarm(app);
    const batch = newBatch({ brooderId: farm.brooderId });
    const plan = await preview({ farmId: farm.id, today: '2026-11-25', batch });
    const facilities = [newBrooder({ id: farm.brooderId })];
    const order = { farm: newFarm(), facilities, people: [], batch, today: '2026-11-25' };
    expect(plan).toEqual(sent(plannedBatch(requestOf(order))));
  });

  it('sees a change of a building at once', async () => {
    const farm = await saveFarm(app);
    const order = {
      farmId: farm.id,
      today: '2026-11-25',
      batch: newBatch({ brooderId: farm.brooderId }),
    };
    const before = await preview(order);
    const insulated = brooderBody({ name: 'Insulated', walls: { rM2KPerW: 2 } } as object);
    await app.api.put(`${farm.path}/facilities/${farm.brooderId}`).send(insulated).expect(200);
    const after = await preview(order);
    expect(after.heat?.brooderName).toBe('Insulated');
    expect(after.heat!.energyTotal.value).toBeLessThan(before.heat!.energyTotal.value);
  });

  it('sees a change of a price at once', async () => {
    const farm = await saveFarm(app);
    const order = {
      farmId: farm.id,
      today: '2026-11-25',
      batch: newBatch({ brooderId: farm.brooderId }),
    };
    const before = await preview(order);
    await app.api
      .put(farm.path)
      .send(newFarm({ electricityPricePerKWh: '0.40' }))
      .expect(200);
    const after = await preview(order);
    expect(after.heat!.cost!.value).toBe(before.heat!.cost!.value * 2); // 0.20 to 0.40
  });

  it('warns of another saved batch in the same brooder, but never of itself', async () => {
    const farm = await saveFarm(app);
    const first = batchBody({ name: 'First', brooderId: farm.brooderId });
    const { body: saved } = await app.api.post(`${farm.path}/batches`).send(first).expect(201);
    const codes = async (batch: object) =>
      (await preview({ farmId: farm.id, batch })).issues.map((issue) => issue.code);
    expect(await codes({ ...first, name: 'Second' })).toContain('place-taken');
    expect(await codes(saved as object)).not.toContain('place-taken');
    const { body: plan } = await app.api.get(
      `${farm.path}/batches/${(saved as { id: string }).id}/plan`,
    );
    expect((plan as BatchPlan).issues.map((issue) => issue.code)).not.toContain('place-taken');
  });

  it('answers 404 to the id of a farm that is not there', async () => {
    const order = { farmId: 'none', batch: newBatch() };
    expectProblem(await app.api.post('/api/plans/preview').send(order), 404);
  });

  it('checks the medicines of a document as told ones are', async () => {
    const med = { date: '2026-11-20', product: 'P', meatDays: 3 };
    const herds = [{ ...newHerd(), id: 'cows' }];
    const send = (treatments: object[]) =>
      app.api
        .post('/api/plans/preview')
        .send({ ...exampleOrder(), today: '2026-11-25', herds, treatments });
    expect((await send([{ ...med, about: 'cows', milkDays: 2 }])).status).toBe(200);
    for (const [more, field] of [
      [{ about: 'nobody' }, 'about'],
      [{ about: 'cows', eggDays: 2 }, 'eggDays'],
      [{ about: 'cows', date: '2026-11-26' }, 'date'],
      [{ about: 'cows', cowId: 'daisy', head: 2 }, 'head'],
    ] as const)
      expectFieldProblem(await send([{ ...med, ...more }]), { field: `treatments.0.${field}` });
  });
});
