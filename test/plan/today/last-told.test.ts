import { describe, expect, it } from '@jest/globals';
import { lastTold } from '../../../shared/plan/today/last-told.js';

type Fact = Parameters<typeof lastTold>[0][number];
const told = (id: string, kind: string, on: string, details: object, more: object = {}): Fact =>
  ({
    ...{ id, key: id, kind, about: 'farm', on, details, toldAt: `${on}T10:00:00Z` },
    ...more,
  }) as unknown as Fact;

describe('what was told last', () => {
  const ids = (facts: readonly Fact[]): unknown[] =>
    lastTold(facts).map(({ kind, about, on }) => [kind, about, on]);

  it('is by the day on which it was, not by when it was told', () => {
    const late = told(
      'b',
      'milked',
      '2027-05-01',
      { liters: 4 },
      { toldAt: '2027-05-09T10:00:00Z' },
    );
    expect(ids([told('a', 'milked', '2027-05-05', { liters: 9 }), late])).toEqual([
      ['milked', 'farm', '2027-05-05'],
    ]);
  });

  it('is told apart by herd, and by what was bought', () => {
    const milk = (id: string, about: string) =>
      told(id, 'milked', '2027-05-05', { liters: 9 }, { about });
    expect(ids([milk('a', 'cows'), milk('b', 'goats')])).toHaveLength(2);
    const feed = (id: string, name: string) =>
      told(id, 'bought', '2027-05-05', { what: 'feed', amount: 1, name });
    expect(ids([feed('a', 'Grower'), feed('b', 'Starter'), feed('c', 'Grower')])).toHaveLength(2);
  });

  it('leaves out what was taken back, what another took the place of, and what brought no money', () => {
    const eggs = (id: string, details: object, more: object = {}) =>
      told(id, 'eggs-gone', '2027-05-05', { eggs: 12, how: 'sold', ...details }, more);
    const back = { takenBackAt: '2027-05-06T10:00:00Z' };
    expect(ids([eggs('a', {}), eggs('b', { money: '4.00' }, back)])).toEqual([]);
    const [last] = lastTold([
      eggs('a', { money: '4.00' }),
      eggs('b', { money: '5.00' }, { replaces: 'a' }),
    ]);
    expect(last?.details).toMatchObject({ money: '5.00' });
  });
});
