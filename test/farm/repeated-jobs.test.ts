import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import { inSeries, repeatWords } from '../../shared/farm/repeated-jobs.js';
import { workPlanOf } from '../../shared/plan/work/work-plan.js';
import { newBatchWork, newOwnJob, newWork } from '../support/season-factories.js';

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

  it('keeps off the days of processing where another day does, and is not asked for twice', () => {
    const work = [newBatchWork('2027-04-14', '2027-04-05')];
    const killing = work[0]!.tasks.find(({ templateId }) => /^processing.kill/.test(templateId))!;
    const on = killing.start;
    const every = (everyDays: number) =>
      newOwnJob({
        id: 'sweep',
        hours: 0.5,
        dueOn: addDays(on, -30),
        repeats: { every: 'days', everyDays },
      });
    const daysFrom = (today: string, everyDays: number): string[] => {
      const { chores } = workPlanOf(newWork({ today, work, ownJobs: [every(everyDays)] }), 5);
      return chores.flatMap((day, k) =>
        day.some(({ key }) => key === 'own/sweep') ? [addDays(today, k)] : [],
      );
    };
    expect(daysFrom(addDays(on, -4), 3).slice(0, 3)).toEqual([
      addDays(on, -3),
      addDays(on, -1),
      addDays(on, 3),
    ]);
    // On the day itself it was done yesterday; what comes daily comes on it all the same.
    expect(daysFrom(on, 3)[0]).toBe(addDays(on, 3));
    expect(daysFrom(on, 1)[0]).toBe(on);
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
