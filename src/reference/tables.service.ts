import { Injectable, type OnModuleInit } from '@nestjs/common';
import { createHash } from 'node:crypto';
import { FORMULAS } from '../../shared/explain/formulas.js';
import type { Formula } from '../../shared/explain/formula.js';
import { TABLE_FILES, type Tables } from '../../shared/tables/tables.js';
import { loadTables, readSeed } from './load-tables.js';
import { Database } from '../database/database.js';
import { PublishedTableEntity } from './published-table.entity.js';

/** The published tables: read from seeds/ once, and written to the database when they changed. */
@Injectable()
export class TablesService implements OnModuleInit {
  readonly tables: Tables = loadTables();
  readonly formulas: readonly Formula[] = [...FORMULAS.values()];

  constructor(private readonly database: Database) {}

  async onModuleInit(): Promise<void> {
    await this.database.writeNew(async (manager) => {
      const rows = manager.getRepository(PublishedTableEntity);
      const known = new Map(
        (await rows.find({ select: { name: true, sha256: true } })).map((r) => [r.name, r.sha256]),
      );
      const changed = Object.entries(TABLE_FILES).flatMap(([name, file]) => {
        const content = readSeed(file);
        const sha256 = createHash('sha256').update(content).digest('hex');
        return known.get(name) === sha256 ? [] : [{ name, sha256, content }];
      });
      if (0 < changed.length) await rows.save(changed);
    });
  }
}
