import { randomUUID } from 'node:crypto';
import type { MigrationInterface, QueryRunner } from 'typeorm';
import { addDays } from '../../shared/calendar/plain-date.js';
import { insertRow, setDetails, type Details, type Row } from './sql-of-rows.js';

interface OldCount {
  readonly from: string;
  readonly days: number;
  readonly eggs: number;
}

/** Counts of eggs move out of their batches: they are told as weighings are, on their last day. */
export class EggsCounted1798002000000 implements MigrationInterface {
  name = 'EggsCounted1798002000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const { id, farmId, details } of await batchesIn(runner)) {
      const { eggCounts, ...rest } = details;
      if (eggCounts === undefined) continue;
      for (const { from, days, eggs } of eggCounts) {
        const on = addDays(from, days - 1);
        const fact = randomUUID();
        await insertRow(runner, 'told_facts', {
          ...{ id: fact, farmId, kind: 'eggs-counted', about: id, on },
          details: JSON.stringify({ days, eggs }),
          ...{ toldAt: `${on}T12:00:00.000Z`, key: fact },
        });
      }
      await setDetails(runner, 'batches', id, rest);
    }
  }

  /** Brings back what holds; what was taken back or replaced goes. */
  async down(runner: QueryRunner): Promise<void> {
    const facts = (await runner.query(
      `SELECT * FROM "told_facts" WHERE "kind" = 'eggs-counted' AND "takenBackAt" IS NULL ORDER BY "on"`,
    )) as Row[];
    const replaced = new Set(facts.map((fact) => fact['replaces']));
    for (const { id, farmId, details } of await batchesIn(runner)) {
      const eggCounts = facts
        .filter((f) => f['farmId'] === farmId && f['about'] === id && !replaced.has(f['id']))
        .map(({ on, details: told }): OldCount => {
          const { days, eggs } = JSON.parse(String(told)) as Omit<OldCount, 'from'>;
          return { from: addDays(String(on), 1 - days), days, eggs };
        });
      if (0 < eggCounts.length) {
        await setDetails(runner, 'batches', id, { ...details, eggCounts });
      }
    }
    await runner.query(`DELETE FROM "told_facts" WHERE "kind" = 'eggs-counted'`);
  }
}

interface OldBatch {
  readonly id: string;
  readonly farmId: string;
  readonly details: Details & { readonly eggCounts?: readonly OldCount[] };
}

async function batchesIn(runner: QueryRunner): Promise<OldBatch[]> {
  const rows = (await runner.query(`SELECT "id", "farmId", "details" FROM "batches"`)) as Row[];
  return rows.map(({ id, farmId, details }) => ({
    ...{ id: String(id), farmId: String(farmId) },
    details: JSON.parse(String(details)) as OldBatch['details'],
  }));
}
