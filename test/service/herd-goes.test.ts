import { afterAll, afterEach, beforeAll, describe, expect, it, jest } from '@jest/globals';
import { addDays, type PlainDate } from '../../shared/calendar/plain-date.js';
import { holding, type ToldFact } from '../../shared/farm/told-fact.js';
import type { PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import type { HerdLine } from '../../shared/plan/today/herd-line.js';
import type { TickedToday } from '../../shared/plan/today/today.js';
import type { WorkPlan } from '../../shared/plan/work/planned-work.js';
import { movedBy } from '../../shared/plan/pasture/move-told.js';
import { isTurnOutWork, movesKey } from '../../shared/farm/herd-move-work.js';
import type { ToldPage } from '../../src/told/facts-of-farm.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { saveFarm, type SavedFarm } from '../support/orders.js';
import { ServiceDate } from '../support/outside.js';
import { newGroup, newHerd, newPaddock, RAIN_MM } from '../support/pasture-factories.js';

const FIRST_DAY = '2027-04-20';

describe.each([anyDatabase()])('a herd goes where a tick brings it, on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;
  let herdId: string;
  let turnOut: PlainDate;

  const at = (day: PlainDate): void =>
    void jest.spyOn(ServiceDate, 'now').mockReturnValue(Date.parse(`${day}T16:00:00Z`));
  beforeAll(async () => {
    at(FIRST_DAY);
    app = await openApp(database);
    farm = await saveFarm(app, { monthlyRainMm: RAIN_MM });
    for (const name of ['A', 'B', 'C', 'D', 'E', 'F']) {
      const { id: _id, ...paddock } = newPaddock({ name });
      await app.api.post(`${farm.path}/paddocks`).send(paddock).expect(201);
    }
    const { id: _id, ...cows } = newHerd({ groups: [newGroup({ head: 5 })] });
    const { body } = await app.api.post(`${farm.path}/herds`).send(cows).expect(201);
    herdId = (body as { id: string }).id;
    const { moves } = await get<PasturePlan>('/pasture/plan');
    turnOut = moves[0]!.from;
    at(turnOut);
  }, 60_000);
  afterEach(() => at(turnOut));
  afterAll(async () => {
    jest.restoreAllMocks();
    await app.close();
  });

  const get = async <T>(path: string): Promise<T> =>
    (await app.api.get(`${farm.path}${path}`).expect(200)).body as T;
  const day = (): Promise<TickedToday> => get<TickedToday>('/today');
  const herdOf = ({ animals }: TickedToday): HerdLine =>
    animals.find((each): each is HerdLine => each.kind === 'herd')!;
  const moves = async (): Promise<ToldFact[]> =>
    holding((await get<ToldPage>('/told?kind=herd-move')).facts);
  const chore = (isDone: boolean) =>
    app.api
      .put(`${farm.path}/today/chores`)
      .send({ key: movesKey(herdId), isDone })
      .expect(200);

  it('by the chore of the move, since that day and until the same day, however many pass', async () => {
    const before = await day();
    const { goes } = before.chores.find(({ key }) => key === movesKey(herdId))!;
    expect(goes).toMatchObject({ herdId });
    await chore(true);
    const details = { paddockId: goes!.paddockId, work: movesKey(herdId) };
    expect(await moves()).toMatchObject([{ about: herdId, on: turnOut, details }]);
    const stay = herdOf(await day()).on!;
    expect(stay).toMatchObject({ paddock: goes!.paddock, since: turnOut });
    at(addDays(turnOut, 1));
    expect(herdOf(await day()).on).toEqual(stay);
  });

  it('from the day on which it was told, when a tick says it again', async () => {
    const { paddockId } = (await moves())[0]!.details as { paddockId: string };
    at(addDays(turnOut, 1));
    const said = { kind: 'herd-move', about: herdId, on: addDays(turnOut, 1) };
    const details = { paddockId, work: movesKey(herdId) };
    await app.api
      .post(`${farm.path}/told`)
      .send({ facts: [{ ...said, details }] })
      .expect(201);
    expect(herdOf(await day()).on).toMatchObject({ since: turnOut });
  });

  it('is back where it was with the undo, and out of no other paddock', async () => {
    await chore(false);
    for (const { id } of await moves()) await app.api.delete(`${farm.path}/told/${id}`).expect(204);
    expect(await moves()).toEqual([]);
    expect(herdOf(await day()).here).toBeUndefined();
  });

  it('by the work that lets it out, once, and its undo takes it back', async () => {
    const { jobs } = await get<WorkPlan>('/work');
    const { key } = jobs.find((job) => isTurnOutWork(job.key))!;
    const progress = (said: object) =>
      app.api
        .put(`${farm.path}/work/progress`)
        .send({ key, ...said })
        .expect(200);
    await progress({ doneOn: turnOut });
    expect(await moves()).toMatchObject([{ about: herdId, on: turnOut, details: { work: key } }]);
    expect(
      (await day()).chores.find((each) => each.key === movesKey(herdId))?.goes,
    ).toBeUndefined();
    const sooner = addDays(turnOut, -1);
    await progress({ doneOn: sooner });
    expect(await moves()).toMatchObject([{ about: herdId, on: sooner, details: { work: key } }]);
    await progress({ undo: true });
    expect(await moves()).toEqual([]);
  });

  it('by a tick after a silence, with the moves before it, and its undo takes back all of them', async () => {
    const { goes } = (await day()).chores.find(({ key }) => key === movesKey(herdId))!;
    await chore(true);
    const known = (await moves()).length;
    let later = addDays(turnOut, 4);
    let asked: TickedToday['chores'][number]['goes'];
    while (!asked?.assumed) {
      later = addDays(later, 1);
      at(later);
      asked = (await day()).chores.find(({ key }) => key === movesKey(herdId))?.goes;
    }
    expect(asked.assumed[0]!.paddockId).not.toBe(goes!.paddockId);
    await chore(true);
    expect(await moves()).toHaveLength(known + asked.assumed.length + 1);
    await chore(false);
    expect(await moves()).toHaveLength(known);
    expect(herdOf(await day()).isAssumed).toBe(true);
    // Told by itself into another paddock, the same: the moves before it stay, and go with its undo.
    const [elsewhere] = (await get<{ id: string }[]>('/paddocks')).filter(
      ({ id }) => ![goes, asked, asked!.assumed!.at(-1)].some((each) => each!.paddockId === id),
    );
    const facts = movedBy({ ...asked, paddockId: elsewhere!.id }, movesKey(herdId), later);
    await app.api.post(`${farm.path}/told`).send({ facts }).expect(201);
    const told = await moves();
    expect(told).toHaveLength(known + facts.length);
    expect(herdOf(await day()).here!.paddockId).toBe(elsewhere!.id);
    const main = told.find(({ on }) => on === later)!;
    await app.api.delete(`${farm.path}/told/${main.id}`).expect(204);
    expect(await moves()).toHaveLength(known);
    // The same where nobody sends the moves before it: another program, or a phone that read the plan then.
    const bare = {
      ...{ kind: 'herd-move', about: herdId, on: later, key: 'by-itself' },
      details: { paddockId: elsewhere!.id },
    };
    const tell = async (said: object): Promise<ToldFact[]> =>
      (
        await app.api
          .post(`${farm.path}/told`)
          .send({ facts: [said] })
          .expect(201)
      ).body as ToldFact[];
    const [kept] = await tell(bare);
    expect(kept).toMatchObject(bare);
    const placesOf = (all: readonly ToldFact[]) =>
      all.map(({ on, details }) => [on, (details as { paddockId: string }).paddockId]).sort();
    expect(placesOf(await moves())).toEqual(placesOf(told));
    expect(await tell(bare)).toEqual([kept]);
    expect(await moves()).toHaveLength(told.length);
    await app.api.delete(`${farm.path}/told/${kept!.id}`).expect(204);
    expect(await moves()).toHaveLength(known);
    expect(await tell(bare)).toMatchObject([{ id: kept!.id }]);
    expect(await moves()).toHaveLength(known);
    // A phone that was without signal sends what it was told day by day: nothing lay between.
    const until = new Date(Date.parse((await moves()).at(-1)!.toldAt) - 1).toISOString();
    await tell({ ...bare, key: 'told-offline', seen: { until } });
    expect(await moves()).toHaveLength(known + 1);
  });
});
