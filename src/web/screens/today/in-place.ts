import { useState } from 'react';

/**
 * Rows in the places where they were first seen, so that what is ticked off stays under the thumb;
 * new ones come at the end.
 */
export function useInPlace<T extends { readonly key: string }>(rows: readonly T[]): T[] {
  const [seen, setSeen] = useState<readonly string[]>([]);
  const added = rows.map(({ key }) => key).filter((key) => !seen.includes(key));
  const order = [...seen, ...added];
  if (0 < added.length) setSeen(order);
  return [...rows].sort((a, b) => order.indexOf(a.key) - order.indexOf(b.key));
}
