import { addDays } from '../../calendar/plain-date.js';
import type { Person } from '../../farm/farm.js';
import type { Handover } from '../../farm/handover.js';
import { listed } from '../../units/listed.js';
import { inOrder, type YearRow } from './year-row.js';

/** Those who are away, a row for all on the same days, and the days on which somebody else is in charge. */
export function awayRows(people: readonly Person[], handovers: readonly Handover[]): YearRow[] {
  return [
    ...sameDays(people).map((together): YearRow => {
      const { id, away } = together[0]!;
      const isOne = together.length === 1;
      return {
        kind: 'away',
        id,
        name: listed(together.map(({ name }) => name)),
        bars: away.map(({ from, to }) => ({ kind: 'away', from, until: addDays(to, 1) })),
        dates: inOrder(
          away.flatMap(({ from, to, isIll }) => [
            { on: from, words: isIll ? 'ill' : isOne ? 'leaves' : 'leave' },
            { on: addDays(to, 1), words: isIll ? 'well again' : isOne ? 'is back' : 'are back' },
          ]),
        ),
      };
    }),
    ...handovers.map(({ id, from, to, sitter, personId }): YearRow => {
      const name = sitter ?? people.find((person) => person.id === personId)?.name ?? '';
      return {
        kind: 'away',
        id,
        name: `${name} in charge`,
        bars: [{ kind: 'sitter', from, until: addDays(to, 1) }],
        dates: [
          { on: from, words: 'first day in charge' },
          { on: to, words: 'last day in charge' },
        ],
      };
    }),
  ];
}

/** People who are away at all, those who are on the very same days together. */
function sameDays(people: readonly Person[]): Person[][] {
  const byDays = new Map<string, Person[]>();
  for (const person of people.filter(({ away }) => 0 < away.length)) {
    const days = person.away.map(({ from, to, isIll }) => `${from} ${to} ${isIll ? 'ill' : ''}`);
    const key = days.sort().join();
    byDays.set(key, [...(byDays.get(key) ?? []), person]);
  }
  return [...byDays.values()];
}
