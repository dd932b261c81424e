import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Ration } from '../../shared/ration/ration.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { saveFarm } from '../support/orders.js';
import { expectFieldProblem } from '../support/problem.js';
import { WHOLE } from '../support/ration-factories.js';

const ASKED = { birdsId: 'meat-chickens', stageId: 'grower', batchKg: 45.36 };

describe.each([anyDatabase()])('feed mixed at home on $name', (database) => {
  let app: TestApp;
  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  it('is mixed of what the farm has a price for, and saves nothing', async () => {
    const farm = await saveFarm(app);
    for (const { id: _id, ...ingredient } of WHOLE)
      await app.api.post(`${farm.path}/products`).send(ingredient).expect(201);
    const before = await app.contents();
    const { body } = await app.api.post(`${farm.path}/rations`).send(ASKED).expect(200);
    const { mix } = body as Ration;
    expect(mix!.lines[0]).toMatchObject({ ingredientId: 'corn' });
    expect(mix!.totalKg).toBeCloseTo(45.36, 0);
    const corn = mix!.lines[0]!.id;
    const other = await app.api
      .post(`${farm.path}/rations`)
      .send({ ...ASKED, leaveOutIds: [corn] })
      .expect(200);
    expect((other.body as Ration).mix?.lines.map(({ id }) => id) ?? []).not.toContain(corn);
    expect(await app.contents()).toEqual(before);
  });

  it('is mixed of what is sent, and says what conflicts', async () => {
    const farm = await saveFarm(app);
    const ask = (ids: readonly string[]) =>
      app.api
        .post(`${farm.path}/rations`)
        .send({ ...ASKED, ingredients: WHOLE.filter(({ id }) => ids.includes(id)) });
    const { body } = await ask(['corn', 'soybean-meal-48', 'premix']).expect(200);
    expect((body as Ration).mix).toBeUndefined();
    expect((body as Ration).issues[0]).toMatchObject({ level: 'stop', code: 'mix-not-possible' });
  });

  it('names what cannot be used: birds, age, amount, ingredient, price, size', async () => {
    const farm = await saveFarm(app);
    const ask = (more: object) =>
      app.api.post(`${farm.path}/rations`).send({ ...ASKED, ingredients: WHOLE, ...more });
    expectFieldProblem(await ask({ birdsId: 'cows' }), { field: 'birdsId' });
    expectFieldProblem(await ask({ stageId: 'layer' }), { field: 'stageId' });
    expectFieldProblem(await ask({ alsoFor: [{ birdsId: 'brown-hens', stageId: 'calves' }] }), {
      field: 'alsoFor.0.stageId',
    });
    expectFieldProblem(await ask({ batchKg: 0 }), { field: 'batchKg' });
    expectFieldProblem(await ask({ ingredients: [] }), { field: 'ingredients' });
    const [corn] = WHOLE;
    const withCorn = (more: object) => ask({ ingredients: [{ ...corn, ...more }] });
    expectFieldProblem(await withCorn({ ingredientId: 'hay' }), {
      field: 'ingredients.0.ingredientId',
    });
    expectFieldProblem(await withCorn({ price: '-2' }), { field: 'ingredients.0.price' });
    expectFieldProblem(await withCorn({ bagKg: 0 }), { field: 'ingredients.0.bagKg' });
    expectFieldProblem(await withCorn({ holds: { proteinShare: 9 } }), {
      field: 'ingredients.0.holds.proteinShare',
    });
    expectFieldProblem(await withCorn({ holds: { proteinShare: 0.08, lysineShare: 0.2 } }), {
      field: 'ingredients.0.holds.lysineShare',
    });
  });

  it('keeps ingredients with their prices, and refuses one that no table has', async () => {
    const farm = await saveFarm(app);
    const { id: _id, ...corn } = WHOLE[0]!;
    const send = (more: object) => app.api.post(`${farm.path}/products`).send({ ...corn, ...more });
    expectFieldProblem(await send({ ingredientId: 'hay' }), { field: 'ingredientId' });
    const { body } = await send({ holds: { proteinShare: 0.082 } }).expect(201);
    expect(body).toMatchObject({ kind: 'ingredient', holds: { proteinShare: 0.082 } });
  });
});
