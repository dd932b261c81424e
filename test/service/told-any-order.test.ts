import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import fc from 'fast-check';
import type { HowItWent } from '../../shared/plan/record/how-it-went.js';
import type { ToldFact } from '../../shared/farm/told-fact.js';
import type { ToldPage } from '../../src/told/facts-of-farm.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { batchBody, inDays, saveFarm } from '../support/orders.js';
import { newPaddock } from '../support/pasture-factories.js';
import { expectProblem } from '../support/problem.js';

jest.setTimeout(240_000);

/** Orders that are tried; ORDERS asks for more. */
const ORDERS = Number(process.env['ORDERS'] ?? 3);

interface Entry {
  readonly phone: number;
  readonly kind: ToldFact['kind'];
  readonly about: 'hens' | 'paddock' | 'farm';
  readonly day: number;
  readonly details: object;
  /** Of two that cannot both be so the larger is said to hold, whoever is asked. */
  readonly size: number;
}

/** What a household tells of a day, in the numbers that a flock of fifty allows. */
const said = fc.integer({ min: 1, max: 4 }).chain((size) => {
  const money = `${size}.0${size}`;
  return fc.constantFrom(
    { kind: 'died', about: 'hens', size, details: { birds: size } },
    { kind: 'eggs-counted', about: 'hens', size, details: { days: 1, eggs: 20 + size } },
    { kind: 'eggs-gone', about: 'hens', size, details: { eggs: size, how: 'sold', money } },
    { kind: 'eggs-gone', about: 'hens', size, details: { eggs: size, how: 'given' } },
    { kind: 'gone', about: 'hens', size, details: { birds: 1, how: 'sold', money } },
    { kind: 'bought', about: 'farm', size, details: { what: 'hay', amount: size, money } },
    { kind: 'grass-reading', about: 'paddock', size, details: { heightCm: 10 + size } },
  );
});
const entryOf = (phone: number): fc.Arbitrary<Entry> =>
  fc
    .tuple(said, fc.integer({ min: -9, max: -7 }))
    .map(([of, day]) => ({ phone, day, ...of }) as Entry);
/** A phone tells each thing of a day once. */
const phoneOf = (phone: number): fc.Arbitrary<Entry[]> =>
  fc.uniqueArray(entryOf(phone), {
    selector: ({ kind, day }) => `${kind} ${day}`,
    minLength: 3,
    maxLength: 7,
  });
/** What two phones tell, in turn; and in some other order, with some of it sent again. */
const inTwoOrders = fc.tuple(phoneOf(1), phoneOf(2)).chain(([one, other]) => {
  const all = [...one, ...other];
  return fc.tuple(
    fc.constant(all),
    fc
      .subarray(all)
      .chain((again) =>
        fc.shuffledSubarray([...all, ...again], { minLength: all.length + again.length }),
      ),
  );
});

describe.each(databases())('what two phones tell, in any order, on $name', (database) => {
  let app: TestApp;
  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  const get = async <T>(path: string): Promise<T> =>
    (await app.api.get(path).expect(200)).body as T;

  /** A farm of its own that is told those entries, and what it holds and shows then. */
  async function recordOf(order: readonly Entry[], all: readonly Entry[]) {
    const { path } = await saveFarm(app);
    const make = async (what: string, body: object): Promise<string> => {
      const answer = await app.api.post(`${path}/${what}`).send(body).expect(201);
      return (answer.body as { id: string }).id;
    };
    const layers = { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' } as const;
    const { id: _id, ...paddock } = newPaddock({ name: 'Oak' });
    const ids = {
      hens: await make(
        'batches',
        batchBody({ ...layers, name: 'Hens', arrivalDate: inDays(-300) }),
      ),
      paddock: await make('paddocks', paddock),
      farm: 'farm',
    };
    const { headers } = await app.api.get(`${path}/told?take=1`).expect(200);
    const until = headers['asked-at'] as string;
    const asked = new Set<string>();
    for (const entry of order) {
      const key = `${entry.phone}-${all.indexOf(entry)}`;
      const fact = {
        ...{ kind: entry.kind, about: ids[entry.about], on: inDays(entry.day), key },
        details: entry.details,
      };
      const tell = (seen: string) =>
        app.api.post(`${path}/told`).send({ facts: [{ ...fact, seen: { until: seen } }] });
      const answer = await tell(until);
      if (answer.status === 409) {
        const before = await get<ToldPage>(`${path}/told?take=1000&history=true`);
        const { current } = expectProblem(answer, 409) as unknown as { current: ToldFact[] };
        expect(before.facts.map(({ key: told }) => told)).not.toContain(key);
        asked.add([key, current[0]!.key].sort().join());
        const theirs = all[Number(current[0]!.key.slice(2))]!;
        if (theirs.size < entry.size) await tell(current[0]!.toldAt).expect(201);
      } else expect(answer.status).toBe(201);
    }
    const { facts } = await get<ToldPage>(`${path}/told?take=1000`);
    const years = [...new Set([inDays(-9), inDays(0)].map((on) => on.slice(0, 4)))];
    const named = (answer: unknown): unknown =>
      JSON.parse(
        Object.entries(ids)
          .reduce((text, [name, id]) => text.replaceAll(id, name), JSON.stringify(answer))
          .replaceAll(path.slice('/api/farms/'.length), 'the farm'),
      );
    return {
      asked: asked.size,
      held: named(
        facts.map(({ kind, about, on, details }) => [kind, about, on, details]).toSorted(byText),
      ),
      years: named(await Promise.all(years.map((year) => get(`${path}/record/years/${year}`)))),
      batches: named(await get<HowItWent[]>(`${path}/record/batches`)),
      today: named(await get(`${path}/today`)),
    };
  }

  it('is the same record, year and day, with as many questions asked and none guessed', async () => {
    const property = fc.asyncProperty(inTwoOrders, async ([all, order]) => {
      const record = await recordOf(order, all);
      expect(record).toEqual(await recordOf(all, all));
      const clashes = all.filter(
        (a) =>
          ['eggs-counted', 'grass-reading'].includes(a.kind) &&
          all.some(
            (b) => b.phone < a.phone && b.kind === a.kind && b.day === a.day && b.size !== a.size,
          ),
      );
      expect(record.asked).toBe(clashes.length);
    });
    await fc.assert(property, { numRuns: ORDERS });
  });
});

const byText = (a: unknown, b: unknown): number => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1);
