import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Turns } from '../../../src/work-pool/turns.js';
import { openApp, type TestApp } from '../../support/app.js';
import { anyDatabase } from '../../support/databases.js';
import { inManyParts } from '../../support/many-parts.js';
import { newPaddocks, newPastureRequest } from '../../support/pasture-factories.js';
import { newPicture } from '../../support/pictures.js';
import { service } from '../../support/outside.js';

const { AskerGone, TablesService, WorkPool } = service;

const MANY = 160;

describe('the pool', () => {
  let pool: InstanceType<typeof WorkPool>;
  beforeAll(() => {
    pool = new WorkPool(new TablesService());
  });
  afterAll(() => pool.onModuleDestroy());

  it('ends the thread of work whose asker has gone, and does the next work', async () => {
    const controller = new AbortController();
    // So much land that its plan takes a while.
    const { farm, climate, today, paddocks, herds } = newPastureRequest({
      paddocks: newPaddocks(MANY),
    });
    const input = newPicture({ farm, climate, today, paddocks, herds });
    await pool.run('planPasture', input); // the thread is warm
    const running = pool.run('planPasture', input, { signal: controller.signal, turn: 'a' });
    setTimeout(() => controller.abort(new AskerGone()), 20);
    await expect(running).rejects.toThrow(AskerGone);
    expect((await pool.run('planPasture', input)).moves.length).toBeGreaterThan(0);
  }, 60_000);

  it('gives the problems of an input as field problems', async () => {
    const input = { text: 'date,tmin_c', today: '2027-01-01' };
    await expect(pool.run('parseDailyCsv', input)).rejects.toMatchObject({
      problems: [{ field: 'csv.header' }],
    });
  }, 60_000);
});

describe('a request whose asker goes', () => {
  let app: TestApp;
  let path: string;
  beforeAll(async () => {
    app = await openApp(anyDatabase());
    path = `/api/farms/${((await app.api.post('/api/farms/sample')).body as { id: string }).id}`;
    await inManyParts(app, path);
  }, 60_000);
  afterAll(() => app.close());

  /** Collects the signals of all that the pool is asked to do from now on. */
  const watchPool = (): { signals: AbortSignal[]; stop: () => void } => {
    const signals: AbortSignal[] = [];
    const { turns } = app.nest.get(WorkPool) as unknown as { turns: Turns };
    const take = turns.take.bind(turns);
    const spy = jest.spyOn(turns, 'take').mockImplementation((who, work, signal) => {
      signals.push(signal);
      return take(who, work, signal);
    });
    return { signals, stop: () => spy.mockRestore() };
  };
  const until = async (isSo: () => boolean): Promise<void> => {
    while (!isSo()) await new Promise((resolve) => setTimeout(resolve, 5));
  };

  it('stops its work, unless another waits for the same', async () => {
    const [one, two] = [new AbortController(), new AbortController()];
    const { signals, stop } = watchPool();
    const asked = [one, two].map(({ signal }) =>
      fetch(`${app.url}${path}/pasture/plan`, { signal }).catch((error: unknown) => error),
    );
    await until(() => 0 < signals.length);
    await new Promise((resolve) => setTimeout(resolve, 100)); // both have asked
    one.abort();
    await asked[0];
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(signals.map(({ aborted }) => aborted)).toEqual([false]);
    two.abort();
    await asked[1];
    await until(() => signals[0]!.aborted);
    stop();
    await app.api.get(`${path}/pasture/plan`).expect(200);
  }, 60_000);
});
