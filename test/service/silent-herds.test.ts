import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Herd } from '../../shared/farm/herd.js';
import type { TickedToday } from '../../shared/plan/today/today.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { inDays, saveFarm, type SavedFarm } from '../support/orders.js';
import { newPaddocks } from '../support/pasture-factories.js';
import { expectFieldProblem } from '../support/problem.js';

describe.each(databases())('where cattle are on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app);
  }, 60_000);
  afterAll(() => app.close());

  it('is asked after a silence, told with all moves at once, and off grass is a place to be', async () => {
    const ids: string[] = [];
    for (const { id: _id, ...paddock } of newPaddocks(6, { areaM2: 4000, forageId: 'mixed' })) {
      const { body } = await app.api.post(`${farm.path}/paddocks`).send(paddock).expect(201);
      ids.push((body as { id: string }).id);
    }
    const body = { name: 'Cows', groups: [{ classId: 'dry-cow', head: 4 }] };
    const herd = (await app.api.post(`${farm.path}/herds`).send(body).expect(201)).body as Herd;
    const move = (day: number, details: object) =>
      app.api.post(`${farm.path}/told`).send({
        facts: [{ kind: 'herd-move', about: herd.id, on: inDays(day), details }],
      });
    const silent = async () =>
      ((await app.api.get(`${farm.path}/today`).expect(200)).body as TickedToday).attention.find(
        ({ key }) => key.startsWith('alarm/silent/'),
      );
    // A whole year: whatever day it is, there was a season since.
    await move(-360, { paddockId: ids[0] }).expect(201);
    const asked = (await silent())!;
    const moves = asked.moves!;
    expect(moves.length).toBeGreaterThan(0);
    const facts = moves.map(({ herdId, paddockId, on }) => ({
      ...{ kind: 'herd-move', about: herdId, on },
      details: paddockId === undefined ? { isOff: true } : { paddockId },
    }));
    await app.api.post(`${farm.path}/told`).send({ facts }).expect(201);
    expect((await silent())?.key).not.toBe(asked.key);
    // Still there: not moved, and not asked until a stay later.
    const at = (await app.api.get(`${farm.path}/herds/${herd.id}`)).body as Herd;
    if (at.inPaddockId !== undefined) {
      await move(0, { paddockId: at.inPaddockId, isStill: true }).expect(201);
      const stands = (await app.api.get(`${farm.path}/herds/${herd.id}`)).body as Herd;
      expect(stands.inSince).toBe(at.inSince);
      expect(await silent()).toBeUndefined();
    }
    const elsewhere = ids.find((id) => id !== at.inPaddockId);
    expectFieldProblem(await move(0, { paddockId: elsewhere, isStill: true }), {
      ...{ field: 'facts.0.details.paddockId', code: 'conflict' },
    });
    await move(0, { isOff: true }).expect(201);
    const now = (await app.api.get(`${farm.path}/herds/${herd.id}`)).body as Herd;
    expect(now.inPaddockId).toBeUndefined();
    expect(await silent()).toBeUndefined();
    expectFieldProblem(await move(0, { isOff: true, paddockId: ids[1] }), {
      ...{ field: 'facts.0.details.paddockId', code: 'conflict' },
    });
    expectFieldProblem(await move(0, {}), {
      ...{ field: 'facts.0.details.paddockId', code: 'missing' },
    });
  });
});
