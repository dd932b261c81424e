import { describe, expect, it } from '@jest/globals';
import type { Person } from '../../shared/farm/farm.js';
import { absencesAhead, withoutAway } from '../../shared/farm/absences.js';

const person = (id: string, away: [string, string][], more: Partial<Person> = {}): Person => ({
  ...{ id, name: id, away: away.map(([from, to]) => ({ from, to })) },
  ...more,
});
const a = person('a', [['2027-05-10', '2027-05-14']]);
const b = person('b', [['2027-05-12', '2027-05-16']]);
const child = person('c', [['2027-05-01', '2027-05-30']], { isChild: true });
const sheet = (from: string, to: string) => ({ from, to });
const TODAY = '2027-05-01';
const short = (...of: Parameters<typeof absencesAhead>) =>
  absencesAhead(...of).map(({ from, to, awayIds, stayIds }) => [
    from.slice(5),
    to.slice(5),
    awayIds.join(''),
    stayIds.join(''),
  ]);

describe('absencesAhead', () => {
  it('parts days by who is away, so that it is known who stays; children are in charge of nothing', () => {
    expect(short([a, b, child], [], TODAY)).toEqual([
      ['05-10', '05-11', 'a', 'b'],
      ['05-12', '05-14', 'ab', ''],
      ['05-15', '05-16', 'b', 'a'],
    ]);
  });

  it('knows who of them is ill: in the house, not away', () => {
    const ill = { ...b, away: [{ from: '2027-05-12', to: '2027-05-16', isIll: true }] };
    expect(absencesAhead([a, ill], [], TODAY).map(({ illIds }) => illIds)).toEqual([
      [],
      ['b'],
      ['b'],
    ]);
  });

  it('leaves out days that have a sheet, and days that are past', () => {
    expect(short([a], [sheet('2027-05-12', '2027-05-20')], TODAY)).toEqual([
      ['05-10', '05-11', 'a', ''],
    ]);
    expect(short([a], [], '2027-05-13')).toEqual([['05-13', '05-14', 'a', '']]);
    expect(short([a], [], '2027-05-15')).toEqual([]);
    expect(short([a, b], [sheet('2027-05-01', '2027-05-20')], TODAY)).toEqual([]);
  });

  it('parts what is longer than a sheet can be', () => {
    expect(short([person('a', [['2027-06-01', '2027-07-05']])], [], TODAY)).toEqual([
      ['06-01', '07-01', 'a', ''],
      ['07-02', '07-05', 'a', ''],
    ]);
  });
});

describe('withoutAway', () => {
  const away = [{ from: '2027-06-01', to: '2027-06-10' }];
  const [ada, ben] = [
    { id: 'a', name: 'Ada', away },
    { id: 'b', name: 'Ben', away },
  ];
  const left = (from: string, to: string) =>
    withoutAway([ada, ben], { awayIds: ['a'], from, to }).map((person) => person.away);

  it.each([
    ['all of it', '2027-06-01', '2027-06-10', []],
    [
      'its middle',
      '2027-06-04',
      '2027-06-05',
      [
        ['01', '03'],
        ['06', '10'],
      ],
    ],
    ['its end and beyond', '2027-06-08', '2027-06-20', [['01', '07']]],
    ['nothing of it', '2027-06-11', '2027-06-20', [['01', '10']]],
  ])('takes days off one person and leaves the rest: %s', (_what, from, to, days) => {
    const rest = days.map(([a, b]) => ({ from: `2027-06-${a}`, to: `2027-06-${b}` }));
    expect(left(from, to)).toEqual([rest, away]);
  });

  it('keeps an illness one, in both its parts', () => {
    const ill = { ...ada, away: [{ ...away[0]!, isIll: true }] };
    const [rest] = withoutAway([ill], { awayIds: ['a'], from: '2027-06-04', to: '2027-06-05' });
    expect(rest!.away.map(({ isIll }) => isIll)).toEqual([true, true]);
  });
});
