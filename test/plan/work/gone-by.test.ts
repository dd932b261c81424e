import { describe, expect, it } from '@jest/globals';
import { calendarEntries } from '../../../shared/plan/work/calendar-entries.js';
import { overWeeks } from '../../../shared/plan/work/full-weeks.js';
import { goneByInWords, isGoneBy } from '../../../shared/plan/work/gone-by.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { yearSpan } from '../../../shared/plan/year/year-span.js';
import { yearWeeks } from '../../../shared/plan/year/year-weeks.js';
import { newOwnJob, newWork } from '../../support/season-factories.js';

describe('work whose last day is over', () => {
  const past = { hours: 200, notBefore: '2027-02-01', dueOn: '2027-02-10' };
  const tomatoes = newOwnJob({
    ...past,
    ...{ id: 'tomatoes', name: 'Plant tomatoes', noUseAfter: '2027-02-20' },
  });
  const request = newWork({ today: '2027-04-05', ownJobs: [tomatoes] });
  const plan = workPlanOf(request, 5);

  it('asks no week for hours, and is no want of time', () => {
    expect(plan.jobs.filter(isGoneBy).map(({ name }) => name)).toEqual(['Plant tomatoes']);
    const [week] = yearWeeks(request, plan, yearSpan(plan.today));
    expect(week).toMatchObject({ workHours: 0, isShort: false, unfitJobs: [] });
    expect(overWeeks(plan)).toEqual([]);
  });

  it('stands on no day of the calendar', () => {
    expect(calendarEntries(plan, 'metric').filter(({ title }) => /tomatoes/.test(title))).toEqual(
      [],
    );
  });

  it('is told in one line, the times of one job once', () => {
    const job = (key: string, name: string) => ({ key, name });
    const times = [3, 4, 8].map((k) => job(`own/w-${k}`, `Weed and water, ${k} of 8`));
    const weekly = ['2027-03-01', '2027-03-08'].map((on) => job(`own/bed/${on}`, 'Fresh bedding'));
    expect(goneByInWords([...times, job('own/t', 'Plant tomatoes'), ...weekly])).toBe(
      'Weed and water (3 of 8); Plant tomatoes; Fresh bedding (2 times)',
    );
    expect(goneByInWords(times.slice(2))).toBe('Weed and water, 8 of 8');
  });
});
