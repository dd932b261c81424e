import { describe, expect, it } from '@jest/globals';
import type { AboutNumbers, Moved } from '../../../shared/explain/moved.js';
import type { Quantity } from '../../../shared/explain/quantity.js';
import { aboutChances, aboutWeeks } from '../../../shared/plan/work/about-work.js';
import { workOutlookOf } from '../../../shared/plan/work/work-outlook.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { outlookQuantities, weekQuantities } from '../../../shared/plan/work/work-quantities.js';
import { newOwnJob, newWork } from '../../support/season-factories.js';

const week = (hours: number) => Array.from({ length: 7 }, () => hours);

/** What the page gets to say in the end. */
function movedBy(about: AboutNumbers, quantity: Quantity): Moved | undefined {
  const asking = about.movedMost(quantity);
  for (;;) {
    const { done, value } = asking.next();
    if (done === true) return value ?? undefined;
  }
}

describe('what is asked of the hours of a week', () => {
  const people = [
    { id: 'a', name: 'Ann', away: [], hoursByWeekday: week(2) },
    { id: 'b', name: 'Ben', away: [{ from: '2027-04-12', to: '2027-04-18' }] },
    { id: 'c', name: 'Cy', away: [], hoursByWeekday: week(1), assumed: ['hoursByWeekday'] },
  ];
  const bed = newOwnJob({ hours: 6, dueOn: '2027-04-17', notBefore: '2027-04-12' });
  const gate = newOwnJob({
    ...{ id: 'gate', name: 'Mend the gate', hours: 1, conditions: { peopleNeeded: 2 } },
    ...{ dueOn: '2027-04-17', notBefore: '2027-04-12', canBeSpread: false },
  });
  const request = newWork({ people, ownJobs: [bed, gate] });
  const plan = workPlanOf(request, 10);
  const at = plan.weeks.findIndex(({ from }) => from <= '2027-04-14' && '2027-04-09' <= from);
  const of = weekQuantities(plan.weeks[at]!, plan.basis);
  const about = aboutWeeks(plan, request);

  it('available: who gives most of them, and without that one the rest is left', () => {
    // Ben is away: Ann gives 14 h, Cy 7 h (less where a part of the week has gone).
    const moved = movedBy(about, of.given)!;
    expect(moved.what).toBe('If Ann is away that week');
    const withoutAnn = workPlanOf({ ...request, people: people.slice(1) }, 10);
    expect(moved.to!.value).toBeCloseTo(withoutAnn.weeks[at]!.hours, 6);
    expect(moved.knownBetter).toMatch(/hours of Ben, Cy are typed/);
    const said = aboutWeeks(plan, { ...request, people: people.slice(0, 1) });
    expect(movedBy(said, of.given)!.knownBetter).toMatch(/who is away/);
  });

  it('of work: the piece that is most of them, a quarter longer', () => {
    // Six hours of one and one hour of two are due, and both are planned then.
    expect([of.due.value, of.planned.value]).toEqual([8, 8]);
    for (const hours of [of.due, of.planned]) {
      const moved = movedBy(about, hours)!;
      expect(moved.what).toBe(`If “${bed.name}” takes a quarter longer`);
      expect(moved.to!.value).toBe(9.5);
      expect(moved.knownBetter).toMatch(/type the hours it took/);
    }
  });

  it('of chores: how long they take, which is learned from what is logged', () => {
    expect(movedBy(about, of.chores)).toMatchObject({
      what: 'How long the work takes you',
      knownBetter: expect.stringMatching(/logged/),
    });
  });
});

describe('what is asked of a start-by day and of a chance', () => {
  const job = newOwnJob({ hours: 40, dueOn: '2027-05-20', canBeSpread: true });
  const outlook = workOutlookOf({ ...newWork({ ownJobs: [job] }), history: [] }, 20);
  const [found] = outlook.jobs;
  const { startBy, chance } = outlookQuantities(outlook, found!);
  const reader = { units: 'us', today: '2027-04-05' } as const;
  const asked = (more: Partial<typeof found> = {}, of: Quantity = startBy!) =>
    movedBy(aboutChances({ ...found!, ...more }, reader.today, reader), of)!;
  const outside = { suitableDays: { tenth: 1, half: 2, ninetieth: 3, share: 0.5 }, windowDays: 9 };

  it('is the day by which to start were it a quarter longer', () => {
    const longer = { ...job, hours: 50 };
    const asLong = workOutlookOf({ ...newWork({ ownJobs: [longer] }), history: [] }, 20).jobs[0]!;
    expect(asked()).toMatchObject({
      what: 'If it takes a quarter longer',
      to: { value: asLong.startBySafe, label: 'Start by' },
    });
    expect(asLong.startBySafe! < found!.startBySafe!).toBe(true);
  });

  it('is the weather of a chance where weather decides, else how long it takes', () => {
    expect(asked(outside, chance).what).toMatch(/worst tenth 1 of its 9 days suit it.* best 3/);
    expect(asked({}, chance).what).toMatch(/^How long it takes/);
  });

  it('is better known by the forecast where weather decides, else by logged hours', () => {
    const far = { ...outside, startBySafe: '2027-05-10' };
    expect(asked(far).knownBetter).toMatch(/^The forecast, from .*May 3/);
    const near = { ...outside, startBySafe: '2027-04-08' };
    expect(asked(near).knownBetter).toMatch(/reaches that far now/);
    expect(asked().knownBetter).toMatch(/type the hours it took so far/);
    expect(asked({ key: 'batch/x' }).knownBetter).toMatch(/logged/);
  });
});
