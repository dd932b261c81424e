import { describe, expect, it } from '@jest/globals';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';

/** The door, and copies of the whole: they are made and brought back beside the running service. */
const DOORS = [
  'src/archive/archive.service.ts',
  'src/archive/copy-before-update.ts',
  'src/archive/database-hold.ts',
  'src/archive/rebuild.ts',
  'src/archive/restore-postgres.ts',
  'src/archive/restore-sqlite.ts',
  'src/archive/snapshot.ts',
  'src/database/database.ts',
  'src/database/open-database.ts',
];
/** What begins a transaction, or takes a connection past the door. */
const PAST_IT = /\.transaction\(|createQueryRunner|InjectDataSource|InjectRepository|getDataSource/;

const sources = readdirSync(join(PROJECT_ROOT, 'src'), { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.tsx?$/.test(file))
  .map((file) => join(PROJECT_ROOT, 'src', file));

describe('the way to the database', () => {
  it('is one: no other file begins a transaction or takes a connection', () => {
    const found = sources
      .filter((file) => PAST_IT.test(readFileSync(file, 'utf8')))
      .map((file) => relative(PROJECT_ROOT, file));
    expect(found.sort()).toEqual(DOORS);
  });
});
