import type { SheetPage } from './sitter-sheet.js';

/** What stands on a page and stood not on the page of the day before. */
export interface NewOnPage {
  /** Whether a line of a stop is new, by the stop's name. */
  readonly isNew: (of: string | undefined, line: string) => boolean;
  readonly isAny: boolean;
}

/**
 * Days of a stay are much alike: what is done otherwise than the day before is to be seen. Amounts, which
 * go up little by little, are not meant; the first day has none before it.
 */
export function newOnPage(page: SheetPage, before: SheetPage | undefined): NewOnPage {
  if (!before) return { isNew: () => false, isAny: false };
  const had = new Set(linesOf(before).values());
  const now = linesOf(page);
  return {
    isNew: (of, line) => {
      const key = keyOf(of, line);
      return !had.has(now.get(key) ?? key);
    },
    isAny: [...now.values()].some((does) => !had.has(does)),
  };
}

const keyOf = (of: string | undefined, line: string): string => `${of ?? ''}: ${line}`;

/** What is done by each line of a page. */
const linesOf = ({ stops, chores, jobs }: SheetPage): ReadonlyMap<string, string> =>
  new Map([
    ...stops.flatMap(({ name, carried, actions, does = {} }) =>
      [...carried, ...actions].map(
        (line) => [keyOf(name, line), keyOf(name, does[line] ?? line)] as const,
      ),
    ),
    ...[...chores, ...jobs].map(({ of, name }) => [keyOf(of, name), keyOf(of, name)] as const),
  ]);
