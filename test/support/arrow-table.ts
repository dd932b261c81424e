import { posix } from 'node:path';

/** One row of the table: a room, and the rooms it may import. */
export interface ArrowRow {
  readonly room: string;
  readonly mayImport: readonly string[];
}

/** A room that is no folder: the rows of the database lie beside their services, and below them all. */
export const ENTITIES = 'src/*.entity';

/** The room of a file or folder entry, by its path from the project's folder. */
export const roomOf = (path: string): string =>
  /^src\/.*\.entity\.ts$/.test(path) ? ENTITIES : posix.dirname(path);

/**
 * Reads the blocks marked `arrows` of a document. A line that is not indented names the folder that
 * the lines below it lie in; such a line is `room: what it may import`. A name is looked up among the
 * rooms beside it first, else it is a path. A dot is the folder itself.
 */
export function readArrowTable(document: string): ArrowRow[] {
  const lines = [...document.matchAll(/^```arrows\n(.*?)^```$/gms)].flatMap((m) =>
    m[1]!.split('\n').filter((line) => line.trim() !== ''),
  );
  let base = '';
  const read = lines.flatMap((line) => {
    if (!line.startsWith(' ')) {
      base = line.trim().replace(/\/$/, '');
      return [];
    }
    const [name = '', names = ''] = line.trim().split(':');
    return [{ base, name, names: names.split(/\s+/).filter((each) => each !== '') }];
  });
  const pathOf = (of: string, name: string): string => (name === '.' ? of : `${of}/${name}`);
  const rooms = new Set(read.map((row) => pathOf(row.base, row.name)));
  return read.map((row) => ({
    room: pathOf(row.base, row.name),
    mayImport: row.names.map((name) =>
      rooms.has(pathOf(row.base, name)) ? pathOf(row.base, name) : name,
    ),
  }));
}
