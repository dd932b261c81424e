import { join, resolve } from 'node:path';
import { codeOf, partsOf, storageFaultOf } from './common/storage-fault.js';
import { DatabaseRefused } from './database/open-database.js';
import { PROJECT_ROOT } from './reference/load-tables.js';
import { SettingError } from './settings.js';

/** Why the program cannot start and what to do about it, in a line or two. */
export function whyNotStarted(error: unknown, env: NodeJS.ProcessEnv = process.env): string {
  if (error instanceof SettingError || error instanceof DatabaseRefused) return error.message;
  const system = partsOf(error).find((each) => typeof codeOf(each) === 'string');
  return (
    whyNotListening(system, env) ??
    (env['DATABASE_URL'] ? whyNoPostgres(error, env['DATABASE_URL']) : whyNoFile(error, env)) ??
    `Broodfold could not start: ${error instanceof Error ? error.message : String(error)}`
  );
}

function whyNotListening(error: unknown, env: NodeJS.ProcessEnv): string | undefined {
  const { syscall, port = env['PORT'] } = (error ?? {}) as { syscall?: string; port?: unknown };
  const isListening = syscall === 'listen' || syscall === 'bind';
  switch (codeOf(error)) {
    case 'EADDRINUSE':
      return `Port ${String(port)} is taken. Stop the other program, or start with another: PORT=3211 npm start`;
    case 'EACCES':
      return isListening
        ? `Port ${String(port)} may not be used by this user. Start with one above 1023: PORT=3210 npm start`
        : undefined;
    case 'EADDRNOTAVAIL':
      return `HOST is "${env['HOST']}", which is no address of this computer. Use 0.0.0.0 for all of its addresses, or leave HOST out for this computer only.`;
    case 'ENOTFOUND':
    case 'EAI_AGAIN': {
      const { hostname } = error as { hostname?: string };
      return hostname !== undefined && hostname === env['HOST']
        ? `HOST is "${hostname}", a name that is not known here. Give an address of this computer, such as 0.0.0.0 for all of them.`
        : undefined;
    }
    default:
      return undefined;
  }
}

function whyNoFile(error: unknown, env: NodeJS.ProcessEnv): string | undefined {
  const folder = resolve(env['DATA_DIR'] || join(PROJECT_ROOT, 'data'));
  const file = join(folder, 'broodfold.sqlite');
  const codes = partsOf(error).map(codeOf);
  const has = (...wanted: string[]): boolean => codes.some((c) => c && wanted.includes(c));
  if (has('EEXIST', 'ENOTDIR'))
    return `The data folder ${folder} cannot be made, because a file is in its place. Move the file away, or set DATA_DIR to another folder.`;
  if (has('EACCES', 'EPERM', 'EROFS', 'ENOENT'))
    return `The data folder ${folder} cannot be written. Give this user the right to write there, or set DATA_DIR to another folder.`;
  switch (storageFaultOf(error)) {
    case 'not-a-database':
      return `${file} is not a database of Broodfold. Move it away, or set DATA_DIR to another folder; nothing was changed.`;
    case 'damaged':
      return `${file} is damaged. Move it and the files beside it (-wal, -shm) away, keep them, and bring back your last copy.`;
    case 'full':
      return `The disk that holds ${folder} is full. Free some space and start again.`;
    case 'read-only':
    case 'lost':
      return `${file} cannot be opened for writing. Check that this user may write the file and its folder, or set DATA_DIR to another folder.`;
    case 'busy':
      return `${file} is in use by another program. Stop it (another Broodfold on the same folder?) and start again.`;
    default:
      return undefined;
  }
}

function whyNoPostgres(error: unknown, url: string): string | undefined {
  const { hostname, port, username, pathname } = new URL(url);
  const place = `PostgreSQL at ${hostname || 'this computer'}:${port || '5432'}`;
  const codes = partsOf(error).map(codeOf);
  const isSayingPassword = partsOf(error).some((e) =>
    /password/.test(String((e as Error).message)),
  );
  if (codes.includes('28P01') || (isSayingPassword && !codes.some(Boolean)))
    return `${place} does not take the password of the user "${decodeURIComponent(username)}". Check user and password in DATABASE_URL.`;
  if (codes.includes('28000'))
    return `${place} does not let the user "${decodeURIComponent(username)}" in from here. Check the user in DATABASE_URL, and pg_hba.conf of the server.`;
  if (codes.includes('3D000'))
    return `${place} has no database "${decodeURIComponent(pathname.slice(1))}". Make it (createdb ${decodeURIComponent(pathname.slice(1))}), or correct DATABASE_URL.`;
  if (codes.includes('42501'))
    return `${place} does not let the user "${decodeURIComponent(username)}" make tables. Make that user the owner of the database.`;
  switch (storageFaultOf(error)) {
    case 'lost':
      return `${place} cannot be reached. Start it, or check host and port in DATABASE_URL.`;
    case 'full':
      return `The disk of ${place} is full. Free some space there and start again.`;
    case 'damaged':
      return `The database of ${place} is damaged. Bring back your last copy of it.`;
    case 'read-only':
      return `${place} takes no writes. Use the server that does, not a read-only copy of it.`;
    default:
      return undefined;
  }
}
