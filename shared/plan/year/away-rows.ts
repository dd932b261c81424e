import { addDays } from '../../calendar/plain-date.js';
import type { Person } from '../../farm/farm.js';
import type { Handover } from '../../farm/handover.js';
import { inOrder, type YearRow } from './year-row.js';

/** Those who are away, a row each, and the days on which somebody else is in charge. */
export function awayRows(people: readonly Person[], handovers: readonly Handover[]): YearRow[] {
  return [
    ...people
      .filter(({ away }) => 0 < away.length)
      .map(({ id, name, away }): YearRow => ({
        kind: 'away',
        id,
        name,
        bars: away.map(({ from, to }) => ({ kind: 'away', from, until: addDays(to, 1) })),
        dates: inOrder(
          away.flatMap(({ from, to, isIll }) => [
            { on: from, words: isIll ? 'ill' : 'leaves' },
            { on: addDays(to, 1), words: isIll ? 'well again' : 'is back' },
          ]),
        ),
      })),
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
