import { LISTS_OF_UNSAID, withoutSaid } from './assumed.js';
import { isSame } from './merge-row.js';

type Fields = Readonly<Record<string, unknown>>;

/**
 * A saved row with what one change of it did put back: each field that the change touched, and in the
 * lists of what nobody said those that it struck. What holds something else than the change gave it
 * is somebody else's, and stays.
 *
 * @param before the row as it was
 * @param change the same as it was sent
 * @param saved as it was kept, perhaps joined with what somebody else changed
 */
export function putBack<Row extends object>(before: Row, change: Row, saved: Row): Row {
  const sent = withoutSaid(before, change) as Fields;
  const [was, is] = [before, saved] as [Fields, Fields];
  const row: Record<string, unknown> = { ...is };
  const touched = Object.keys({ ...was, ...sent })
    .filter((name) => name !== 'version' && !isList(name))
    .filter((name) => !isSame(was[name], sent[name]) && isSame(is[name], sent[name]));
  for (const name of touched) put(row, name, was[name]);
  for (const list of LISTS_OF_UNSAID) {
    const old = pathsIn(was, list);
    const struck = old.filter(
      (path) => !pathsIn(sent, list).includes(path) && touched.includes(path.split('.')[0]!),
    );
    if (struck.length === 0) continue;
    const now = pathsIn(is, list);
    put(row, list, [
      ...old.filter((path) => now.includes(path) || struck.includes(path)),
      ...now.filter((path) => !old.includes(path)),
    ]);
  }
  return row as Row;
}

const isList = (name: string): boolean => LISTS_OF_UNSAID.some((list) => list === name);

const pathsIn = (row: Fields, list: string): readonly string[] =>
  (row[list] as readonly string[] | undefined) ?? [];

function put(row: Record<string, unknown>, name: string, value: unknown): void {
  if (value === undefined) delete row[name];
  else row[name] = value;
}
