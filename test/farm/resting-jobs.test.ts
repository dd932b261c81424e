import { describe, expect, it } from '@jest/globals';
import { restingSince } from '../../shared/farm/resting-jobs.js';

describe('a job goes to rest', () => {
  it.each([
    ['thirty days after it was done', {}, { doneOn: '2027-05-01' }, '2027-05-31', '2027-05-31'],
    ['not a day sooner', {}, { doneOn: '2027-05-01' }, '2027-05-30', undefined],
    [
      'a year after it was lost',
      { noUseAfter: '2027-05-01' },
      undefined,
      '2028-05-01',
      '2028-05-01',
    ],
    [
      'by the day it was done, if it was',
      { noUseAfter: '2027-05-01' },
      { doneOn: '2028-04-25' },
      '2028-05-01',
      undefined,
    ],
    ['never while it is only late', {}, { notBefore: '2027-05-01' }, '2040-01-01', undefined],
  ])('%s', (_what, job, mark, today, expected) => {
    expect(restingSince(job, mark, today, { doneDays: 30, lostDays: 366 })).toBe(expected);
  });
});
