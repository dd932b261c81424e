import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { addDays, monthOf, plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Farm } from '../../shared/farm/farm.js';
import type { ToldFact } from '../../shared/farm/told-fact.js';
import type { MowingWork } from '../../shared/farm/mowing.js';
import type { PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import type { ToldPage } from '../../src/told/facts-of-farm.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { newFarm } from '../support/factories.js';
import { saveFarm, type SavedFarm } from '../support/orders.js';
import { newGroup, newHerd, newPaddock, RAIN_MM } from '../support/pasture-factories.js';

/** A farm whose next mowing lies ahead, whatever day it is. */
function farmBeforeMowing(): Partial<Farm> {
  const { latitudeDeg, monthlyMinC, monthlyMaxC } = newFarm();
  const month = monthOf(plainDateAt(Date.now(), 'America/New_York'));
  const isSouth = 7 <= month && month <= 10;
  const turned = (monthly: readonly number[]): number[] =>
    isSouth ? [...monthly.slice(6), ...monthly.slice(0, 6)] : [...monthly];
  return {
    latitudeDeg: isSouth ? -latitudeDeg : latitudeDeg,
    monthlyMinC: turned(monthlyMinC),
    monthlyMaxC: turned(monthlyMaxC),
    monthlyRainMm: turned(RAIN_MM),
  };
}

describe.each(databases())('mowing that is ticked as work on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;
  let today: string;

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app, farmBeforeMowing());
    today = plainDateAt(Date.now(), 'America/New_York');
    for (const name of ['A', 'B', 'C', 'D', 'E', 'F']) {
      const { id: _id, ...paddock } = newPaddock({ name });
      await app.api.post(`${farm.path}/paddocks`).send(paddock).expect(201);
    }
    const { id: _id, ...cows } = newHerd({ groups: [newGroup({ head: 2 })] });
    await app.api.post(`${farm.path}/herds`).send(cows).expect(201);
  }, 60_000);
  afterAll(() => app.close());

  const workOf = async (makesHay: boolean): Promise<MowingWork> => {
    await app.api.put(`${farm.path}/pasture/choices`).send({ makesHay }).expect(200);
    const { body } = await app.api.get(`${farm.path}/pasture/plan`).expect(200);
    return (body as PasturePlan).mowingWork[0]!;
  };
  const progress = (body: object) =>
    app.api.put(`${farm.path}/work/progress`).send(body).expect(200);
  const told = async (): Promise<readonly ToldFact[]> =>
    ((await app.api.get(`${farm.path}/told?kind=paddock-mown`).expect(200)).body as ToldPage).facts;
  const paddocksTold = async (): Promise<string[]> => (await told()).map(({ about }) => about);

  it.each([true, false])('tells which paddocks were cut, hay made: %s', async (makesHay) => {
    const { key, paddockIds, isLeftLying } = await workOf(makesHay);
    expect(isLeftLying).toBe(!makesHay);
    const yesterday = addDays(today, -1);
    await progress({ key, doneOn: yesterday });
    expect(new Set(await paddocksTold())).toEqual(new Set(paddockIds));
    const details = { work: key, ...(isLeftLying ? { isLeftLying } : {}) };
    for (const fact of await told()) expect(fact).toMatchObject({ on: yesterday, details });
    await progress({ key, undo: true });
    expect(await told()).toEqual([]);
  });

  it('takes them back with the fact of the tick, not with the hours told after it', async () => {
    const { key, paddockIds } = await workOf(true);
    await progress({ key, doneOn: today });
    await progress({ key, hours: 2 });
    const said = `${farm.path}/told?kind=work-progress&about=${key}&history=true`;
    const open = async (): Promise<readonly ToldFact[]> =>
      ((await app.api.get(said).expect(200)).body as ToldPage).facts.filter(
        ({ takenBackAt }) => takenBackAt === undefined,
      );
    const [hours, tick] = await open();
    await app.api.delete(`${farm.path}/told/${hours!.id}`).expect(204);
    expect(await paddocksTold()).toHaveLength(paddockIds.length);
    await app.api.delete(`${farm.path}/told/${tick!.id}`).expect(204);
    expect(await told()).toEqual([]);
  });

  it('leaves alone what was told of a paddock that day, with its bales', async () => {
    const { key, paddockIds } = await workOf(true);
    const [about] = paddockIds;
    const said = { kind: 'paddock-mown', about, on: today, details: { bales: 4 } };
    await app.api
      .post(`${farm.path}/told`)
      .send({ facts: [said] })
      .expect(201);
    await progress({ key, doneOn: today });
    const facts = await told();
    expect(facts).toHaveLength(paddockIds.length);
    expect(facts.find((fact) => fact.about === about)!.details).toEqual({ bales: 4 });
    await progress({ key, undo: true });
    expect(await told()).toMatchObject([{ about, details: { bales: 4 } }]);
  });

  it('tells nothing by the tick of other work', async () => {
    const before = await told();
    const { key } = await workOf(true);
    await progress({ key: key.replace('hay.mow', 'hay.ted'), doneOn: today });
    expect(await told()).toEqual(before);
  });
});
