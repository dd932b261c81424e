import type { FeedSpent, SpentPart } from '../../shared/plan/feed-spent/feed-spent.js';
import { formatDate } from '../../shared/units/dates.js';
import type { Reader } from '../../shared/units/format.js';
import { section, tablesFor, title } from './text.js';

/** Where the feed money of the last year went, as text, and what to do otherwise. */
export function printSpent(spent: FeedSpent | undefined, reader: Reader): string {
  if (!spent) return 'No feed was told as bought in the last twelve months.';
  const { table, show } = tablesFor(reader);
  const { total, from, receipts, otherwise, tooOld, byFeed, byEater, bySeller, byMonth } = spent;
  const said = [...(otherwise?.ways ?? []), ...(otherwise?.all ? [otherwise.all] : []), ...tooOld];
  const part = (heading: string, parts: readonly SpentPart[]): string =>
    section(
      heading,
      table(
        ['', 'Bought', 'Paid'],
        parts.map(({ name, amount, cost }) => [name, amount, cost]),
      ),
    );
  return [
    title(
      `Feed since ${formatDate(from, reader)}: ${show(total)} on ${receipts === 1 ? 'one trip' : `${receipts} trips`}`,
    ),
    ...(said.length === 0 ? [] : ['', ...said.map((each) => `- ${each.said}`)]),
    part('By feed', byFeed),
    part('By who ate it', byEater),
    part('By seller', bySeller),
    part('By month', byMonth),
  ].join('\n');
}
