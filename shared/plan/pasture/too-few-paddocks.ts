import type { Herd } from '../../farm/herd.js';
import { paddocksFor, restOfRotation } from '../../pasture/sizing.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import type { PastureContext } from './pasture-context.js';

/** Says when the longest rest takes more paddocks than there are, and what closes the gap. */
export function tooFewPaddocks(
  { paddocks, tables, say }: PastureContext,
  { name }: Herd,
  { restDays, stayDays }: { restDays: number; stayDays: number },
): PlanIssue[] {
  const there = paddocks.length;
  const needed = paddocksFor(restDays, stayDays);
  if (needed <= there) return [];
  const rest = say(restDays, 'day');
  const inTurn =
    there === 1
      ? 'there is 1, which never rests'
      : `there are ${there}, which rest ${say(restOfRotation(there, stayDays), 'day')} when grazed in turn`;
  const longest = tables.pasture.longestStayDays.value;
  const forLongest = paddocksFor(restDays, longest);
  const longerStays =
    longest <= stayDays
      ? ''
      : `, or let them stay up to ${say(longest, 'day')}, which takes ${forLongest}`;
  return [
    issue(
      'note',
      'too-few-paddocks',
      `The longest rest, ${rest}, with stays of ${say(stayDays, 'day')} takes ${needed} paddocks for ${name}; ${inTurn}. Split paddocks until there are ${needed}, for good or in strips with a back fence, as these moves do${longerStays}. A shorter rest is no fix, because the grass is not back by then; nor are stays over ${say(longest, 'day')}, which bite the regrowth.`,
      [tables.pasture.longestStayDays],
    ),
  ];
}
