import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Batch } from '../../shared/farm/batch.js';
import type { Saved } from '../../shared/farm/saved.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { batchBody, brooderBody, inDays, saveFarm, type SavedFarm } from '../support/orders.js';

/** What is kept of a mishap, and what puts it back. */
interface Kept {
  readonly keep: () => Promise<unknown>;
  readonly undo: () => Promise<unknown>;
}

describe.each([anyDatabase()])('a season that goes wrong on $name', (database) => {
  let app: TestApp;
  let farm: SavedFarm;
  let here: Saved<Batch>;
  let coming: Saved<Batch>;
  let personId: string;
  let paddockId: string;

  beforeAll(async () => {
    app = await openApp(database);
    farm = await saveFarm(app);
    const { id: brooderId } = await post<{ id: string }>('facilities', brooderBody());
    here = await post('batches', {
      ...batchBody({ name: 'Here', arrivalDate: inDays(-9), orderedBirds: 60, brooderId }),
    });
    coming = await post('batches', {
      ...batchBody({ name: 'Coming', arrivalDate: inDays(6), orderedBirds: 40 }),
      ...{ processing: 'hired', slotDate: inDays(62) },
    });
    const person = { name: 'Ann', away: [], hoursByWeekday: [4, 4, 4, 4, 4, 8, 8] };
    personId = (await post<{ id: string }>('people', person)).id;
    const paddock = {
      ...{ name: 'Bottom', areaM2: 9000, forageId: 'orchardgrass-legume', stand: 'good' },
      ...{ productivity: 'medium', soilId: 'loam', hasWater: true, hasShade: true, closedDays: [] },
    };
    paddockId = (await post<{ id: string }>('paddocks', paddock)).id;
    await post('paddocks', { ...paddock, name: 'Top' });
    await post('herds', { name: 'Steers', groups: [{ classId: 'stocker', head: 4 }] });
    // Somebody else's entry, which nothing of it may lose.
    await tell({ kind: 'arrived', about: here.id, on: inDays(-9), details: { birds: 60 } });
    await tell({ kind: 'note', about: here.id, on: inDays(0), details: { text: 'Ben was here.' } });
  }, 60_000);
  afterAll(() => app.close());

  const post = async <T>(what: string, body: object): Promise<T> =>
    (await app.api.post(`${farm.path}/${what}`).send(body).expect(201)).body as T;
  const tell = async (fact: object): Promise<string> =>
    (await post<{ id: string }[]>('told', { facts: [fact] }))[0]!.id;
  const rowOf = async (path: string): Promise<object> => {
    const { version: _version, ...row } = (await app.api.get(`${farm.path}/${path}`).expect(200))
      .body as { version: number };
    return row;
  };
  /** A row with something else in it, and as it was. */
  const changing = (path: () => string, more: object): Kept => {
    let was: object = {};
    const put = (row: object) => app.api.put(`${farm.path}/${path()}`).send(row).expect(200);
    return {
      keep: async () => put({ ...(was = await rowOf(path())), ...more }),
      undo: () => put(was),
    };
  };
  const telling = (fact: () => object): Kept => {
    let id = '';
    return {
      keep: async () => (id = await tell(fact())),
      undo: () => app.api.delete(`${farm.path}/told/${id}`).expect(204),
    };
  };

  /** All that is planned of birds and grass, and with the day what of it is done today. */
  const plans = async (...more: readonly string[]): Promise<string> => {
    const paths = [`batches/${here.id}/plan`, `batches/${coming.id}/plan`, 'pasture/plan', ...more];
    const read = async (path: string): Promise<unknown> =>
      (await app.api.get(`${farm.path}/${path}`).expect(200)).body;
    const all: unknown[] = [];
    for (const path of paths) all.push(await read(path));
    return JSON.stringify(all);
  };

  it.each<[string, Kept]>([
    [
      'a box two days late with six dead',
      telling(() => ({
        ...{ kind: 'arrived', about: here.id, on: inDays(-7) },
        details: { birds: 60, dead: 6 },
      })),
    ],
    ['a short shipment', changing(() => `batches/${coming.id}`, { orderedBirds: 30 })],
    ['a box moved by two days', changing(() => `batches/${coming.id}`, { arrivalDate: inDays(8) })],
    [
      'the day of the processor moved',
      changing(() => `batches/${coming.id}`, { slotDate: inDays(66) }),
    ],
    [
      'a heater that failed',
      telling(() => ({
        ...{ kind: 'heat-works', about: here.id, on: inDays(0) },
        details: { working: 0, of: 2 },
      })),
    ],
    [
      'cold nights that keep birds in',
      changing(() => `batches/${here.id}`, { moveOutDate: inDays(30) }),
    ],
    [
      'heat at finishing that has them go sooner',
      changing(() => `batches/${here.id}`, { leaveAgeDays: 43 }),
    ],
    [
      'a paddock flooded',
      changing(() => `paddocks/${paddockId}`, {
        closedDays: [{ from: inDays(0), to: inDays(300), why: 'wet' }],
      }),
    ],
    [
      'somebody ill',
      changing(() => `people/${personId}`, {
        away: [{ from: inDays(0), to: inDays(4), isIll: true }],
      }),
    ],
  ])(
    '%s: what is kept shows in the plan, and undone it is as it was',
    async (_, { keep, undo }) => {
      const facts = async (): Promise<number> =>
        (await app.rows('told_facts')).filter(({ kind }) => kind === 'note' || kind === 'arrived')
          .length;
      const [before, day, told] = [await plans(), await plans('today'), await facts()];
      await keep();
      expect(await plans('today')).not.toBe(day);
      expect(await facts()).toBeGreaterThanOrEqual(told);
      await undo();
      expect(JSON.parse(await plans())).toEqual(JSON.parse(before));
      // The work of the day as well, though it keeps to the days it was laid on last.
      expect(JSON.parse(await plans('today'))).toEqual(JSON.parse(day));
      const notes = await app.rows('told_facts', { kind: 'note' });
      expect(notes).toHaveLength(1);
      expect(notes[0]!['takenBackAt'] ?? null).toBeNull();
    },
    60_000,
  );
});
