import { isSame } from './merge-row.js';

type Fields = Readonly<Record<string, unknown>>;

/** Lists of a row that name those of its own fields which nobody has said. */
export const LISTS_OF_UNSAID = ['assumed', 'estimated'] as const;

/** Paths of fields that hold what they held before. */
export const unchanged = (
  paths: readonly string[],
  before: object,
  after: object,
): readonly string[] => paths.filter((path) => isSame(valueAt(before, path), valueAt(after, path)));

/** A changed row whose lists of what nobody said no longer name what was changed. */
export function withoutSaid<Row extends object>(before: object | undefined, row: Row): Row {
  if (before === undefined) return row;
  const lists = LISTS_OF_UNSAID.flatMap((list): [string, readonly string[]][] => {
    const paths = (row as Fields)[list];
    return Array.isArray(paths) ? [[list, unchanged(paths as string[], before, row)]] : [];
  });
  return { ...row, ...Object.fromEntries(lists) };
}

/** What a row names as assumed once somebody has set fields of it, be it to what they held before. */
export function assumedAfter(
  row: object,
  touched: readonly string[],
): { readonly assumed?: readonly string[] } {
  const { assumed } = row as { readonly assumed?: readonly string[] };
  if (!assumed?.some((path) => touched.includes(path))) return {};
  return { assumed: assumed.filter((path) => !touched.includes(path)) };
}

/** Whether a climate that nobody has said was reckoned for a height that nobody has said either. */
export const restsOnAssumedHeight = ({
  assumed = [],
  estimated = [],
}: {
  readonly assumed?: readonly string[] | undefined;
  readonly estimated?: readonly string[] | undefined;
}): boolean => assumed.includes('elevationM') && 0 < estimated.length;

const valueAt = (row: object, path: string): unknown =>
  path.split('.').reduce<unknown>((at, name) => (at as Fields | null | undefined)?.[name], row);
