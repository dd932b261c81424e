import { describe, expect, it } from '@jest/globals';
import {
  hoursKnownBetter,
  hoursMovedMost,
  startKnownBetter,
  startMovedMost,
} from '../../../shared/plan/work/about-work.js';
import { workOutlookOf } from '../../../shared/plan/work/work-outlook.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { outlookQuantities, weekQuantities } from '../../../shared/plan/work/work-quantities.js';
import { newOwnJob, newWork } from '../../support/season-factories.js';

const week = (hours: number) => Array.from({ length: 7 }, () => hours);

describe('what is asked of hours available', () => {
  const people = [
    { id: 'a', name: 'Ann', away: [], hoursByWeekday: week(2) },
    { id: 'b', name: 'Ben', away: [{ from: '2027-04-12', to: '2027-04-18' }] },
    { id: 'c', name: 'Cy', away: [], hoursByWeekday: week(1), assumed: ['hoursByWeekday'] },
  ];
  const request = newWork({ people, ownJobs: [newOwnJob()] });
  const plan = workPlanOf(request, 10);
  const given = plan.weeks.map((each) => weekQuantities(each, plan.basis).given);

  it('is who gives most of them: without that one the rest is left', () => {
    const at = plan.weeks.findIndex(({ from }) => from <= '2027-04-14' && '2027-04-09' <= from);
    const who = { ...request, today: plan.today, to: plan.to };
    // Ben is away: Ann gives 14 h, Cy 7 h (less where a part of the week has gone).
    const moved = hoursMovedMost(plan.weeks[at]!, who, given[at]!)!;
    expect(moved.what).toBe('If Ann is away that week');
    const withoutAnn = workPlanOf({ ...request, people: people.slice(1) }, 10);
    expect(moved.to.value).toBeCloseTo(withoutAnn.weeks[at]!.hours, 6);
    expect(hoursMovedMost(plan.weeks[at]!, { ...who, people: [] }, given[at]!)).toBeUndefined();
  });

  it('is better known once those say their hours whose hours are assumed', () => {
    expect(hoursKnownBetter(people)).toMatch(/hours of Ben, Cy are typed/);
    expect(hoursKnownBetter(people.slice(0, 1))).toBeUndefined();
  });
});

describe('what is asked of a start-by day', () => {
  const job = newOwnJob({ hours: 40, dueOn: '2027-05-20', canBeSpread: true });
  const outlook = workOutlookOf({ ...newWork({ ownJobs: [job] }), history: [] }, 20);
  const [found] = outlook.jobs;
  const { startBy } = outlookQuantities(outlook, found!);
  const reader = { units: 'us', today: '2027-04-05' } as const;

  it('is the day by which to start were it a quarter longer', () => {
    const longer = { ...job, hours: 50 };
    const asLong = workOutlookOf({ ...newWork({ ownJobs: [longer] }), history: [] }, 20).jobs[0]!;
    expect(startMovedMost(found!, startBy!)).toMatchObject({
      what: 'If it takes a quarter longer',
      to: { value: asLong.startBySafe, label: 'Start by' },
    });
    expect(asLong.startBySafe! < found!.startBySafe!).toBe(true);
  });

  it('is better known by the forecast where weather decides, else by logged hours', () => {
    const outside = { ...found!, suitableDays: { tenth: 1, half: 2, ninetieth: 3 } };
    const far = { ...outside, startBySafe: '2027-05-10' };
    expect(startKnownBetter(far, reader.today, reader)).toMatch(/^The forecast, from .*May 3/);
    const near = { ...outside, startBySafe: '2027-04-08' };
    expect(startKnownBetter(near, reader.today, reader)).toMatch(/reaches that far now/);
    expect(startKnownBetter(found!, reader.today, reader)).toBeUndefined();
    expect(startKnownBetter({ ...found!, key: 'batch/x' }, reader.today, reader)).toMatch(/logged/);
  });
});
