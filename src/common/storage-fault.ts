/**
 * What is wrong with the place where everything is kept: its disk is full, its file is damaged or
 * no database, it may only be read, another program holds it, it cannot be reached, or it does not
 * let this program in.
 */
export type StorageFault =
  | 'full'
  | 'damaged'
  | 'not-a-database'
  | 'read-only'
  | 'busy'
  | 'lost'
  | 'refused';

/** Codes of SQLite (sqlite.org/rescode.html), PostgreSQL (its manual, appendix A) and Node. */
const FAULTS: readonly (readonly [pattern: RegExp, fault: StorageFault])[] = [
  // A write that fails in a folder that can be written fails for want of room.
  [/^(SQLITE_FULL|SQLITE_IOERR_(WRITE|FSYNC|TRUNCATE|SHMSIZE)|ENOSPC|EDQUOT|EFBIG|53100)$/, 'full'],
  [/^(SQLITE_CORRUPT|SQLITE_IOERR_(SHORT_READ|DATA|CORRUPTFS)|XX00[12])/, 'damaged'],
  [/^SQLITE_NOTADB$/, 'not-a-database'],
  [/^(SQLITE_READONLY|SQLITE_PERM|EROFS|25006)/, 'read-only'],
  [/^(SQLITE_BUSY|SQLITE_LOCKED|SQLITE_PROTOCOL)/, 'busy'],
  [/^(28P01|28000|3D000|42501)$/, 'refused'],
  [
    /^(SQLITE_CANTOPEN|SQLITE_IOERR|08\w{3}|57P0[1-5]|53300|E(CONN|HOST|NET|ADDR)\w+|ETIMEDOUT|EPIPE|ENOTFOUND|EAI_AGAIN)/,
    'lost',
  ],
];
/** The PostgreSQL driver gives some errors words only. */
const LOST_WORDS =
  /^Connection terminated|^timeout exceeded when trying to connect|^timeout expired|^Client has encountered a connection error|^Driver not Connected|^The database connection is not open/;

/** What an error says of the storage; undefined when it is about something else. */
export function storageFaultOf(error: unknown): StorageFault | undefined {
  for (const each of partsOf(error)) {
    const code = codeOf(each);
    const found = code === undefined ? undefined : FAULTS.find(([pattern]) => pattern.test(code));
    if (found) return found[1];
    if (each instanceof Error && LOST_WORDS.test(each.message)) return 'lost';
  }
  return undefined;
}

export const codeOf = (error: unknown): string | undefined => {
  const code = (error as { code?: unknown } | undefined)?.code;
  return typeof code === 'string' ? code : undefined;
};

const DEEPEST = 4;

/** An error and those it was made of. */
export function partsOf(error: unknown, depth = 0): unknown[] {
  if (typeof error !== 'object' || error === null || depth === DEEPEST) return [];
  const { driverError, cause, errors } = error as {
    driverError?: unknown;
    cause?: unknown;
    errors?: unknown;
  };
  const inner = [driverError, cause, ...(Array.isArray(errors) ? (errors as unknown[]) : [])];
  return [error, ...inner.flatMap((each) => partsOf(each, depth + 1))];
}
