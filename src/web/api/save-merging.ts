import { keepMine, mergeRow, type Clash, type Merged } from '../../../shared/farm/merge-row.js';
import { ApiError, putJson } from './client.js';
import { seenRow } from './seen-rows.js';

/** Asks which of the fields that clash are to stay as mine; undefined when nothing is to be saved. */
export type AskAboutClashes = (clashes: readonly Clash[]) => Promise<readonly Clash[] | undefined>;

type Fields = Readonly<Record<string, unknown>>;

/** What the service says of a row and does not take back. */
const NOT_SENT = ['id', 'version', 'revision', 'isSample'];

/**
 * Saves a changed row. When somebody else has changed it meanwhile, both changes are joined and
 * saved; where they clash, it is asked which holds.
 *
 * @throws ApiError when the service refuses, or when nothing is to be saved after all
 */
export async function saveMerging<Saved>(
  path: string,
  id: string,
  row: object,
  ask: AskAboutClashes,
): Promise<Saved> {
  for (let mine = row as Fields; ;) {
    try {
      return await putJson<Saved>(path, mine);
    } catch (problem) {
      const current = currentIn(problem);
      if (!current) throw problem;
      const loaded = seenRow(id, mine['version']);
      const merged = mergeRow(
        loaded && sent(loaded as unknown as Fields),
        sent(mine),
        sent(current),
      );
      const fields = await decided(merged, ask);
      if (!fields) throw problem;
      mine = { ...fields, version: current['version'] };
    }
  }
}

async function decided(merged: Merged, ask: AskAboutClashes): Promise<Fields | undefined> {
  if (merged.clashes.length === 0) return merged.row;
  const keep = await ask(merged.clashes);
  return keep && keepMine(merged, keep);
}

const currentIn = (problem: unknown): Fields | undefined =>
  problem instanceof ApiError ? (problem.problem.current as Fields | undefined) : undefined;

const sent = (row: Fields): Fields =>
  Object.fromEntries(Object.entries(row).filter(([name]) => !NOT_SENT.includes(name)));
