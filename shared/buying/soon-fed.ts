import type { BuyingProblem, FeedItem } from './buying-problem.js';

/**
 * The last day for which an item may be fetched from a seller: what is fed later waits until it may be
 * fetched, unless the seller is not reached again in time.
 *
 * @returns by seller, by day, with -1 where nothing of it is fetched; undefined where it may lie as
 *   long as it keeps
 */
export function soonFed(
  { days, suppliers, handDays }: BuyingProblem,
  { needKg, notBefore }: FeedItem,
): readonly Int32Array[] | undefined {
  if (notBefore === undefined) return undefined;
  const fedDays = Array.from(needKg.keys()).filter((day) => 0 < needKg[day]!);
  return suppliers.map(({ days: open }) => {
    const until = new Int32Array(days).fill(-1);
    let nextOpen = days;
    let first = fedDays.length;
    for (let day = days - 1; 0 <= day; day--) {
      if (0 < needKg[day]!) first--;
      for (let k = first; k < fedDays.length; k++) {
        const fed = fedDays[k]!;
        // Feed is in the house some days before it is fed.
        if (nextOpen + handDays <= fed && day < notBefore[fed]!) break;
        until[day] = fed;
      }
      if (open[day] === 1) nextOpen = day;
    }
    return until;
  });
}
