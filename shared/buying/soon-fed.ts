import type { BuyingProblem, FeedItem } from './buying-problem.js';

/**
 * The days on which an item can be fetched from a seller: what is fed next waits until it may be
 * fetched, unless the seller is not reached again in time.
 *
 * @returns by seller, by day; undefined where it may lie as long as it keeps
 */
export function soonFed(
  { days, suppliers, handDays }: BuyingProblem,
  { needKg, notBefore }: FeedItem,
): readonly Uint8Array[] | undefined {
  if (notBefore === undefined) return undefined;
  const nextFed = new Int32Array(days + 1).fill(days);
  for (let day = days - 1; 0 <= day; day--)
    nextFed[day] = 0 < needKg[day]! ? day : nextFed[day + 1]!;
  return suppliers.map(({ days: open }) => {
    const isSoon = new Uint8Array(days);
    let nextOpen = days;
    for (let day = days - 1; 0 <= day; day--) {
      const next = nextFed[day]!;
      if (next <= nextOpen + handDays || notBefore[next]! <= day) isSoon[day] = 1;
      if (open[day] === 1) nextOpen = day;
    }
    return isSoon;
  });
}
