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
  const had = linesOf(before);
  return {
    isNew: (of, line) => !had.has(keyOf(of, line)),
    isAny: [...linesOf(page)].some((line) => !had.has(line)),
  };
}

const keyOf = (of: string | undefined, line: string): string => `${of ?? ''}: ${line}`;

const linesOf = ({ stops, chores, jobs }: SheetPage): ReadonlySet<string> =>
  new Set([
    ...stops.flatMap(({ name, carried, actions }) =>
      [...carried, ...actions].map((line) => keyOf(name, line)),
    ),
    ...[...chores, ...jobs].map(({ of, name }) => keyOf(of, name)),
  ]);
