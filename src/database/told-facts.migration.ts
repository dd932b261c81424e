import { randomUUID } from 'node:crypto';
import type { MigrationInterface, QueryRunner, TableColumnOptions } from 'typeorm';
import { insertRow, setDetails, type Details, type Row } from './sql-of-rows.js';
import { tableOfFacts } from './table-of-facts.js';
import { tableOfFarm } from './table-of-farm.js';

/**
 * One table for all that is told: ticks, readings, looks at the ground and where herds stand move
 * into it, and their own tables go.
 */
export class ToldFacts1796100000000 implements MigrationInterface {
  name = 'ToldFacts1796100000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.createTable(tableOfFacts());
    const now = new Date().toISOString();
    const today = now.slice(0, 10);
    const facts = [
      ...(await readingsIn(runner)),
      ...(await looksIn(runner)),
      ...(await marksIn(runner, today)),
      ...(await placesIn(runner, today)),
    ].map((fact) => ({ toldAt: now, ...fact }));
    for (const fact of facts) {
      const id = 'id' in fact ? String(fact.id) : randomUUID();
      await insertRow(runner, 'told_facts', { ...fact, id, key: id });
    }
    for (const name of ['grass_readings', 'ground_looks', 'work_marks']) {
      await runner.dropTable(name);
    }
  }

  /** Brings the old tables back with what holds; what was taken back or replaced goes. */
  async down(runner: QueryRunner): Promise<void> {
    await makeOldTables(runner);
    const facts = (await runner.query(
      `SELECT * FROM "told_facts" WHERE "takenBackAt" IS NULL ORDER BY "toldAt"`,
    )) as Row[];
    const replaced = new Set(facts.map((fact) => fact['replaces']));
    const last = new Map<string, Row>();
    for (const fact of facts.filter(({ id }) => !replaced.has(id))) {
      const day =
        fact['kind'] === 'work-progress' || fact['kind'] === 'herd-move' ? '' : fact['on'];
      last.set([fact['farmId'], fact['kind'], fact['about'], day].join('|'), fact);
    }
    for (const fact of last.values()) await bringBack(runner, fact);
    await runner.dropTable('told_facts');
  }
}

async function readingsIn(runner: QueryRunner): Promise<Details[]> {
  const rows = (await runner.query(
    `SELECT "id", "farmId", "paddockId", CAST("date" AS text) AS "on", "heightCm" FROM "grass_readings"`,
  )) as Row[];
  return rows.map(({ id, farmId, paddockId, on, heightCm }) => ({
    id,
    farmId,
    kind: 'grass-reading',
    about: paddockId,
    on,
    toldAt: `${String(on)}T12:00:00.000Z`,
    details: JSON.stringify({ heightCm: Number(heightCm) }),
  }));
}

async function looksIn(runner: QueryRunner): Promise<Details[]> {
  const rows = (await runner.query(
    `SELECT "farmId", CAST("date" AS text) AS "on", "isWorkable" FROM "ground_looks"`,
  )) as Row[];
  return rows.map(({ farmId, on, isWorkable }) => ({
    farmId,
    kind: 'ground-check',
    about: 'ground',
    on,
    toldAt: `${String(on)}T12:00:00.000Z`,
    details: JSON.stringify({ isWorkable: Boolean(isWorkable) }),
  }));
}

/** When work was put off was never written down: today stands for it. */
async function marksIn(runner: QueryRunner, today: string): Promise<Details[]> {
  const rows = (await runner.query(`SELECT "farmId", "key", "details" FROM "work_marks"`)) as Row[];
  return rows.map(({ farmId, key, details }) => ({
    farmId,
    kind: 'work-progress',
    about: key,
    on: (JSON.parse(String(details)) as { doneOn?: string }).doneOn ?? today,
    details,
  }));
}

async function placesIn(runner: QueryRunner, today: string): Promise<Details[]> {
  const rows = (await runner.query(`SELECT "id", "farmId", "details" FROM "herds"`)) as Row[];
  const facts: Details[] = [];
  for (const { id, farmId, details } of rows) {
    const { inPaddockId, inSince, ...rest } = JSON.parse(String(details)) as Details;
    if (inPaddockId === undefined) continue;
    facts.push({
      farmId,
      kind: 'herd-move',
      about: id,
      on: inSince ?? today,
      details: JSON.stringify({
        paddockId: inPaddockId,
        isTyped: true,
        ...(inSince === undefined ? { isSinceUnknown: true } : {}),
      }),
    });
    await setDetails(runner, 'herds', id, rest);
  }
  return facts;
}

async function makeOldTables(runner: QueryRunner): Promise<void> {
  const text = (name: string, length: number, isPrimary = false): TableColumnOptions => ({
    name,
    type: 'varchar',
    length: String(length),
    isPrimary,
  });
  const byKey = { isFoundByKey: true };
  await runner.createTable(
    tableOfFarm('grass_readings', [
      text('id', 64, true),
      text('farmId', 36),
      text('paddockId', 64),
      { name: 'date', type: 'date' },
      { name: 'heightCm', type: 'double precision' },
    ]),
  );
  await runner.createTable(
    tableOfFarm(
      'work_marks',
      [text('farmId', 36, true), text('key', 200, true), { name: 'details', type: 'text' }],
      byKey,
    ),
  );
  await runner.createTable(
    tableOfFarm(
      'ground_looks',
      [
        text('farmId', 36, true),
        { name: 'date', type: 'date', isPrimary: true },
        { name: 'isWorkable', type: 'boolean' },
      ],
      byKey,
    ),
  );
}

async function bringBack(runner: QueryRunner, fact: Row): Promise<void> {
  const { id, farmId, about, on } = fact;
  const details = JSON.parse(String(fact['details'])) as Details;
  const isPostgres = runner.connection.options.type === 'postgres';
  switch (fact['kind']) {
    case 'grass-reading':
      return insertRow(runner, 'grass_readings', {
        id,
        farmId,
        paddockId: about,
        date: on,
        heightCm: details['heightCm'],
      });
    case 'ground-check':
      return insertRow(runner, 'ground_looks', {
        farmId,
        date: on,
        isWorkable: isPostgres ? details['isWorkable'] : Number(details['isWorkable']),
      });
    case 'work-progress':
      return insertRow(runner, 'work_marks', { farmId, key: about, details: fact['details'] });
    case 'herd-move': {
      const [herd] = (await runner.query(
        `SELECT "details" FROM "herds" WHERE "id" = ${isPostgres ? '$1' : '?'}`,
        [about],
      )) as Row[];
      if (!herd || details['paddockId'] === undefined) return;
      await setDetails(runner, 'herds', about, {
        ...(JSON.parse(String(herd['details'])) as Details),
        inPaddockId: details['paddockId'],
        ...(details['isSinceUnknown'] ? {} : { inSince: on }),
      });
    }
  }
}
