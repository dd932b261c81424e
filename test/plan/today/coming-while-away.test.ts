import { expect, it } from '@jest/globals';
import { comingWhileAway } from '../../../shared/plan/today/coming-while-away.js';
import { newRequest } from '../../support/factories.js';

const { batch, farm } = newRequest({});
const chicks = { ...batch, id: 'meat', name: 'Meat birds', arrivalDate: '2027-04-28' };
const adult = (id: string, from?: string, to = '2027-04-29') => ({
  ...{ id, name: `Adult ${id}` },
  away: from === undefined ? [] : [{ from, to }],
});
const said = (...people: ReturnType<typeof adult>[]): string[] =>
  comingWhileAway({ batches: [chicks], people, farm, today: '2026-11-29' }).map(({ says }) => says);

it('says who has chicks that come while somebody is away', () => {
  expect(said(adult('1'), adult('2', '2027-04-24'))).toEqual([
    expect.stringMatching(
      /^Meat birds come .*Apr.* 2027, and Adult 2 is away until .*29.*: Adult 1 has them alone in their first days/,
    ),
  ]);
  expect(said(adult('2', '2027-04-24'))[0]).toContain(': nobody is there in their first days');
});

it('says nothing of days away before they come or after their first days', () => {
  expect(said(adult('1'), adult('2', '2027-04-24', '2027-04-27'))).toEqual([]);
  expect(said(adult('1'), adult('2', '2027-05-01', '2027-05-03'))).toEqual([]);
  expect(said(adult('1'), adult('2', '2027-04-30', '2027-05-03'))).toHaveLength(1);
});
