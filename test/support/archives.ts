import { buffer } from 'node:stream/consumers';
import request from 'supertest';
import yauzl from 'yauzl';
import type { TestApp } from './app.js';

/** What a file of a farm or of everything holds: the text of each entry by its name. */
export type Entries = ReadonlyMap<string, string>;

export async function entriesOf(file: Buffer): Promise<Entries> {
  const zip = await yauzl.fromBufferPromise(file, { lazyEntries: true });
  const entries = new Map<string, string>();
  for await (const entry of zip.eachEntry()) {
    entries.set(entry.fileName, (await buffer(await zip.openReadStreamPromise(entry))).toString());
  }
  return entries;
}

/** The rows of every table in a file. */
export const tablesIn = (entries: Entries): Map<string, Record<string, unknown>[]> =>
  new Map(
    [...entries].flatMap(([name, text]) => {
      const table = /^tables\/(\w+)\.jsonl$/.exec(name)?.[1];
      if (table === undefined) return [];
      const lines = text.split('\n').slice(0, -1);
      return [[table, lines.map((line) => JSON.parse(line) as Record<string, unknown>)]];
    }),
  );

/** The rows of every table in their order, each own id as its table and place: copies differ in no more. */
export function withoutIds(entries: Entries): Record<string, string[]> {
  const tables = tablesIn(entries);
  const places = new Map(
    [...tables].flatMap(([table, rows]) => rows.map(({ id }, i) => [id, `${table}:${i}`] as const)),
  );
  const named = namer(tables);
  return rowsOf(tables, (row) => named(row, ({ id }) => places.get(id)!));
}

/** The same rows whatever their order, their ids told apart by what else the rows say. */
export function contentsOf(entries: Entries): Record<string, string[]> {
  const tables = tablesIn(entries);
  const named = namer(tables);
  const numbers = new Map(
    [...tables].flatMap(([table, rows]) =>
      rows
        .map(({ id, ...row }) => ({ id, plain: named({ ...row }, (own) => own.table) }))
        .sort((a, b) => (a.plain < b.plain ? -1 : 1))
        .map(({ id }, i) => [id, `${table}:${i}`] as const),
    ),
  );
  const sorted = rowsOf(tables, (row) => named(row, ({ id }) => numbers.get(id)!));
  for (const rows of Object.values(sorted)) rows.sort();
  return sorted;
}

type Tables = ReturnType<typeof tablesIn>;

const rowsOf = (tables: Tables, text: (row: object) => string): Record<string, string[]> =>
  Object.fromEntries([...tables].map(([table, rows]) => [table, rows.map(text)]));

/** Writes a row with every id by another name. */
function namer(tables: Tables) {
  const ids = [...tables].flatMap(([table, rows]) =>
    rows.flatMap(({ id }) => (typeof id === 'string' ? [{ id, table }] : [])),
  );
  // One id may be a part of another.
  ids.sort((a, b) => b.id.length - a.id.length);
  return (row: object, nameOf: (own: (typeof ids)[number]) => string): string =>
    ids.reduce((all, own) => all.replaceAll(own.id, nameOf(own)), JSON.stringify(row));
}

export async function download({ url }: TestApp, farmId: string): Promise<Buffer> {
  const { body } = await request(url)
    .get(`/api/farms/${farmId}/archive`)
    .responseType('blob')
    .expect(200)
    .expect('content-type', 'application/zip');
  return body as Buffer;
}

export const upload = ({ api }: TestApp, file: Buffer): request.Test =>
  api.post('/api/farms/archive').set('content-type', 'application/zip').send(file);

export async function uploaded(app: TestApp, file: Buffer): Promise<string> {
  return ((await upload(app, file).expect(201)).body as { id: string }).id;
}
