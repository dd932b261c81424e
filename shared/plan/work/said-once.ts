/** What is said of each of several, in their order, without what was said of one before it. */
export function saidOnce<
  Of extends { readonly key: string; readonly waysToFit: readonly string[] },
>(all: readonly Of[]): ReadonlyMap<string, readonly string[]> {
  const said = new Set<string>();
  return new Map(
    all.map(({ key, waysToFit }) => {
      const fresh = waysToFit.filter((way) => !said.has(way));
      for (const way of fresh) said.add(way);
      return [key, fresh];
    }),
  );
}
