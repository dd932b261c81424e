import type { ArchiveRow } from './archive-format.js';

/** Ids and the text between them, such as `batch/<id>/brooder-dry.1`; nothing with blanks is one. */
const REFERENCE = /^[A-Za-z0-9/.:_#@|,-]+$/;
const TOKENS = /[A-Za-z0-9-]+/g;

/**
 * A row in which every id that was made anew is the new one: alone, in a key that is put together
 * of several (`own/<id>`, `event/<id>/arrival`, `sitter-<id>`), and anywhere inside JSON, in
 * values and in names. Other text stays as it is, even when an id stands in its midst.
 *
 * @param newIds new id by old one
 */
export function withNewIds(row: ArchiveRow, newIds: ReadonlyMap<string, string>): ArchiveRow {
  return renewed(row, newIds) as ArchiveRow;
}

function renewed(value: unknown, newIds: ReadonlyMap<string, string>): unknown {
  if (typeof value === 'string') return inText(value, newIds);
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map((each) => renewed(each, newIds));
  return Object.fromEntries(
    Object.entries(value).map(([name, each]) => [inText(name, newIds), renewed(each, newIds)]),
  );
}

function inText(text: string, newIds: ReadonlyMap<string, string>): string {
  if (/^[{[]/.test(text)) return inJsonText(text, newIds);
  return REFERENCE.test(text) ? text.replace(TOKENS, (token) => inToken(token, newIds)) : text;
}

/** JSON that was written with other blanks than ours is kept as text, and so is somebody's note. */
function inJsonText(text: string, newIds: ReadonlyMap<string, string>): string {
  try {
    const value: unknown = JSON.parse(text);
    const after = JSON.stringify(renewed(value, newIds));
    return after === JSON.stringify(value) ? text : after;
  } catch {
    return text;
  }
}

/** A token that is an id, or a word, a dash and an id. */
function inToken(token: string, newIds: ReadonlyMap<string, string>): string {
  const known = newIds.get(token);
  if (known !== undefined) return known;
  for (let at = token.indexOf('-'); at !== -1; at = token.indexOf('-', at + 1)) {
    const tail = newIds.get(token.slice(at + 1));
    if (tail !== undefined) return `${token.slice(0, at + 1)}${tail}`;
  }
  return token;
}
