import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { DataSource } from 'typeorm';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { ToldPage } from '../../src/told/facts-of-farm.js';
import { openApp, startApp, TABLES, type Row, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { newBatch, newFarm } from '../support/factories.js';
import { saveFarm } from '../support/orders.js';
import { newHerd, newPaddock } from '../support/pasture-factories.js';
import { service } from '../support/outside.js';

const { MIGRATIONS, EggsCounted1798002000000, WordsOfRows1796600000000 } = service;

async function tablesIn(app: TestApp): Promise<string[]> {
  const runner = app.source.createQueryRunner();
  try {
    const there: string[] = [];
    for (const name of TABLES) if (await runner.hasTable(name)) there.push(name);
    return there;
  } finally {
    await runner.release();
  }
}

/** The first column of each index of a table, its key included. */
async function firstsOnSqlite(source: DataSource, table: string): Promise<string[]> {
  const rows: { first: string }[] = await source.query(
    `SELECT i."name" AS "first" FROM pragma_index_list('${table}') AS l,
      pragma_index_info(l."name") AS i WHERE i."seqno" = 0`,
  );
  return rows.map(({ first }) => first);
}

async function firstsOnPostgres(source: DataSource, table: string): Promise<string[]> {
  const rows: { first: string }[] = await source.query(
    `SELECT a.attname AS "first" FROM pg_index i
      JOIN pg_attribute a ON a.attrelid = i.indrelid AND a.attnum = i.indkey[0]
      WHERE i.indrelid = $1::regclass AND i.indpred IS NULL`,
    [`"${table}"`],
  );
  return rows.map(({ first }) => first);
}

describe.each(databases())('migrations on $name', (database) => {
  let app: TestApp;

  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  const tables = (): Promise<string[]> => tablesIn(app);

  it('make every table from nothing at the start', async () => {
    expect(await tables()).toEqual([...TABLES]);
    expect(await app.source.query('SELECT * FROM migrations')).toHaveLength(MIGRATIONS.length);
    expect(await app.source.showMigrations()).toBe(false); // none is waiting
  });

  it('make the tables that the entities describe, with nothing left to change', async () => {
    const { upQueries } = await app.source.driver.createSchemaBuilder().log();
    expect(upQueries.map((each) => each.query)).toEqual([]);
  });

  it('index every table that belongs to farms by its farm first', async () => {
    const { source } = app;
    const isSqlite = source.options.type === 'better-sqlite3';
    const without: string[] = [];
    let ofFarms = 0;
    for (const table of TABLES) {
      const columns = source.entityMetadatas.find(({ tableName }) => tableName === table)!.columns;
      if (!columns.some(({ databaseName }) => databaseName === 'farmId')) continue;
      ofFarms += 1;
      const firsts = isSqlite
        ? await firstsOnSqlite(source, table)
        : await firstsOnPostgres(source, table);
      if (!firsts.includes('farmId')) without.push(table);
    }
    expect(without).toEqual([]);
    expect(ofFarms).toBe(TABLES.length - 1); // all but the farms themselves
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
      expect((await app.api.get('/api/farms/old-farm/picture').expect(200)).body).toMatchObject({
        paddocks: [],
        pastureChoices: {},
      });
    } finally {
      await app.close();
    }
  }, 60_000);
});

describe.each(databases())('the move of all that was told into one table on $name', (database) => {
  it('loses nothing, there and back', async () => {
    const app = await openApp(database);
    const all = async (sql: string): Promise<unknown[]> =>
      (await app.source.query(sql)) as unknown[];
    const yes = database.name === 'SQLite' ? '1' : 'true';
    const old = [
      `SELECT "id", "paddockId", CAST("date" AS text) AS "date", "heightCm" FROM "grass_readings" ORDER BY "id"`,
      `SELECT "key", "details" FROM "work_marks" ORDER BY "key"`,
      `SELECT CAST("date" AS text) AS "date", "isWorkable" FROM "ground_looks" ORDER BY "date"`,
      `SELECT "id", "details" FROM "herds" ORDER BY "id"`,
    ];
    try {
      const { body } = await app.api.post('/api/farms').send(newFarm()).expect(201);
      const { id } = body as { id: string };
      const undoTold = async (): Promise<void> => {
        while ((await tablesIn(app)).includes('told_facts')) await app.source.undoLastMigration();
      };
      await undoTold();
      const insert = (table: string, columns: string, rows: readonly string[]) =>
        app.source.query(
          `INSERT INTO "${table}" (${columns}) VALUES ${rows.map((row) => `(${row})`).join(', ')}`,
        );
      await insert('paddocks', '"id", "farmId", "name", "details"', [
        `'p1', '${id}', 'A', '${JSON.stringify({ ...newPaddock(), id: undefined, name: undefined })}'`,
      ]);
      const herd = { groups: newHerd().groups };
      const inP1 = { ...herd, inPaddockId: 'p1', inSince: '2026-05-01' };
      await insert('herds', '"id", "farmId", "name", "details"', [
        `'h1', '${id}', 'Cows', '${JSON.stringify(inP1)}'`,
        `'h2', '${id}', 'Heifers', '${JSON.stringify(herd)}'`,
      ]);
      await insert(
        'grass_readings',
        '"id", "farmId", "paddockId", "date", "heightCm"',
        Array.from({ length: 500 }, (_, k) => {
          const date = addDays('2024-01-01', k);
          return `'r${k}', '${id}', 'p1', '${date}', ${5 + (k % 20) / 2}`;
        }),
      );
      await insert('work_marks', '"farmId", "key", "details"', [
        `'${id}', 'own/x', '{"doneOn":"2026-04-01","hours":2}'`,
        `'${id}', 'batch/b/feed.1', '{"notBefore":"2026-12-24"}'`,
        `'${id}', 'no shape at all', '{"hoursDone":1}'`,
      ]);
      await insert('ground_looks', '"farmId", "date", "isWorkable"', [
        `'${id}', '2026-04-02', ${yes}`,
        `'${id}', '2026-04-03', ${yes}`,
      ]);
      const before = await Promise.all(old.map(all));
      await app.source.runMigrations();
      expect(await tablesIn(app)).toEqual([...TABLES]);
      expect(await app.counts()).toMatchObject({ told_facts: 506 });
      const readings = (await app.api.get(`/api/farms/${id}/grass-readings`).expect(200)).body;
      expect(readings).toHaveLength(500);
      expect((readings as unknown[])[0]).toEqual({
        ...{ id: 'r0', paddockId: 'p1', date: '2024-01-01', heightCm: 5 },
      });
      const herds = (await app.api.get(`/api/farms/${id}/herds`).expect(200)).body;
      expect(herds).toMatchObject([{ inPaddockId: 'p1', inSince: '2026-05-01' }, { id: 'h2' }]);
      await undoTold();
      const after = await Promise.all(old.map(all));
      const parsed = (rows: unknown): unknown =>
        JSON.parse(JSON.stringify(rows), (name, value: unknown) =>
          name === 'details' ? (JSON.parse(String(value)) as unknown) : value,
        );
      expect(parsed(after)).toEqual(parsed(before));
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

describe.each(databases())('the new words of rows on $name', (database) => {
  it('reach what was stored before, there and back', async () => {
    const app = await openApp(database);
    const [job, handover, paddock, plan] = [
      { importance: 'must', lastOn: '2027-05-01', conditions: { people: 2, noRain: true } },
      { caretaker: 'A neighbor', walkingOrder: ['b'], left: [{ what: 'Key', where: 'Shed' }] },
      { closed: [], turnInCm: 20, residualCm: 8, stand: 'good' },
      { 'own/a': { pieces: [{ personIds: ['caretaker-x'] }] } },
    ];
    const stored = async (): Promise<unknown[]> => {
      const found: unknown[] = [];
      for (const [table, column] of [
        ...[['jobs', 'details'] as const, ['handovers', 'details'] as const],
        ...[['paddocks', 'details'] as const, ['kept_plans', 'jobs'] as const],
      ]) {
        const rows = (await app.source.query(`SELECT "${column}" AS "row" FROM "${table}"`)) as {
          row: string;
        }[];
        found.push(...rows.map(({ row }) => JSON.parse(row) as unknown));
      }
      return found;
    };
    try {
      const { body } = await app.api.post('/api/farms').send(newFarm()).expect(201);
      const { id } = body as { id: string };
      const after = MIGRATIONS.length - MIGRATIONS.indexOf(WordsOfRows1796600000000);
      for (let k = 0; k < after; k++) await app.source.undoLastMigration();
      const insert = (table: string, columns: string, values: string) =>
        app.source.query(`INSERT INTO "${table}" (${columns}) VALUES (${values})`);
      await insert(
        'jobs',
        '"id", "farmId", "name", "details"',
        `'j', '${id}', 'Bed', '${JSON.stringify(job)}'`,
      );
      await insert(
        'handovers',
        '"id", "farmId", "firstDay", "details"',
        `'h', '${id}', '2027-05-01', '${JSON.stringify(handover)}'`,
      );
      await insert(
        'paddocks',
        '"id", "farmId", "name", "details"',
        `'p', '${id}', 'A', '${JSON.stringify(paddock)}'`,
      );
      await insert(
        'kept_plans',
        '"farmId", "plannedOn", "jobs"',
        `'${id}', '2027-04-01', '${JSON.stringify(plan)}'`,
      );
      await app.source.runMigrations();
      expect(await stored()).toEqual([
        {
          priority: 'must',
          noUseAfter: '2027-05-01',
          conditions: { peopleNeeded: 2, noRain: true },
        },
        { sitter: 'A neighbor', roundOrder: ['b'], whereabouts: [{ what: 'Key', where: 'Shed' }] },
        { closedDays: [], readyHeightCm: 20, residualHeightCm: 8, stand: 'good' },
        { 'own/a': { pieces: [{ personIds: ['sitter-x'] }] } },
      ]);
      for (let k = 0; k < after; k++) await app.source.undoLastMigration();
      expect(await stored()).toEqual([job, handover, paddock, plan]);
    } finally {
      await app.close();
    }
  }, 60_000);
});

describe.each(databases())('counts of eggs out of their batches on $name', (database) => {
  it('are told on their last day, and go back as they were', async () => {
    const app = await openApp(database);
    const detailsOf = async (): Promise<unknown> => {
      const rows = (await app.source.query(`SELECT "details" FROM "batches"`)) as Row[];
      return rows.map(({ details }) => JSON.parse(String(details)) as unknown);
    };
    try {
      const { id } = await saveFarm(app);
      const after = MIGRATIONS.length - MIGRATIONS.indexOf(EggsCounted1798002000000);
      const undo = async (): Promise<void> => {
        for (let k = 0; k < after; k++) await app.source.undoLastMigration();
      };
      await undo();
      const { name, arrivalDate, ...hens } = newBatch({
        purpose: 'layers',
        strainId: 'brown-layer',
      });
      const eggCounts = [
        { from: '2025-11-01', days: 7, eggs: 70 },
        { from: '2025-12-30', days: 3, eggs: 0 },
      ];
      const old = { ...hens, eggCounts };
      await app.source.query(
        `INSERT INTO "batches" ("id", "farmId", "name", "arrivalDate", "details") VALUES ('b', '${id}', '${name}', '${arrivalDate}', '${JSON.stringify(old)}')`,
      );
      await app.source.runMigrations();
      expect(await detailsOf()).toEqual([hens]);
      const { body } = await app.api.get(`/api/farms/${id}/told?kind=eggs-counted`).expect(200);
      expect((body as ToldPage).facts).toMatchObject([
        { about: 'b', on: '2026-01-01', details: { days: 3, eggs: 0 } },
        { about: 'b', on: '2025-11-07', details: { days: 7, eggs: 70 } },
      ]);
      expect((await app.api.get(`/api/farms/${id}/picture`).expect(200)).body).toMatchObject({
        eggCounts: [{ batchId: 'b', date: '2025-11-07' }, { date: '2026-01-01' }],
      });
      await undo();
      expect(await detailsOf()).toEqual([old]);
      expect(await app.rows('told_facts')).toEqual([]);
    } finally {
      await app.close();
    }
  }, 60_000);
});
