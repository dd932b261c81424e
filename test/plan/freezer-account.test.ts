import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../shared/calendar/plain-date.js';
import { eatenUpOn, leftOn, type Packed } from '../../shared/plan/freezer-account.js';

const packed = (batchName: string, on: string, birds: number): Packed => ({
  batchName,
  freezerId: 'freezer',
  on,
  birds,
  literEach: 5,
});
const JUNE = packed('June', '2027-06-01', 14);
const JULY = packed('July', '2027-07-01', 10);

describe('leftOn', () => {
  it('counts nothing before it is packed, and all of it on its day', () => {
    expect(leftOn([JUNE], { birdsPerWeek: 2 }, '2027-05-31')).toEqual([0]);
    expect(leftOn([JUNE], { birdsPerWeek: 2 }, '2027-06-01')).toEqual([14]);
  });

  it('eats the oldest first', () => {
    // 30 days at a bird a week leave 14 − 30/7; the July birds are not touched.
    const [june, july] = leftOn([JUNE, JULY], { birdsPerWeek: 1 }, '2027-07-01');
    expect(june).toBeCloseTo(14 - 30 / 7, 9);
    expect(july).toBe(10);
  });

  it('does not eat ahead what has not come yet', () => {
    // All June birds are gone after two weeks; July's are whole on their day.
    expect(leftOn([JUNE, JULY], { birdsPerWeek: 7 }, '2027-07-01')).toEqual([0, 10]);
    expect(leftOn([JUNE, JULY], { birdsPerWeek: 7 }, '2027-07-06')).toEqual([0, 5]);
  });

  it('eats each batch evenly where no pace is known', () => {
    expect(leftOn([JUNE], { evenlyOverDays: 28 }, '2027-06-15')).toEqual([7]);
    expect(leftOn([JUNE], { evenlyOverDays: 28 }, '2027-08-01')).toEqual([0]);
  });

  it('never leaves more than came, nor less than nothing, nor more the day after', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 1, max: 90 })), {
          minLength: 1,
          maxLength: 4,
        }),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        fc.integer({ min: 0, max: 400 }),
        (batches, birdsPerWeek, day) => {
          const all = batches
            .map(([at, birds], k) => packed(`${k}`, addDays('2027-06-01', at), birds))
            .sort((a, b) => (a.on < b.on ? -1 : 1));
          const date = addDays('2027-06-01', day);
          const now = leftOn(all, { birdsPerWeek }, date);
          const next = leftOn(all, { birdsPerWeek }, addDays(date, 1));
          now.forEach((left, k) => {
            expect(left).toBeGreaterThanOrEqual(0);
            expect(left).toBeLessThanOrEqual(all[k]!.birds);
            if (all[k]!.on <= date) expect(next[k]!).toBeLessThanOrEqual(left);
          });
        },
      ),
    );
  });
});

describe('eatenUpOn', () => {
  it('waits until older batches are eaten', () => {
    const isJuly = ({ batchName }: Packed) => batchName === 'July';
    // On 1 July 14 − 30/7 = 9.7 of June's are left; with 10 more, at one a week, 19.7 weeks.
    expect(eatenUpOn([JUNE, JULY], { birdsPerWeek: 1 }, isJuly)).toBe(addDays('2027-07-01', 138));
  });

  it('is a year after packing where no pace is known', () => {
    expect(eatenUpOn([JUNE], { evenlyOverDays: 365 }, () => true)).toBe('2028-05-31');
  });
});
