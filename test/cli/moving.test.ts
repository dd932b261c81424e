import { afterEach, beforeEach, describe, expect, it, jest } from '@jest/globals';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { startApp, type TestApp } from '../support/app.js';
import { entriesOf, tablesIn } from '../support/archives.js';
import { emptyPlace, terminal, type Place } from '../support/copies.js';
import { databases } from '../support/databases.js';
import { dailyCsv, syntheticDays } from '../support/daily-weather.js';
import { inDays } from '../support/orders.js';

jest.setTimeout(240_000);

const PAIRS = databases().flatMap((from) => databases().map((to) => ({ from, to })));

describe.each(PAIRS)('a copy of $from.name brought back into $to.name', ({ from, to }) => {
  let [here, there]: Place[] = [];
  beforeEach(async () => {
    here = await emptyPlace(from);
    there = await emptyPlace(to);
  });
  afterEach(async () => {
    await here!.remove();
    await there!.remove();
  });

  const start = ({ env, folder }: Place): Promise<TestApp> =>
    startApp(
      {
        env: { DATABASE_URL: env['DATABASE_URL'], DATA_DIR: folder },
        remove: () => Promise.resolve(),
      },
      { DATA_DIR: folder },
    );

  /** A copy of everything in a place, by table, each with its rows in one order. */
  const copyOf = async (place: Place, name: string): Promise<[string, string[]][]> => {
    const file = join(place.folder, name);
    expect(await terminal('backup', place, [file])).toMatchObject({ code: 0, stderr: '' });
    const tables = tablesIn(await entriesOf(readFileSync(file)));
    return [...tables]
      .map(([table, rows]): [string, string[]] => [
        table,
        rows.map((row) => JSON.stringify(Object.entries(row).sort())).sort(),
      ])
      .sort(([a], [b]) => (a < b ? -1 : 1));
  };

  it('holds the same in every table, plans the same, and can be changed', async () => {
    const app = await start(here!);
    const { body } = await app.api.post('/api/farms/sample').expect(201);
    const path = `/api/farms/${(body as { id: string }).id}`;
    const csv = dailyCsv(syntheticDays('2022-01-01', '2024-12-31'));
    await app.api.put(`${path}/weather/csv`).set('content-type', 'text/csv').send(csv).expect(200);
    await app.api
      .post(`${path}/people`)
      .send({ name: 'Ünïcode 🐓 "quoted"', away: [{ from: inDays(3), to: inDays(4) }] })
      .expect(201);
    const picture = (await app.api.get(`${path}/picture`).expect(200)).body as object;
    await app.close();
    const copied = await copyOf(here!, 'copy.zip');
    expect(copied.map(([table]) => table)).toContain('told_facts');

    const moved = await terminal('restore', there!, [join(here!.folder, 'copy.zip')]);
    expect(moved).toMatchObject({ code: 0, stderr: '' });
    expect(await copyOf(there!, 'again.zip')).toEqual(copied);
    const again = await start(there!);
    expect((await again.api.get(`${path}/picture`).expect(200)).body).toEqual(picture);
    await again.api.post(`${path}/people`).send({ name: 'New', away: [] }).expect(201);
    await again.api.delete(path).expect(204);
    expect((await again.counts()).people).toBe(0);
    await again.close();
  });
});
