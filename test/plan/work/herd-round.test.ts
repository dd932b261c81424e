import { describe, expect, it } from '@jest/globals';
import { herdRounds } from '../../../shared/plan/work/herd-round.js';
import { tables } from '../../support/factories.js';

const today = '2027-12-01';
const roundsOf = (
  group: {
    classId?: string;
    head?: number;
    arrivesOn?: string;
    leavesOn?: string;
    calvesOn?: string;
  },
  isSeen: (day: number) => boolean = () => false,
) => {
  const groups = [{ classId: 'dry-cow', head: 10, ...group }];
  const herd = { id: 'h', name: 'Cows', groups };
  return herdRounds({ herd, tables, today, days: 20, isSeen });
};

describe('the round of a herd', () => {
  it('comes on every day there are cattle, and no day on which another chore sees them', () => {
    const [round] = roundsOf(
      { arrivesOn: '2027-12-04', leavesOn: '2027-12-14' },
      (day) => day === 5,
    );
    expect([...round!.onDays!]).toEqual([3, 4, 6, 7, 8, 9, 10, 11, 12]);
  });

  it('takes the hours of feeding hay and of the daily look, by the templates of both', () => {
    // seeds/herd-task-templates.json, for ten head: 0.25 + 0.1 h, 0.35 + 0.05 h.
    expect(roundsOf({})[0]!.hoursPerDay).toBeCloseTo(0.75, 9);
  });

  it('milks twice a day while a cow is in milk, besides the look at all', () => {
    const milkingOf = (more: object) =>
      roundsOf({ classId: 'milk-cow', head: 1, ...more }, () => true);
    // seeds/work.json: twice a day, a quarter of an hour, and as much again for each cow.
    expect(milkingOf({})).toMatchObject([{ key: 'herd/h/milking', hoursPerDay: 1 }]);
    expect(milkingOf({ head: 3 })[0]!.hoursPerDay).toBe(2);
    // Dry for sixty days before she calves.
    expect([...milkingOf({ calvesOn: '2028-02-10' })[0]!.onDays!]).toEqual([
      0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10,
    ]);
    expect(milkingOf({ calvesOn: '2028-01-10' })).toEqual([]);
    expect(roundsOf({}, () => true)).toEqual([]);
  });

  it('asks nothing once they have gone', () => {
    expect(roundsOf({ leavesOn: today })).toEqual([]);
  });
});
