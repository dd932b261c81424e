import { describe, expect, it } from '@jest/globals';
import type { OwnJob } from '../../shared/farm/job.js';
import { missedTimes } from '../../shared/farm/missed-times.js';

const time = (k: number, dueOn: string, notBefore = dueOn): OwnJob => ({
  ...{ id: `look-${k}`, name: `Check for swarm cells, ${k} of 6`, hours: 1, notBefore, dueOn },
  ...{ priority: 'should', conditions: {}, canBeSpread: true, setId: 'hives' },
});

describe('times of a set that were missed', () => {
  const jobs = [time(1, '2027-05-04'), time(2, '2027-05-13', '2027-05-10'), time(3, '2027-05-22')];

  it('give way to the next one once that has begun', () => {
    expect([...missedTimes(jobs, '2027-05-12')]).toEqual(['look-1']);
    expect([...missedTimes(jobs, '2027-06-30')]).toEqual(['look-1', 'look-2']);
  });

  it('are asked for while the next one has not begun, and where nobody made them of a set', () => {
    expect([...missedTimes(jobs, '2027-05-09')]).toEqual([]);
    const own = jobs.map(({ setId: _set, ...job }) => job);
    expect([...missedTimes(own, '2027-06-30')]).toEqual([]);
  });
});
