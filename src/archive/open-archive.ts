import { createHash, type Hash } from 'node:crypto';
import { open } from 'node:fs/promises';
import { buffer } from 'node:stream/consumers';
import { StringDecoder } from 'node:string_decoder';
import { crc32 } from 'node:zlib';
import yauzl, { type Entry, type ZipFile } from 'yauzl';
import {
  entryOf,
  FORMAT,
  FORMAT_VERSION,
  MANIFEST_ENTRY,
  type ArchiveRow,
  type Holding,
  type Manifest,
  type TableEntry,
} from './archive-format.js';
import { refusedFile } from './refused-file.js';

/** No row of a farm comes near this many characters. */
const LONGEST_ROW = 4_000_000;
const LARGEST_MANIFEST = 1_000_000;
/** Unpacked bytes of one farm that are read at most; a whole database may be larger. */
const LARGEST_FARM = 1_200_000_000;

/** What a file ought to be, and what this program knows. */
export interface Expected {
  /** What the file is called in messages. */
  readonly name: string;
  readonly holds: Holding;
  /** Changes of the database that this program knows, oldest first. */
  readonly migrations: readonly string[];
}

/** A file that was opened and whose manifest this program understands. */
export class OpenArchive {
  private constructor(
    readonly manifest: Manifest,
    readonly name: string,
    private readonly zip: ZipFile,
    private readonly entries: ReadonlyMap<string, Entry>,
  ) {}

  /** @throws FieldError when the file is another's, cut off, damaged, or of a later program */
  static async open(path: string, expected: Expected): Promise<OpenArchive> {
    const { name } = expected;
    const zip = await unzipped(path, name);
    try {
      const entries = await entriesIn(zip, name);
      const manifest = await manifestIn(zip, entries, name);
      checkManifest(manifest, expected);
      checkEntries(manifest, entries, name);
      return new OpenArchive(manifest, name, zip, entries);
    } catch (error) {
      zip.close();
      throw error;
    }
  }

  close(): void {
    this.zip.close();
  }

  /** Reads everything once, so that nothing begins on a file that is not whole. */
  async check(): Promise<void> {
    for (const { name } of this.manifest.tables) {
      for await (const _row of this.rows(name));
    }
  }

  /**
   * The rows of a table.
   *
   * @throws FieldError when they are not those that were written
   */
  async *rows(table: string): AsyncGenerator<ArchiveRow> {
    const expected = this.manifest.tables.find(({ name }) => name === table);
    if (!expected) return;
    const hash = createHash('sha256');
    let count = 0;
    try {
      const stream = await this.zip.openReadStreamPromise(this.entries.get(entryOf(table))!);
      for await (const line of linesOf(stream as AsyncIterable<Buffer>, hash)) {
        yield rowIn(line);
        count++;
      }
    } catch (error) {
      if (error instanceof Unusable || isOfZip(error)) throw damaged(this.name, `of ${table}`);
      throw error;
    }
    if (count !== expected.rows || hash.digest('hex') !== expected.sha256)
      throw damaged(this.name, `of ${table}`);
  }
}

/** A line that no archive holds. */
class Unusable extends Error {}

const damaged = (name: string, what: string) =>
  refusedFile(
    name,
    `it is damaged: what it holds ${what} is not what was written`,
    'Nothing was read. Use another copy of it.',
  );

const foreign = (name: string) =>
  refusedFile(
    name,
    'it is no file of Broodfold',
    'Choose one that "Download this farm" or `npm run backup` made.',
  );

/** Errors of unpacking carry zlib's code, or none at all; those of the disk carry the system's. */
const isOfZip = (error: unknown): boolean => {
  const { code } = error as { code?: unknown };
  return code === undefined
    ? error instanceof Error && !(error instanceof TypeError) && error.name === 'Error'
    : typeof code === 'string' && code.startsWith('Z_');
};

async function unzipped(path: string, name: string): Promise<ZipFile> {
  try {
    return await yauzl.openPromise(path, { lazyEntries: true, autoClose: false });
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'EISDIR')
      throw refusedFile(name, 'there is no such file', 'Give the path of a file.');
    if (code !== undefined) throw error;
    throw (await beginsAsZip(path))
      ? refusedFile(name, 'its end is missing, so it was cut off', 'Download or copy it again.')
      : foreign(name);
  }
}

async function beginsAsZip(path: string): Promise<boolean> {
  const file = await open(path);
  try {
    const { buffer: start } = await file.read(Buffer.alloc(4), 0, 4, 0);
    return start.toString('latin1') === 'PK\x03\x04';
  } finally {
    await file.close();
  }
}

async function entriesIn(zip: ZipFile, name: string): Promise<ReadonlyMap<string, Entry>> {
  const entries = new Map<string, Entry>();
  try {
    for await (const entry of zip.eachEntry()) {
      if (entries.has(entry.fileName)) throw damaged(name, `of ${entry.fileName}`);
      entries.set(entry.fileName, entry);
    }
  } catch (error) {
    if (isOfZip(error)) throw damaged(name, 'of its list of contents');
    throw error;
  }
  return entries;
}

async function manifestIn(
  zip: ZipFile,
  entries: ReadonlyMap<string, Entry>,
  name: string,
): Promise<Partial<Manifest>> {
  const entry = entries.get(MANIFEST_ENTRY);
  if (!entry || LARGEST_MANIFEST < entry.uncompressedSize) throw foreign(name);
  const bytes = await zip
    .openReadStreamPromise(entry)
    .then(buffer)
    .catch((error: unknown) => {
      throw isOfZip(error) ? damaged(name, 'about itself') : error;
    });
  if (crc32(bytes) !== entry.crc32) throw damaged(name, 'about itself');
  try {
    const manifest = JSON.parse(bytes.toString()) as Partial<Manifest> | null;
    if (manifest?.format === FORMAT) return manifest;
  } catch {
    // Not JSON: some other program's manifest.
  }
  throw foreign(name);
}

function checkManifest(
  manifest: Partial<Manifest>,
  { name, holds, migrations: known }: Expected,
): asserts manifest is Manifest {
  const { formatVersion, program, migrations } = manifest;
  const isLater =
    typeof formatVersion !== 'number' ||
    FORMAT_VERSION < formatVersion ||
    !Array.isArray(migrations) ||
    migrations.some((each) => !known.includes(each));
  if (isLater)
    throw refusedFile(
      name,
      `it was made by a later Broodfold (version ${String(program)})`,
      'Update this program first, then read it again.',
    );
  if (manifest.holds !== holds)
    throw holds === 'farm'
      ? refusedFile(
          name,
          'it holds a whole database, not one farm',
          'Bring it back with `npm run restore`, or choose a file that "Download this farm" made.',
        )
      : refusedFile(
          name,
          'it holds one farm, not a whole database',
          'Read it on the first screen, or choose a file that `npm run backup` made.',
        );
  const isPart = migrations.every((each, i) => each === known[i]);
  const { tables } = manifest;
  if (!isPart || migrations.length === 0 || !Array.isArray(tables) || !tables.every(isTableEntry))
    throw damaged(name, 'about itself');
}

function isTableEntry(entry: unknown): entry is TableEntry {
  const { name, rows, sha256 } = (entry ?? {}) as Partial<TableEntry>;
  return typeof name === 'string' && typeof rows === 'number' && typeof sha256 === 'string';
}

function checkEntries(
  { tables, holds }: Manifest,
  entries: ReadonlyMap<string, Entry>,
  name: string,
): void {
  const listed = new Set([
    MANIFEST_ENTRY,
    ...tables.map((table: TableEntry) => entryOf(table.name)),
  ]);
  for (const each of listed) if (!entries.has(each)) throw damaged(name, `of ${each}`);
  for (const each of entries.keys()) if (!listed.has(each)) throw damaged(name, `of ${each}`);
  const bytes = [...entries.values()].reduce((sum, entry) => sum + entry.uncompressedSize, 0);
  if (holds === 'farm' && LARGEST_FARM < bytes)
    throw refusedFile(name, 'it holds more than one farm can', 'Choose another file.');
}

async function* linesOf(chunks: AsyncIterable<Buffer>, hash: Hash): AsyncGenerator<string> {
  const decoder = new StringDecoder('utf8');
  let rest = '';
  for await (const chunk of chunks) {
    hash.update(chunk);
    const lines = (rest + decoder.write(chunk)).split('\n');
    rest = lines.pop()!;
    if (LONGEST_ROW < rest.length) throw new Unusable();
    yield* lines;
  }
  if (rest + decoder.end() !== '') throw new Unusable();
}

function rowIn(line: string): ArchiveRow {
  try {
    const row = JSON.parse(line) as unknown;
    if (typeof row === 'object' && row !== null && !Array.isArray(row)) return row as ArchiveRow;
  } catch {
    // Said below: a line that is not JSON is no row.
  }
  throw new Unusable();
}
