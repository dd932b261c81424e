import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { Paddock } from '../../shared/farm/paddock.js';
import type { ToldFact } from '../../shared/farm/told-fact.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import type { HowItWent } from '../../shared/plan/record/how-it-went.js';
import type { YearCounts } from '../../shared/plan/record/year-counts.js';
import type { TickedToday } from '../../shared/plan/today/today.js';
import { anyDatabase, databases, type EmptyDatabase } from '../support/databases.js';
import { newBrooder, newFarm } from '../support/factories.js';
import { newHerd, newPaddock } from '../support/pasture-factories.js';
import { SeasonHouse, type PhoneFact } from '../support/season-house.js';
import {
  beside,
  CAME,
  DAYS,
  DEAD_IN_BOX,
  DEATHS,
  DIED,
  factsOf,
  GIVEN,
  HALF,
  IN_BOX,
  NO_SIGNAL,
  on,
  orderIn,
  PLANNED,
  PROCESSED,
  SOLD,
  SOLD_CENTS,
  SPENT_CENTS,
} from '../support/season-story.js';

/** SEASON_KILLS asks for more, SEASON_ON for another database. */
const KILLS = Number(process.env['SEASON_KILLS'] ?? 4);
const TIME_MS = 120_000 + KILLS * 30_000;

describe('a season on two phones', () => {
  let place: EmptyDatabase;
  let house: SeasonHouse;
  beforeAll(async () => {
    const asked = databases().find(({ name }) => name === process.env['SEASON_ON']);
    place = await (asked ?? anyDatabase()).empty();
    house = await SeasonHouse.open(place, addDays(PLANNED, -3));
  }, TIME_MS);
  afterAll(async () => {
    await house.stop();
    await place.remove();
  });

  it(
    'ends with the record right to the bird and the cent, however often the program is killed',
    async () => {
      const row = <T extends { id?: unknown }>({ id: _id, ...rest }: T): object => rest;
      const make = async (path: string, body: object): Promise<string> =>
        (await house.post<{ id: string }>(path, body)).id;
      const id = await make('/farms', newFarm());
      const farm = `/farms/${id}`;
      for (const name of ['A', 'B']) await make(`${farm}/people`, { name, away: [] });
      const brooderId = await make(`${farm}/facilities`, row(newBrooder()));
      const batchId = await make(`${farm}/batches`, orderIn(brooderId));
      const paddockIds: string[] = [];
      for (const name of ['Oak', 'Pond', 'Hill', 'Lane'])
        paddockIds.push(await make(`${farm}/paddocks`, row(newPaddock({ name }))));
      const herdId = await make(`${farm}/herds`, row(newHerd()));
      const planOf = () => house.get<BatchPlan>(`${farm}/batches/${batchId}/plan`);
      const asOrdered = await planOf();

      // The call comes that the box is late: one field, and all that hangs from it moves.
      while (house.today < PLANNED) await house.nextDay();
      const saved = await house.get<Batch>(`${farm}/batches/${batchId}`);
      await house.put(`${farm}/batches/${batchId}`, {
        ...withoutId(saved),
        arrivalDate: CAME,
      });
      expect((await planOf()).arrivalDate).toBe(CAME);

      while (house.today < CAME) await house.nextDay();
      const told: string[] = [];
      const kept: PhoneFact[] = [];
      let half: BatchPlan | undefined;
      for (let day = 0; day <= DAYS; day++) {
        if (0 < day) await house.nextDay();
        const facts = factsOf(batchId, day);
        if (day === 22) {
          facts.push({
            who: 'a',
            fact: {
              ...{ key: 'a-moved-22', kind: 'herd-move', about: herdId, on: on(22) },
              details: { paddockId: paddockIds[0] },
            },
          });
        }
        told.push(...facts.map(({ fact }) => fact.key));
        const isOff = NO_SIGNAL.from <= day && day < NO_SIGNAL.to;
        const sent = facts.filter(({ who }) => who === 'a' || !isOff).map(({ fact }) => fact);
        if (isOff) kept.push(...facts.filter(({ who }) => who === 'b').map(({ fact }) => fact));
        if (day === NO_SIGNAL.to) sent.push(...kept, ...kept.slice(0, 3));
        await sendAll(house, id, sent, isKillDay(day));
        if (day === 24) await loseOak(house, farm, paddockIds[0]!);
        if (day === 33) await coldSnap(house, farm);
        if (day === HALF) half = await planOf();
      }

      const all = await house.get<{ facts: ToldFact[]; total: number }>(
        `${farm}/told?history=true&take=1000`,
      );
      // What was changed of rows is kept beside what was told: the late box, and the paddock that was lost.
      const changes = all.facts.filter(({ kind }) => kind === 'row-changed');
      const fields = changes.flatMap(({ details }) =>
        'fields' in details ? details.fields.map(({ field }) => field) : [],
      );
      expect(fields.toSorted()).toEqual(['arrivalDate', 'closedDays']);
      const keys = all.facts.filter((fact) => !changes.includes(fact)).map(({ key }) => key);
      expect(new Set(keys).size).toBe(keys.length);
      expect([...keys].sort()).toEqual([...told].sort());
      for (const key of house.acknowledged) expect(keys).toContain(key);
      expect(house.kills).toBe(KILLS);

      const went = await house.get<HowItWent>(`${farm}/record/batches/${batchId}`);
      const actual = (line: string) => went.lines.find((each) => each.id === line)?.actual;
      expect(actual('came')).toBe(IN_BOX - DEAD_IN_BOX);
      expect(actual('lost')).toBe(DIED);
      expect(actual('processed')).toBe(PROCESSED);
      expect(actual('given')).toBe(GIVEN);
      const counts = await house.get<YearCounts>(`${farm}/record/years/2027`);
      expect(counts.birds).toEqual({
        ...{ came: IN_BOX - DEAD_IN_BOX, died: DIED, processed: PROCESSED },
        ...{ sold: SOLD, given: GIVEN },
      });
      expect(counts.money).toEqual({ taken: SOLD_CENTS, spent: SPENT_CENTS });

      process.stdout.write(beside(asOrdered, half!, went));
      // Half-way the plan knows who came and died, so that it cannot be off by more than later losses.
      const later = DEATHS[31]![1] + DEATHS[44]![1] + GIVEN + SOLD;
      const atHalf = half!.birds.atEnd.value;
      expect(Math.abs(atHalf - PROCESSED)).toBeLessThanOrEqual(later);
      expect(Math.abs(atHalf - PROCESSED)).toBeLessThan(
        Math.abs(asOrdered.birds.atEnd.value - PROCESSED),
      );
    },
    TIME_MS,
  );
});

/** Kills lie evenly over the days; more of them than days fall on the same ones. */
const isKillDay = (day: number): number =>
  Math.floor(((day + 1) * KILLS) / (DAYS + 1)) - Math.floor((day * KILLS) / (DAYS + 1));

/** Sends all at once, each again until it is acknowledged, with so many kills in the middle. */
async function sendAll(
  house: SeasonHouse,
  farmId: string,
  facts: readonly PhoneFact[],
  kills: number,
): Promise<void> {
  for (let kill = 0; kill < kills; kill++) {
    const sending = Promise.all(facts.map((fact) => house.tell(farmId, fact)));
    await new Promise((done) => setTimeout(done, 2 * (kill + 1)));
    await house.killWhile(sending);
  }
  for (const fact of facts) expect(await house.tell(farmId, fact)).toBe(true);
}

/** A paddock is under water for three weeks: nobody grazes it. */
async function loseOak(house: SeasonHouse, farm: string, oakId: string): Promise<void> {
  const oak = await house.get<Paddock>(`${farm}/paddocks/${oakId}`);
  const closed = { from: house.today, to: addDays(house.today, 21), why: 'wet' };
  await house.put(`${farm}/paddocks/${oakId}`, {
    ...withoutId(oak),
    closedDays: [closed],
  });
  const { moves } = await house.get<{ moves: { paddockId: string; from: string }[] }>(
    `${farm}/pasture/plan`,
  );
  expect(moves.filter(({ paddockId, from }) => paddockId === oakId && from <= closed.to)).toEqual(
    [],
  );
}

/** Three nights of frost that were not to be expected: tonight's low is what is forecast. */
async function coldSnap(house: SeasonHouse, farm: string): Promise<void> {
  const days = [0, 1, 2, 3].map((k) => ({ date: addDays(house.today, k), minC: -1, maxC: 9 }));
  await house.put(`${farm}/weather/forecast`, { days });
  const today = await house.get<TickedToday>(`${farm}/today`);
  expect(today.weather.tonight.value).toBe(-1);
}

const withoutId = <T extends { id?: unknown }>(saved: T): object => {
  const { id: _id, ...rest } = saved;
  return rest;
};
