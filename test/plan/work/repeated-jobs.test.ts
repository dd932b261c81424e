import { describe, expect, it } from '@jest/globals';
import { inSeries, repeatWords } from '../../../shared/plan/work/repeated-jobs.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { newOwnJob, newWork } from '../../support/season-factories.js';

describe('work that comes again', () => {
  const weekly = newOwnJob({
    id: 'bedding',
    name: 'Fresh bedding',
    dueOn: '2027-04-10',
    repeats: { every: 'weekdays', weekdays: [6] },
  });
  const once = newOwnJob({ id: 'once', name: 'Fence', dueOn: '2027-04-20' });
  const { jobs } = workPlanOf(newWork({ ownJobs: [weekly, once] }), 20);

  it('is planned each time, and listed in one line by its next time', () => {
    expect(jobs.filter(({ name }) => name === 'Fresh bedding').length).toBeGreaterThan(10);
    const byDate = [...jobs].sort((a, b) => a.latest.localeCompare(b.latest));
    const lines = inSeries(byDate);
    expect(lines.map(({ next, often }) => [next.name, often])).toEqual([
      ['Fresh bedding', 'every week'],
      ['Fence', undefined],
    ]);
    expect(lines[0]!.next.key).toBe('own/bedding/2027-04-10');
    expect(1 + lines[0]!.later.length).toBe(jobs.length - 1); // nothing is lost in the line
    expect(lines[1]!.later).toEqual([]);
  });

  it('says how often', () => {
    expect(repeatWords({ every: 'day' })).toBe('every day');
    expect(repeatWords({ every: 'weekdays', weekdays: [4, 1, 6] })).toBe(
      'every Monday, Thursday and Saturday',
    );
    expect(repeatWords({ every: 'days', everyDays: 10 })).toBe('every 10 days');
    expect(repeatWords({ every: 'days', everyDays: 14 })).toBe('every 2 weeks');
  });
});
