import type { Entry, StayRecord } from '../../pasture/season-books.js';
import type { Sward } from '../../pasture/sward.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { listed } from '../../units/listed.js';
import type { PastureContext } from './pasture-context.js';
import type { Chosen } from './surplus.js';

/** Why herds go in below the ready height, as it is said of several moves. */
const WHY: Partial<Record<Entry, string>> = {
  'first-pass': 'in the first quick round, so that the last paddock does not head out',
  'leaf-stage': 'ready by leaf count, as old leaves would die before it is taller',
  'at-rest': 'while nothing grows',
  dormant: 'in the last round, as it grows hardly any taller this season',
};

/** The same of a farm of one paddock. */
const WHY_ALONE = { ...WHY, 'first-pass': 'in early spring, so that it does not head out' };

/**
 * Where many moves go in before the grass is at its best height, says which and why, how many of them
 * below the least height that is advised, and what a grazier would do about it.
 */
export function lowEntries(context: PastureContext, { books }: Chosen): PlanIssue[] {
  const { tables, grass, paddocks } = context;
  const why = paddocks.length === 1 ? WHY_ALONE : WHY;
  const { lowEntriesShare } = tables.judgements.grazing;
  const swardOf = ({ paddock }: StayRecord): Sward => grass.swards[paddock]!.sward;
  const low = books.stays.filter(
    (stay) => WHY[stay.entry] !== undefined && stay.massBefore < swardOf(stay).turnInKgPerHa,
  );
  if (low.length <= lowEntriesShare.value * books.stays.length) return [];
  const parts = (Object.keys(WHY) as Entry[]).flatMap((entry) => {
    const stays = low.filter((stay) => stay.entry === entry);
    return stays.length === 0 ? [] : [`${stays.length} ${why[entry]} (${said(context, stays)})`];
  });
  const tooLow = low.filter((stay) => stay.massBefore < swardOf(stay).leastEntryKgPerHa).length;
  const ready =
    tooLow === 0
      ? 'all of them'
      : tooLow === low.length
        ? 'none of them'
        : `all but ${tooLow} of them`;
  const isSlow = low.some(({ entry }) => entry === 'leaf-stage' || entry === 'at-rest');
  const ways = [
    ...(books.cuts.length === 0 ? [] : ['shut less for hay']),
    ...['keep fewer head', 'feed hay for some weeks while it grows'],
  ];
  return [
    issue(
      'note',
      'goes-in-low',
      `${low.length} of ${books.stays.length} moves go into grass below its best height, ${ready} at the least height that is advised or above: ${parts.join('; ')}. Each leaves the usual stubble.${isSlow ? ` To go in taller, ${listed(ways, 'or')}.` : ''}`,
      [lowEntriesShare],
    ),
  ];
}

/** When, and how tall the shortest stands. */
function said({ grass, dateOf, say }: PastureContext, stays: readonly StayRecord[]): string {
  const heights = stays.map(
    ({ massBefore, paddock }) => massBefore / grass.swards[paddock]!.kgPerHaCm,
  );
  const [first, last] = [stays[0]!, stays.at(-1)!];
  const on = say(dateOf(first.from), 'date');
  const until = stays.length === 1 ? '' : ` to ${say(dateOf(last.from), 'date')}`;
  const orMore = stays.length === 1 ? '' : ' or more';
  return `${on}${until}, at ${say(Math.min(...heights), 'cm')}${orMore}`;
}
