import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { ZipFile } from 'yazl';
import type { Manifest } from '../../src/archive/archive-format.js';
import {
  contentsOf,
  download,
  entriesOf,
  tablesIn,
  upload,
  uploaded,
  withoutIds,
} from '../support/archives.js';
import { openApp, type TestApp } from '../support/app.js';
import { dailyCsv, syntheticDays } from '../support/daily-weather.js';
import { anyDatabase, databases } from '../support/databases.js';
import { service } from '../support/outside.js';

const { inSnapshot, writeArchive, MIGRATIONS } = service;

type Tables = Map<string, Record<string, unknown>[]>;

/** An archive with true sums, of whatever is handed in: what another program could send. */
async function forged(tables: Tables, manifest: Partial<Manifest>): Promise<Buffer> {
  const zip = new ZipFile();
  const entries = [...tables].map(([name, rows]) => {
    const text = rows.map((row) => `${JSON.stringify(row)}\n`).join('');
    zip.addBuffer(Buffer.from(text), `tables/${name}.jsonl`);
    return { name, rows: rows.length, sha256: createHash('sha256').update(text).digest('hex') };
  });
  const whole = { tables: entries, ...manifest };
  zip.addBuffer(Buffer.from(JSON.stringify(whole)), 'manifest.json');
  zip.end();
  return buffer(zip.outputStream);
}

describe.each([anyDatabase()])('a file that is no farm on $name', (database) => {
  let app: TestApp;
  let farmId: string;
  let file: Buffer;
  let tables: Tables;
  let manifest: Manifest;
  let contents: string;

  beforeAll(async () => {
    app = await openApp(database);
    const { body } = await app.api.post('/api/farms/sample').expect(201);
    farmId = (body as { id: string }).id;
    file = await download(app, farmId);
    const entries = await entriesOf(file);
    tables = tablesIn(entries);
    manifest = JSON.parse(entries.get('manifest.json')!) as Manifest;
    contents = await app.contents();
  });
  afterAll(() => app.close());

  /** Why it is refused; nothing may be left behind. */
  async function refusal(bytes: Buffer): Promise<string> {
    const { body } = await upload(app, bytes).expect(400);
    expect(await app.contents()).toBe(contents);
    return (body as { problems: { text: string }[] }).problems[0]!.text;
  }

  it.each([
    ['nothing', Buffer.alloc(0), 'file is missing. Send the file as the body'],
    ['text', Buffer.from('date,tmin_c\n'), 'file cannot be read: it is no file of Broodfold.'],
  ])('that is %s is refused', async (_what, bytes, text) => {
    expect(await refusal(bytes)).toContain(text);
  });

  it('that is JSON is refused', async () => {
    const { body } = await app.api.post('/api/farms/archive').send({ a: 1 }).expect(400);
    expect((body as { detail: string }).detail).toContain('content type application/zip');
  });

  it('that was cut off anywhere is refused', async () => {
    for (const share of [0.001, 0.1, 0.5, 0.9, 0.999]) {
      const text = await refusal(file.subarray(0, Math.floor(file.length * share)));
      expect(text).toMatch(/its end is missing, so it was cut off. Download|no file of Broodfold/);
    }
  });

  it('in which any bit is another is refused, or says the same', async () => {
    const same = withoutIds(await entriesOf(file));
    await fc.assert(
      fc.asyncProperty(fc.nat({ max: file.length - 1 }), fc.nat({ max: 7 }), async (at, bit) => {
        const bytes = Buffer.from(file);
        bytes[at]! ^= 1 << bit;
        const { status, body } = await upload(app, bytes);
        if (status === 201) {
          const { id } = body as { id: string };
          expect(withoutIds(await entriesOf(await download(app, id)))).toEqual(same);
          await app.api.delete(`/api/farms/${id}`).expect(204);
        } else expect(status).toBe(400);
        expect(await app.contents()).toBe(contents);
      }),
      { numRuns: 80 },
    );
  }, 240_000);

  it('of another program is refused', async () => {
    expect(await refusal(await forged(new Map(), { format: 'other' as 'broodfold' }))).toContain(
      'it is no file of Broodfold',
    );
  });

  it('of a later program is refused, with what to do', async () => {
    const later = 'it was made by a later Broodfold (version 9.1.0). Update this program first';
    const made = { ...manifest, program: '9.1.0', tables: [] };
    expect(await refusal(await forged(new Map(), { ...made, formatVersion: 2 }))).toContain(later);
    const migrations = [...manifest.migrations, 'Later1999999999999'];
    expect(await refusal(await forged(new Map(), { ...made, migrations }))).toContain(later);
  });

  it('of a whole database is refused, with what to do', async () => {
    const text = await refusal(await forged(tables, { ...head(), holds: 'everything' }));
    expect(text).toContain('it holds a whole database, not one farm. Bring it back with `npm run');
  });

  it.each<[string, (all: Tables) => void, string]>([
    [
      'two farms',
      (all) => all.get('farms')!.push({ ...all.get('farms')![0]!, id: 'x' }),
      'another farm',
    ],
    ['no farm', (all) => all.set('farms', []), '0 farms'],
    ['another’s row', (all) => (all.get('people')![0]!['farmId'] = 'x'), 'belongs to another farm'],
    [
      'a wrong number',
      (all) => (all.get('farms')![0]!['latitudeDeg'] = 'x'),
      'latitudeDeg is not a number',
    ],
    [
      'a wrong day',
      (all) => (all.get('batches')![0]!['arrivalDate'] = '2027-02-30'),
      'arrivalDate is not a date',
    ],
    [
      'no details',
      (all) => (all.get('batches')![0]!['details'] = 'x'),
      'details is not of its kind',
    ],
    ['a zero byte', (all) => (all.get('people')![0]!['name'] = 'a\0'), 'name holds a zero byte'],
    ['a long name', (all) => (all.get('people')![0]!['name'] = 'x'.repeat(81)), 'name is too long'],
    ['a field less', (all) => delete all.get('people')![0]!['name'], 'name is missing'],
    ['a field more', (all) => (all.get('people')![0]!['more'] = 1), 'more is not known'],
    ['a row twice', (all) => all.get('people')!.push(all.get('people')![0]!), 'does not take it'],
  ])('with %s is refused', async (_what, change, text) => {
    const changed = structuredClone(tables);
    change(changed);
    expect(await refusal(await forged(changed, head()))).toContain(text);
  });

  it('that is larger than any farm is refused before it is read', async () => {
    const answer = await saidToBe(700_000_001);
    expect(answer).toContain(' 400 ');
    expect(answer).toContain('file is 701 MB, but must be at most 700 MB');
  });

  /** What is answered to a file that is said to be so large, of which only the beginning is sent. */
  const saidToBe = async (bytes: number): Promise<string> => {
    const { hostname, port } = new URL(app.url);
    const socket = connect(Number(port), hostname);
    socket.write(
      `POST /api/farms/archive HTTP/1.1\r\nHost: ${hostname}\r\nContent-Type: application/zip\r\nContent-Length: ${bytes}\r\n\r\nPK`,
    );
    let answer = '';
    for await (const chunk of socket.setEncoding('utf8')) {
      answer += chunk as string;
      if (answer.includes('instance')) break;
    }
    return answer;
  };

  const head = (): Partial<Manifest> => {
    const { tables: _tables, ...own } = manifest;
    return own;
  };
});

describe.each(databases())('a farm of an earlier program on $name', (database) => {
  it('is brought up to date as it is read', async () => {
    const app = await openApp(database);
    const folder = mkdtempSync(join(tmpdir(), 'broodfold-test-'));
    try {
      const { body } = await app.api.post('/api/farms/sample').expect(201);
      const { id } = body as { id: string };
      await app.api
        .put(`/api/farms/${id}/weather/csv`)
        .set('content-type', 'text/csv')
        .send(dailyCsv(syntheticDays('2020-01-01', '2023-12-31')))
        .expect(200);
      for (let k = 1; k < MIGRATIONS.length; k++) await app.source.undoLastMigration();
      const path = join(folder, 'old.zip');
      await inSnapshot(app.source, (runner) => writeArchive(path, runner, { farmId: id }));
      await app.source.runMigrations();
      const today = contentsOf(await entriesOf(await download(app, id)));
      const copyId = await uploaded(app, readFileSync(path));
      expect(contentsOf(await entriesOf(await download(app, copyId)))).toEqual(today);
    } finally {
      await app.close();
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
