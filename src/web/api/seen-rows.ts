interface SeenRow {
  readonly id: string;
  readonly version: number;
  readonly name?: string;
}

/** Every version of every row that this page was given: what a change was made from. */
const seen = new Map<string, SeenRow>();
const newest = new Map<string, SeenRow>();

/** Remembers the rows of an answer, whether it is one, a list, or holds lists; and hands it on. */
export function remember<T>(answer: T): T {
  for (const each of [answer, ...listsIn(answer)].flat(1)) {
    if (!isRow(each)) continue;
    seen.set(`${each.id}/${each.version}`, each);
    newest.set(each.id, each);
  }
  return answer;
}

const listsIn = (answer: unknown): unknown[] =>
  typeof answer === 'object' && answer !== null && !Array.isArray(answer)
    ? Object.values(answer).filter(Array.isArray)
    : [];

/** A row as it was in a version; undefined when this page never saw it, as after a reload. */
export const seenRow = (id: string, version: unknown): SeenRow | undefined =>
  seen.get(`${id}/${String(version)}`);

/** What a row is called, by its id. */
export const seenName = (id: string): string | undefined => newest.get(id)?.name;

function isRow(value: unknown): value is SeenRow {
  const row = value as Partial<SeenRow> | null | undefined;
  return typeof row === 'object' && typeof row?.id === 'string' && typeof row.version === 'number';
}
