import { useState } from 'react';

/**
 * Rows in the places where they were first seen, so that what is ticked off stays under the thumb;
 * new ones come at the end, but above those that stand below all others.
 */
export function useInPlace<T extends { readonly key: string; readonly state: string }>(
  rows: readonly T[],
  isBelow: (row: T) => boolean,
): T[] {
  const [seen, setSeen] = useState<readonly string[]>([]);
  const [below, setBelow] = useState<readonly string[]>([]);
  // What is ticked has lost what put it below, and stays there all the same.
  const isLow = (row: T): boolean =>
    row.state === 'open' ? isBelow(row) : below.includes(row.key);
  const added = rows.map(({ key }) => key).filter((key) => !seen.includes(key));
  const order = [...seen, ...added];
  if (0 < added.length) setSeen(order);
  const low = rows.filter(isLow).map(({ key }) => key);
  if (low.length !== below.length || low.some((key) => !below.includes(key))) setBelow(low);
  return [...rows].sort(
    (a, b) => Number(isLow(a)) - Number(isLow(b)) || order.indexOf(a.key) - order.indexOf(b.key),
  );
}
