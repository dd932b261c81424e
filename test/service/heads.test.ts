import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Batch } from '../../shared/farm/batch.js';
import type { Saved } from '../../shared/farm/saved.js';
import type { ToldFact } from '../../shared/farm/told-fact.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import type { TickedToday } from '../../shared/plan/today/today.js';
import { formatLongDate } from '../../shared/units/dates.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { batchBody, inDays, saveFarm, type SavedFarm } from '../support/orders.js';
import { expectFieldProblem } from '../support/problem.js';

describe.each(databases())('birds that are counted on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;
  let batch: Saved<Batch>;

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app);
  }, 60_000);
  afterAll(() => app.close());

  const tell = (...facts: object[]) => app.api.post(`${farm.path}/told`).send({ facts });
  const of = (kind: string, day: number, details: object) => ({
    ...{ kind, about: batch.id, on: inDays(day), details },
  });
  const plan = async (): Promise<BatchPlan> =>
    (await app.api.get(`${farm.path}/batches/${batch.id}/plan`).expect(200)).body as BatchPlan;
  const save = async (more: Partial<Batch>) => {
    const body = batchBody({ ...more });
    batch = (await app.api.post(`${farm.path}/batches`).send(body).expect(201))
      .body as typeof batch;
  };

  it('come two days late with six dead, and stand so on every screen', async () => {
    await save({ arrivalDate: inDays(-2), orderedBirds: 80 });
    await tell(of('arrived', 0, { birds: 80, dead: 6 })).expect(201);
    const now = await plan();
    expect(now.arrivalDate).toBe(inDays(0));
    expect(now.birds.counted!.now.value).toBe(74);
    const today = (await app.api.get(`${farm.path}/today`).expect(200)).body as TickedToday;
    expect(today.animals.find(({ id }) => id === batch.id)!.head).toMatchObject({ value: 74 });
    // What was ordered stays written down.
    const row = (await app.api.get(`${farm.path}/batches/${batch.id}`)).body as Batch;
    expect(row).toMatchObject({ orderedBirds: 80, arrivalDate: inDays(-2) });
  });

  it('are moved to no day weeks ago while they are waited for, whichever form it is typed in', async () => {
    await save({ arrivalDate: inDays(9), orderedBirds: 80 });
    const path = `${farm.path}/batches/${batch.id}`;
    const ago = batchBody({ arrivalDate: inDays(-28), orderedBirds: 80 });
    expectFieldProblem(await app.api.put(path).send(ago), {
      ...{ field: 'arrivalDate', code: 'out-of-bounds', given: inDays(-28), min: inDays(-3) },
    });
    await tell(of('arrived', -28, { birds: 80 })).expect(201);
    await app.api.put(path).send(ago).expect(200);
  });

  it('are not more dead than the plan has, until somebody tells how many came', async () => {
    await save({ arrivalDate: inDays(-300), purpose: 'layers', strainId: 'brown-layer' });
    const most = (await plan()).birds.chicksPlaced.value;
    expect(most).toBeGreaterThan(batch.wantedBirds);
    const body = await tell(of('died', 0, { birds: most + 1 }));
    expectFieldProblem(body, { field: 'facts.0.details.birds', code: 'out-of-bounds', max: most });
    expect(JSON.stringify(body.body)).toContain('if more came, tell that first');
    await tell(of('arrived', -300, { birds: most + 5 })).expect(201);
    // All of them dead: the day is still answered.
    await tell(of('died', 0, { birds: most + 5 })).expect(201);
    await app.api.get(`${farm.path}/today`).expect(200);
  });

  it('add up, and what is taken back no longer counts', async () => {
    await save({ arrivalDate: inDays(-9), orderedBirds: 80 });
    await tell(of('died', -5, { birds: 2 }), of('died', -5, { birds: 1, cause: 'chilled' }));
    const [one] = (await tell(of('died', -1, { birds: 3 })).expect(201)).body as ToldFact[];
    expect((await plan()).birds.counted!.now.value).toBe(74);
    await app.api.delete(`${farm.path}/told/${one!.id}`).expect(204);
    expect((await plan()).birds.counted!.now.value).toBe(77);
  });

  it('cannot be more dead than alive, whatever the order in which it is told', async () => {
    await save({ arrivalDate: inDays(-9), orderedBirds: 20 });
    const many = await tell(of('died', -2, { birds: 21 }));
    expectFieldProblem(many, { field: 'facts.0.details.birds', code: 'out-of-bounds', max: 20 });
    await tell(of('gone', -2, { birds: 15, how: 'sold', money: '75.00' })).expect(201);
    // What was told to have gone on the same day is not there for it.
    const same = await tell(of('died', -2, { birds: 6 }));
    expectFieldProblem(same, { field: 'facts.0.details.birds', given: 6, min: 0, max: 5 });
    const late = await tell(of('died', -6, { birds: 8 }));
    expectFieldProblem(late, { field: 'facts.0.details.birds', code: 'conflict', given: 8 });
    expect(JSON.stringify(late.body)).toContain(
      `only 12 are left on ${formatLongDate(inDays(-2), { units: 'metric' })}, and 15 `,
    );
    expect((await plan()).birds.atEnd.value).toBeLessThanOrEqual(5);
  });

  it('do not drink more in a day than so many birds can', async () => {
    await save({ arrivalDate: inDays(-9), orderedBirds: 20 });
    expectFieldProblem(await tell(of('water-drunk', -1, { liters: 1893 })), {
      ...{ field: 'facts.0.details.liters', code: 'out-of-bounds', given: 1893, max: 250 },
    });
    await tell(of('water-drunk', -1, { liters: 200 })).expect(201);
  });

  it('are fed no bags that they cannot eat in months, and none weeks before they come', async () => {
    const pullets = { strainId: 'brown-layer', purpose: 'layers', sex: 'pullets' } as const;
    await save({ ...pullets, arrivalDate: inDays(-9), orderedBirds: 13 });
    const opened = (day: number, bags: number) => tell(of('feed-opened', day, { bags, bagKg: 22 }));
    for (const bags of [30, 500])
      expectFieldProblem(await opened(-1, bags), {
        ...{ field: 'facts.0.details.bags', code: 'out-of-bounds', given: bags },
      });
    await opened(-1, 2).expect(201);
    await save({ arrivalDate: inDays(90), orderedBirds: 80 });
    const tooSoon = { field: 'facts.0.on', code: 'out-of-bounds', given: inDays(0) };
    expectFieldProblem(await opened(0, 1), { ...tooSoon, min: inDays(76) });
    expectFieldProblem(await tell(of('brooder-seen', 0, { underHeatC: 34 })), tooSoon);
    // The day before they come it is heated up and read.
    await save({ arrivalDate: inDays(1), orderedBirds: 80 });
    await tell(of('brooder-seen', 0, { underHeatC: 34 })).expect(201);
    await opened(0, 1).expect(201);
  });

  it('do not come a year before the day they are planned for', async () => {
    await save({ arrivalDate: inDays(100), orderedBirds: 20 });
    const body = await tell(of('arrived', -265, { birds: 20 }));
    expectFieldProblem(body, {
      ...{ field: 'facts.0.on', code: 'out-of-bounds', given: inDays(-265), min: inDays(40) },
    });
    const planned = formatLongDate(inDays(100), { units: 'metric' });
    expect(JSON.stringify(body.body)).toContain(`They were planned for ${planned}.`);
    await save({ arrivalDate: inDays(59), orderedBirds: 20 });
    await tell(of('arrived', -1, { birds: 20 })).expect(201);
  });

  it('cannot die before they came, nor come more dead than they were', async () => {
    await save({ arrivalDate: inDays(-3), orderedBirds: 20 });
    expectFieldProblem(await tell(of('died', -6, { birds: 1 })), {
      ...{ field: 'facts.0.on', code: 'out-of-bounds', min: inDays(-3) },
    });
    expectFieldProblem(await tell(of('arrived', -3, { birds: 10, dead: 11 })), {
      ...{ field: 'facts.0.details.dead', code: 'out-of-bounds', max: 10 },
    });
    expectFieldProblem(await tell(of('processed', -1, { birds: 5, liveKg: 10, dressedKg: 22 })), {
      field: 'facts.0.details.dressedKg',
      code: 'out-of-bounds',
      max: 10,
    });
  });

  it('are over once the last is gone: nothing of them is asked of the day any more', async () => {
    await save({ arrivalDate: inDays(-58), orderedBirds: 20 });
    await tell(of('processed', -1, { birds: 20, packs: 20 })).expect(201);
    expect((await plan()).birds.counted!.now.value).toBe(0);
    const today = (await app.api.get(`${farm.path}/today`).expect(200)).body as TickedToday;
    expect(today.animals.filter(({ id }) => id === batch.id)).toEqual([]);
  });
});
