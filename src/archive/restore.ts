import type { DataSourceOptions } from 'typeorm';
import type { Manifest } from './archive-format.js';
import { OpenArchive } from './open-archive.js';
import { restorePostgres } from './restore-postgres.js';
import { restoreSqlite } from './restore-sqlite.js';

/** What was brought back. */
export interface Restored {
  readonly manifest: Manifest;
  /** Where the database is that was there before; undefined when there was none. */
  readonly keptAs: string | undefined;
}

/**
 * Makes the database what a copy holds. The file is read through before anything is touched; the
 * database that was there is kept under another name.
 *
 * @throws FieldError when the file is not a whole copy, or the service is running
 */
export async function restore(options: DataSourceOptions, file: string): Promise<Restored> {
  const migrations = namesOf(options);
  const archive = await OpenArchive.open(file, { name: file, holds: 'everything', migrations });
  try {
    await archive.check();
    const keptAs = await putInPlace(options, archive);
    return { manifest: archive.manifest, keptAs };
  } finally {
    archive.close();
  }
}

function putInPlace(options: DataSourceOptions, archive: OpenArchive): Promise<string | undefined> {
  if (options.type === 'better-sqlite3') return restoreSqlite(options, archive);
  if (options.type === 'postgres') return restorePostgres(options, archive);
  throw new Error(`No copy can be brought back into ${options.type}.`);
}

function namesOf({ migrations = [] }: DataSourceOptions): string[] {
  return Object.values(migrations).map((migration) => (migration as { name: string }).name);
}
