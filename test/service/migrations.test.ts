import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { MIGRATIONS } from '../../src/database/data-source.js';
import { openApp, startApp, TABLES, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { newFarm } from '../support/factories.js';

describe.each(databases())('migrations on $name', (database) => {
  let app: TestApp;

  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  const tables = async (): Promise<string[]> => {
    const runner = app.source.createQueryRunner();
    try {
      const there: string[] = [];
      for (const name of TABLES) if (await runner.hasTable(name)) there.push(name);
      return there;
    } finally {
      await runner.release();
    }
  };

  it('make every table from nothing at the start', async () => {
    expect(await tables()).toEqual([...TABLES]);
    expect(await app.source.query('SELECT * FROM migrations')).toHaveLength(MIGRATIONS.length);
    expect(await app.source.showMigrations()).toBe(false); // none is waiting
  });

  it('make the tables that the entities describe, with nothing left to change', async () => {
    const { upQueries } = await app.source.driver.createSchemaBuilder().log();
    expect(upQueries.map((each) => each.query)).toEqual([]);
  });

  it('take every table away again, and make them anew', async () => {
    for (const _each of MIGRATIONS) await app.source.undoLastMigration();
    expect(await tables()).toEqual([]);
    await app.source.runMigrations();
    expect(await tables()).toEqual([...TABLES]);
    await app.api.post('/api/farms').send(newFarm()).expect(201);
    expect((await app.counts()).farms).toBe(1);
  });
});

describe.each(databases())('an update on $name', (database) => {
  it('keeps farms made before there was grass, with all that belongs to them', async () => {
    const app = await openApp(database);
    try {
      for (let k = 1; k < MIGRATIONS.length; k++) await app.source.undoLastMigration();
      const farm = { ...newFarm(), id: 'old-farm' };
      const columns = Object.keys(farm);
      const values = Object.values(farm).map((v) =>
        typeof v === 'number' ? String(v) : `'${typeof v === 'string' ? v : JSON.stringify(v)}'`,
      );
      const named = columns.map((c) => `"${c}"`).join(', ');
      await app.source.query(`INSERT INTO "farms" (${named}) VALUES (${values.join(', ')})`);
      await app.source.query(
        `INSERT INTO "people" ("id", "farmId", "name", "away") VALUES ('p', 'old-farm', 'Adult A', '[]')`,
      );
      await app.source.runMigrations();
      expect(await app.counts()).toMatchObject({ farms: 1, people: 1, paddocks: 0 });
      const { body } = await app.api.get('/api/farms/old-farm').expect(200);
      expect(body).toEqual({ ...farm, isSample: false, revision: 1, version: 1 });
      expect((await app.api.get('/api/farms/old-farm/pasture').expect(200)).body).toMatchObject({
        paddocks: [],
        choices: {},
      });
    } finally {
      await app.close();
    }
  }, 60_000);
});

describe.each(databases())('a second start on $name', (database) => {
  it('finds what the first one saved, and changes nothing', async () => {
    const place = await database.empty();
    try {
      const first = await startApp(place);
      await first.api.post('/api/farms').send(newFarm()).expect(201);
      const saved = await first.contents();
      await first.close();
      const second = await startApp(place);
      try {
        expect(await second.contents()).toBe(saved);
        expect((await second.counts()).published_tables).toBe(31);
      } finally {
        await second.close();
      }
    } finally {
      await place.remove();
    }
  }, 60_000);
});

describe('SQLite', () => {
  const [sqlite] = databases();

  it.each([
    ['journal_mode', 'wal'],
    ['foreign_keys', 1],
    ['synchronous', 2], // FULL: a commit waits for the disk
  ])('runs with %s %s', async (name, expected) => {
    const app = await openApp(sqlite!);
    try {
      expect(await app.source.query(`PRAGMA ${name}`)).toEqual([{ [name]: expected }]);
    } finally {
      await app.close();
    }
  });
});
