import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { ToldFact } from '../../shared/farm/told-fact.js';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';

/**
 * What an entry asks of the database, counted: times say nothing on a busy machine, and each
 * statement is a way there and back. The transaction's beginning and end are among them. On SQLite
 * only the connection that writes is counted.
 */
describe.each(databases())('an entry on $name', (database) => {
  let app: TestApp;
  let path: string;
  let batch: string;
  let herd: string;
  let paddocks: string[];
  let today: string;
  let statements: string[] = [];

  beforeAll(async () => {
    app = await openApp(database);
    const { body } = await app.api.post('/api/farms/sample').expect(201);
    path = `/api/farms/${(body as { id: string }).id}`;
    const get = async <T>(what: string): Promise<T> =>
      (await app.api.get(`${path}/${what}`).expect(200)).body as T;
    ({ today } = await get<{ today: string }>('picture'));
    const batches = await get<{ id: string; arrivalDate: string }[]>('batches');
    batch = batches.find(({ arrivalDate }) => arrivalDate < today)!.id;
    herd = (await get<{ id: string }[]>('herds'))[0]!.id;
    paddocks = (await get<{ id: string }[]>('paddocks')).map(({ id }) => id);
    const { logger } = app.source;
    logger.logQuery = (query) => void statements.push(query);
  }, 60_000);
  afterAll(() => app.close());

  const tell = async (kind: ToldFact['kind'], about: string, details: object): Promise<void> => {
    const fact = { kind, about, on: today, details };
    await app.api
      .post(`${path}/told`)
      .send({ facts: [fact] })
      .expect(201);
  };
  /** Statements of a second time: what is remembered of the first need not be read again. */
  async function countOf(work: (time: number) => PromiseLike<unknown>): Promise<number> {
    await work(0);
    statements = [];
    await work(1);
    expect(statements.length).toBeGreaterThan(0);
    return statements.length;
  }

  it('that no plan goes by is seven statements', async () => {
    expect(await countOf(() => tell('water-drunk', batch, { liters: 9 }))).toBeLessThanOrEqual(7);
  });

  it('that plans go by is eight at most', async () => {
    const weigh = () => tell('weighed', batch, { birds: 5, averageKg: 2 });
    expect(await countOf(weigh)).toBeLessThanOrEqual(8);
    expect(await countOf(() => tell('died', batch, { birds: 1 }))).toBeLessThanOrEqual(8);
  });

  it('of a move is eight', async () => {
    const move = (time: number) => tell('herd-move', herd, { paddockId: paddocks[1 + time]! });
    expect(await countOf(move)).toBeLessThanOrEqual(8);
  });

  it('with its batch beside its plan is seventeen', async () => {
    const both = async (): Promise<void> => {
      await tell('weighed', batch, { birds: 5, averageKg: 2 });
      await app.api.get(`${path}/record/batches/${batch}`).expect(200);
    };
    expect(await countOf(both)).toBeLessThanOrEqual(17);
  });
});
