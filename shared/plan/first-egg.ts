import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import { countedFrom, type EggCount } from '../farm/egg-count.js';
import type { LayCurve } from '../tables/lay-tables.js';
import type { Judgements } from '../tables/judgements.js';

type Curve = Pick<LayCurve, 'firstEggWeekLow' | 'firstEggWeekHigh'>;
type Judged = Pick<Judgements['birds'], 'earlyEggShare' | 'lateEggShare'>;

/** Ages between which a first egg is believed, days. */
export const firstEggBounds = (
  { firstEggWeekLow, firstEggWeekHigh }: Curve,
  { earlyEggShare, lateEggShare }: Judged,
): { readonly least: number; readonly most: number } => ({
  least: Math.ceil(7 * firstEggWeekLow * earlyEggShare.value),
  most: Math.floor(7 * firstEggWeekHigh * lateEggShare.value),
});

/**
 * Age at the first egg, days: what is usual, but no earlier than a count of the flock that found
 * none and no later than one that found some. Counts of none after eggs, such as in a molt, say
 * nothing of it.
 *
 * @param usualAgeDays by the table of how they lay
 * @param bounds beyond which a count tells of something else
 */
export function firstEggAge(
  usualAgeDays: number,
  eggCounts: readonly EggCount[],
  {
    hatchDate,
    least,
    most,
  }: { readonly hatchDate: PlainDate; readonly least: number; readonly most: number },
): number {
  const counts = eggCounts
    .map((count) => ({
      eggs: count.eggs,
      from: daysBetween(hatchDate, countedFrom(count)),
      to: daysBetween(hatchDate, count.date),
    }))
    .filter(({ from, to }) => least <= from && to < most);
  const some = counts.filter(({ eggs }) => 0 < eggs);
  const firstTo = Math.min(...some.map(({ to }) => to));
  const none = counts.filter(({ eggs, to }) => eggs === 0 && to < firstTo);
  const notBefore = Math.max(-Infinity, ...none.map(({ to }) => to + 1));
  // Counted over several days, the first egg may have come on any of them.
  const notAfter = Math.min(...some.map(({ from }) => from));
  return Math.max(notBefore, Math.min(usualAgeDays, Math.max(notBefore, notAfter)));
}
