import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
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
    expect(await app.source.query('SELECT * FROM migrations')).toHaveLength(1);
    expect(await app.source.showMigrations()).toBe(false); // none is waiting
  });

  it('make the tables that the entities describe, with nothing left to change', async () => {
    const { upQueries } = await app.source.driver.createSchemaBuilder().log();
    expect(upQueries.map((each) => each.query)).toEqual([]);
  });

  it('take every table away again, and make them anew', async () => {
    await app.source.undoLastMigration();
    expect(await tables()).toEqual([]);
    await app.source.runMigrations();
    expect(await tables()).toEqual([...TABLES]);
    await app.api.post('/api/farms').send(newFarm()).expect(201);
    expect((await app.counts()).farms).toBe(1);
  });
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
      expect(await second.contents()).toBe(saved);
      expect((await second.counts()).published_tables).toBe(20);
      await second.close();
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
