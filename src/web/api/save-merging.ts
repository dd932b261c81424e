import { withoutSaid } from '../../../shared/farm/assumed.js';
import {
  isSame,
  keepMine,
  mergeRow,
  type Clash,
  type Merged,
} from '../../../shared/farm/merge-row.js';
import { ApiError, putJson, remove } from './client.js';

/** Asks which of the fields that clash are to stay as mine; undefined when nothing is to be saved. */
export type AskAboutClashes = (clashes: readonly Clash[]) => Promise<readonly Clash[] | undefined>;

type Fields = Readonly<Record<string, unknown>>;

/** What the service says of a row and does not take back. */
const NOT_SENT = ['id', 'version', 'revision', 'isSample'];

/**
 * Saves a changed row. When somebody else has changed it meanwhile, both changes are joined and
 * saved; where they clash, it is asked which holds.
 *
 * @param loaded the row as the change was made from it; undefined when the page never saw it
 * @param how whether it puts back what was there: then what nobody had said is that again
 * @throws ApiError when the service refuses, or when nothing is to be saved after all
 */
export async function saveMerging<Saved>(
  path: string,
  row: object,
  ask: AskAboutClashes,
  loaded: object | undefined,
  { isPutBack = false } = {},
): Promise<Saved> {
  const changed = isPutBack ? row : withoutSaid(loaded, row);
  for (let mine = changed as Fields, before = loaded as Fields | undefined; ;) {
    try {
      return await putJson<Saved>(path, mine);
    } catch (problem) {
      const current = currentIn(problem);
      if (!current) throw problem;
      const merged = mergeRow(before && sent(before), sent(mine), sent(current));
      const fields = await decided(merged, ask);
      if (!fields) throw problem;
      mine = { ...fields, version: current['version'] };
      before = current;
    }
  }
}

/** A row that is to be deleted, as it was seen. Rows that are never changed have no version. */
export interface Deleted {
  readonly id: string;
  readonly version?: number | undefined;
}

/** Asks whether a row is to be deleted although somebody else has changed it. */
export type AskAboutDeleting = (seen: Deleted, current: Fields) => Promise<true | undefined>;

/**
 * Deletes a row of a path. When somebody else has changed it since it was seen, it is asked whether
 * it is still to be deleted.
 *
 * @returns whether it is deleted
 * @throws ApiError when the service refuses
 */
export async function removeAsking(
  path: string,
  seen: Deleted,
  ask: AskAboutDeleting,
): Promise<boolean> {
  for (let row = seen; ;) {
    try {
      await remove(`${path}/${row.id}`, row.version);
      return true;
    } catch (problem) {
      const current = currentIn(problem);
      if (!current) throw problem;
      if (!(await ask(row, current))) return false;
      row = current as unknown as Deleted;
    }
  }
}

/** Fields of a row that differ from how it was seen; all that it has when that is not known. */
export const changedFields = (seen: object | undefined, current: Fields): [string, unknown][] =>
  Object.keys({ ...seen, ...current })
    .filter((name) => !NOT_SENT.includes(name))
    .map((name): [string, unknown] => [name, current[name]])
    .filter(([name, value]) => !seen || !isSame((seen as Fields)[name], value));

async function decided(merged: Merged, ask: AskAboutClashes): Promise<Fields | undefined> {
  if (merged.clashes.length === 0) return merged.row;
  const keep = await ask(merged.clashes);
  return keep && keepMine(merged, keep);
}

const currentIn = (problem: unknown): Fields | undefined =>
  problem instanceof ApiError ? (problem.problem.current as Fields | undefined) : undefined;

const sent = (row: Fields): Fields =>
  Object.fromEntries(Object.entries(row).filter(([name]) => !NOT_SENT.includes(name)));
