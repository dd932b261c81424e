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

/** The rows of every table with each own id as its table and place, so that other ids do not matter. */
export function withoutIds(entries: Entries): Record<string, string[]> {
  const tables = tablesIn(entries);
  const ids = [...tables].flatMap(([table, rows]) =>
    rows.flatMap(({ id }) => (typeof id === 'string' ? [{ id, table }] : [])),
  );
  // One id may be a part of another.
  ids.sort((a, b) => b.id.length - a.id.length);
  const text = (row: unknown, nameOf: (id: string, table: string) => string): string =>
    ids.reduce((all, { id, table }) => all.replaceAll(id, nameOf(id, table)), JSON.stringify(row));
  // Rows are numbered by what else they say: their ids are new in every copy.
  const numbers = new Map<string, string>();
  for (const [table, rows] of tables) {
    const sorted = rows
      .map((row) => ({ id: row['id'], plain: text(row, (_, of) => of) }))
      .sort((a, b) => (a.plain < b.plain ? -1 : 1));
    sorted.forEach(({ id }, i) => {
      if (typeof id === 'string') numbers.set(id, `${table}:${i}`);
    });
  }
  return Object.fromEntries(
    [...tables].map(([table, rows]) => [
      table,
      rows.map((row) => text(row, (id) => numbers.get(id)!)).sort(),
    ]),
  );
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
