import { afterEach, beforeEach, describe, expect, it, jest } from '@jest/globals';
import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { startApp, type TestApp } from '../support/app.js';
import { entriesOf, tablesIn } from '../support/archives.js';
import {
  contentsOf,
  emptyPlace,
  restoreBegun,
  startService,
  terminal,
  withDatabase,
  type Place,
} from '../support/copies.js';
import { dailyCsv, syntheticDays } from '../support/daily-weather.js';
import { databases } from '../support/databases.js';
import { newFarm } from '../support/factories.js';
import { service } from '../support/outside.js';
import { smallJpeg } from '../support/small-jpeg.js';

const { makeBackup, restore, dataSourceOptions, MIGRATIONS } = service;

jest.setTimeout(240_000);

/** Times that bringing back is killed; BACKUP_KILLS asks for more. */
const KILLS = Number(process.env['BACKUP_KILLS'] ?? 1);

/** Sessions of services on this schema. */
const HOLDERS = `SELECT pid FROM pg_locks WHERE locktype = 'advisory' AND mode = 'ShareLock'
  AND objid::bigint = hashtext(current_schema())::bigint & 4294967295`;

describe.each(databases())('a copy of everything on $name', (database) => {
  let place: Place;
  let file: string;

  beforeEach(async () => {
    place = await emptyPlace(database);
    file = join(place.folder, 'copy.zip');
  });
  afterEach(() => place.remove());

  const settings = (): Record<string, string> => ({ DATA_DIR: place.folder });
  const start = (): Promise<TestApp> =>
    startApp(
      {
        env: { DATABASE_URL: place.env['DATABASE_URL'], DATA_DIR: place.folder },
        remove: () => Promise.resolve(),
      },
      settings(),
    );
  const copy = (): Promise<unknown> => withDatabase(place, (source) => makeBackup(source, file));
  const bringBack = () => restore(dataSourceOptions(place.env), file);

  it('brings everything back as it was, and keeps what is there', async () => {
    const app = await start();
    const { body: sample } = await app.api.post('/api/farms/sample').expect(201);
    const photo = `/api/farms/${(sample as { id: string }).id}/photos/${randomUUID()}`;
    const jpeg = smallJpeg(70_000);
    await app.api.put(photo).type('image/jpeg').send(jpeg).expect(204);
    const said = await terminal('backup', place, [file]);
    expect(said).toMatchObject({ code: 0, stderr: '' });
    expect(said.stdout).toMatch(/^Copied 1 farm \(\d+ rows\) to .*copy\.zip \(\d+\.\d MB\)\.\n$/);
    const copied = await app.contents();
    await app.api
      .post('/api/farms')
      .send(newFarm({ name: 'Later' }))
      .expect(201);
    const later = await app.contents();

    const refused = await terminal('restore', place, [file]);
    expect(refused.code).toBe(1);
    expect(refused.stderr).toContain('it is in use. Stop Broodfold');
    expect(await app.contents()).toBe(later);
    await app.close();

    const back = await terminal('restore', place, [file]);
    expect(back).toMatchObject({ code: 0, stderr: '' });
    expect(back.stdout).toMatch(
      /^Brought back 1 farm .* What was there before is kept as .*before/,
    );
    const again = await start();
    expect(await again.contents()).toBe(copied);
    const { body: bytes } = await again.api.get(photo).responseType('blob').expect(200);
    expect(jpeg.equals(bytes as Buffer)).toBe(true);
    await again.close();
  });

  it('is made by itself, whole, before a newer program changes the tables', async () => {
    const app = await start();
    const { body } = await app.api.post('/api/farms').send(newFarm()).expect(201);
    const { id } = body as { id: string };
    await app.api.post(`/api/farms/${id}/people`).send({ name: 'Adult A', away: [] }).expect(201);
    const upToDate = await app.contents();
    for (let k = 1; k < MIGRATIONS.length; k++) await app.source.undoLastMigration();
    await app.close();
    expect(existsSync(join(place.folder, 'backups'))).toBe(false);

    await (await start()).close();
    const [name] = readdirSync(join(place.folder, 'backups'));
    expect(name).toMatch(/^broodfold-before-update-\d{4}-\d\d-\d\d-\d{6}\.zip$/);
    const made = join(place.folder, 'backups', name!);
    const entries = await entriesOf(readFileSync(made));
    expect(tablesIn(entries).has('paddocks')).toBe(false);
    expect(tablesIn(entries).get('people')).toMatchObject([{ name: 'Adult A', farmId: id }]);
    // A second start changes nothing, and copies nothing.
    await (await start()).close();
    expect(readdirSync(join(place.folder, 'backups'))).toEqual([name]);

    await restore(dataSourceOptions(place.env), made);
    const again = await start();
    expect(await again.contents()).toBe(upToDate);
    await again.close();
  });

  it('holds what was answered before it began, in one piece, while twenty write', async () => {
    const service = await startService(place);
    const answered = new Map<number, number>();
    let isOver = false;
    const post = async (path: string, body: object): Promise<{ id: string }> => {
      const response = await fetch(`${service.url}/api${path}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(body),
      });
      expect(response.status).toBe(201);
      return (await response.json()) as { id: string };
    };
    const writers = Array.from({ length: 20 }, async (_each, w) => {
      for (let n = 1; !isOver; n++) {
        await post('/farms', newFarm({ name: `${w}/${n}` }));
        answered.set(w, n);
      }
    });
    while (answered.size < 20) await new Promise((resolve) => setTimeout(resolve, 20));
    const before = new Map(answered);
    const said = await terminal('backup', place, [file]);
    isOver = true;
    await Promise.all(writers);
    expect(said).toMatchObject({ code: 0, stderr: '' });
    await service.kill('SIGTERM');

    const { manifest } = await bringBack();
    expect(manifest.holds).toBe('everything');
    const names = await withDatabase(place, async (source) => {
      if (source.options.type === 'better-sqlite3') {
        expect(await source.query('PRAGMA integrity_check')).toEqual([{ integrity_check: 'ok' }]);
        expect(await source.query('PRAGMA foreign_key_check')).toEqual([]);
      }
      return (await source.query('SELECT "name" FROM "farms"')) as { name: string }[];
    });
    for (let w = 0; w < 20; w++) {
      const own = names.map(({ name }) => name.split('/').map(Number)).filter(([of]) => of === w);
      const numbers = own.map(([, n]) => n!).sort((a, b) => a - b);
      expect(numbers).toEqual(numbers.map((_n, i) => i + 1)); // none is left out
      expect(numbers.length).toBeGreaterThanOrEqual(before.get(w)!);
    }
  });

  it('brings back every answered write of a service that was killed in the middle', async () => {
    const service = await startService(place);
    let answered = 0;
    const writer = (async () => {
      for (let n = 1; ; n++) {
        const response = await fetch(`${service.url}/api/farms`, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify(newFarm({ name: `${n}` })),
        }).catch(() => undefined);
        if (response?.status !== 201) return;
        answered = n;
      }
    })();
    while (answered < 30) await new Promise((resolve) => setTimeout(resolve, 10));
    await service.kill('SIGKILL');
    await writer;
    // The log of the killed service still lies beside its file.
    const count = async (): Promise<number> =>
      withDatabase(place, async (source) =>
        Number(
          ((await source.query('SELECT COUNT(*) AS "n" FROM "farms"')) as { n: unknown }[])[0]!.n,
        ),
      );
    expect(await terminal('backup', place, [file])).toMatchObject({ code: 0 });
    const copied = await contentsOf(place);
    expect(await count()).toBeGreaterThanOrEqual(answered);

    const another = await startService(place);
    await fetch(`${another.url}/api/farms/sample`, { method: 'POST' });
    await another.kill('SIGKILL');
    expect(await terminal('restore', place, [file])).toMatchObject({ code: 0, stderr: '' });
    expect(await contentsOf(place)).toBe(copied);
  });

  it('is there as a whole or not at all when bringing it back is killed', async () => {
    const app = await start();
    const csv = dailyCsv(syntheticDays('2010-01-01', '2019-12-31'));
    const { body } = await app.api
      .post('/api/farms')
      .send(newFarm({ name: 'Copied' }))
      .expect(201);
    await app.api
      .put(`/api/farms/${(body as { id: string }).id}/weather/csv`)
      .set('content-type', 'text/csv')
      .send(csv)
      .expect(200);
    await app.close();
    await copy();
    const copied = await contentsOf(place);
    let begunAt = 0;
    await terminal('restore', place, [file], () => {
      void restoreBegun(place).then(() => (begunAt = performance.now()));
    });
    const spanMs = performance.now() - begunAt;
    // Halved again and again, the time of the kill comes to the moment of the exchange.
    let [tooSoonMs, tooLateMs] = [0, 1.5 * spanMs];
    const outcomes: string[] = [];
    for (let k = 0; k < KILLS; k++) {
      await withDatabase(place, (source) => source.query(`UPDATE "farms" SET "name" = 'Old ${k}'`));
      const old = await contentsOf(place);
      // The first at once: how long the rest takes is another's to say each time.
      const afterMs = k === 0 ? 0 : (tooSoonMs + tooLateMs) / 2;
      await terminal('restore', place, [file], (child) => {
        void restoreBegun(place).then(() => setTimeout(() => child.kill('SIGKILL'), afterMs));
      });
      const found = await contentsOf(place);
      outcomes.push(found === old ? 'old' : found === copied ? 'new' : 'a mixture');
      if (found === old) tooSoonMs = afterMs;
      else tooLateMs = afterMs;
    }
    expect(outcomes).not.toContain('a mixture');
    expect(outcomes).toContain('old');
    expect(await terminal('restore', place, [file])).toMatchObject({ code: 0, stderr: '' });
    expect(await contentsOf(place)).toBe(copied);
    expect(readdirSync(place.folder).filter((name) => name.includes('.restoring'))).toEqual([]);
  });

  // Files and their names are the same for both databases.
  if (database.name === 'SQLite') {
    it('is kept five times before updates; files of other names are nobody else’s business', async () => {
      await (await start()).close();
      const folder = join(place.folder, 'backups');
      mkdirSync(folder, { recursive: true });
      const copyOf = (year: number): string => `broodfold-before-update-${year}-04-21-093005.zip`;
      const years = [2011, 2012, 2013, 2014, 2015, 2016];
      const own = ['broodfold-2010-01-01-000000.zip', 'broodfold-before-update-old.zip', 'a.txt'];
      for (const name of [...years.map(copyOf), ...own]) writeFileSync(join(folder, name), 'x');

      const app = await start();
      await app.source.undoLastMigration();
      await app.close();
      await (await start()).close();

      const names = readdirSync(folder);
      expect(names).toEqual(
        expect.arrayContaining([...own, ...[2013, 2014, 2015, 2016].map(copyOf)]),
      );
      const left = names.filter((name) => /^broodfold-before-update-\d/.test(name));
      expect(left).toHaveLength(5);
      expect(left).not.toContain(copyOf(2012));
      await (await start()).close();
      expect(readdirSync(folder)).toEqual(names);
    });

    it('is refused when it is not whole, and nothing is touched', async () => {
      const app = await start();
      const { body } = await app.api.post('/api/farms').send(newFarm()).expect(201);
      const farm = await app.api
        .get(`/api/farms/${(body as { id: string }).id}/archive`)
        .responseType('blob');
      await app.close();
      await copy();
      const bytes = readFileSync(file);
      const before = await contentsOf(place);
      const refusal = async (content: Buffer | string): Promise<string> => {
        writeFileSync(file, content);
        return bringBack().then(
          () => 'brought back',
          (error: Error) => error.message,
        );
      };
      expect(await refusal(bytes.subarray(0, bytes.length / 2))).toContain('it was cut off');
      expect(await refusal('not a zip')).toContain('it is no file of Broodfold');
      expect(await refusal(farm.body as Buffer)).toContain(
        'it holds one farm, not a whole database',
      );
      const flipped = Buffer.from(bytes);
      flipped[200]! ^= 1;
      expect(await refusal(flipped)).toContain('it is damaged');
      expect(await contentsOf(place)).toBe(before);
      await expect(copy()).rejects.toThrow('there is such a file already');
      const missing = await terminal('restore', place, [`${file}.none`]);
      expect(missing.stderr).toContain('there is no such file');
      expect((await terminal('restore', place)).code).toBe(2);
    });

    it('takes the place of a file that is no database any more, which is kept with its log', async () => {
      const app = await start();
      await app.api.post('/api/farms/sample').expect(201);
      await app.close();
      await copy();
      const copied = await contentsOf(place);
      const main = join(place.folder, 'broodfold.sqlite');
      writeFileSync(main, 'rubbish '.repeat(1000));
      writeFileSync(`${main}-wal`, 'old log');
      const { keptAs } = await bringBack();
      expect(await contentsOf(place)).toBe(copied);
      expect(readFileSync(keptAs!, 'utf8')).toMatch(/^rubbish/);
      expect(readFileSync(`${keptAs!}-wal`, 'utf8')).toBe('old log');
    });
  }

  // On SQLite the open file itself says that the service runs.
  if (database.name === 'PostgreSQL')
    it('is refused while the service runs, also after the server cut its connection', async () => {
      const app = await start();
      await copy();
      const holders = async (): Promise<number[]> => {
        const rows = (await app.source.query(HOLDERS)) as { pid: number }[];
        return rows.map(({ pid }) => pid);
      };
      const [first] = await holders();
      await app.source.query('SELECT pg_terminate_backend($1)', [first]);
      while ((await holders()).every((pid) => pid === first))
        await new Promise((resolve) => setTimeout(resolve, 100));
      await expect(bringBack()).rejects.toThrow('it is in use. Stop Broodfold');
      await app.close();
      await bringBack();
    });
});
