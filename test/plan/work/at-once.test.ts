import { describe, expect, it } from '@jest/globals';
import { weekdayOf } from '../../../shared/calendar/plain-date.js';
import type { Person } from '../../../shared/farm/farm.js';
import { minutesAtOnce } from '../../../shared/plan/work/at-once.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { tables } from '../../support/factories.js';
import { newBatchWork, newOwnJob, newWork } from '../../support/season-factories.js';

const today = '2027-04-05'; // a Monday
const SATURDAY = '2027-04-10';
const person = (id: string, more: Partial<Person>): Person => ({
  ...{ id, name: id, away: [], hoursByWeekday: [3, 3, 3, 3, 3, 5, 5] },
  ...more,
});
const mornings = person('mornings', { byDay: 'out-pm', startH: { weekday: 8, weekend: 8 } });
const afternoons = person('afternoons', { byDay: 'out-am', startH: { weekday: 13, weekend: 8 } });
const evenings = person('evenings', { byDay: 'out', startH: { weekday: 17, weekend: 8 } });
const atHome = person('at home', { byDay: 'at-home' });

describe('minutes that two have at the same hours', () => {
  const atOnce = (one: Person, other: Person, date = today, hours = 3): number =>
    minutesAtOnce(
      { person: one, minutes: 60 * hours },
      { person: other, minutes: 60 * hours },
      date,
      tables,
    );

  it('are none where one is home in the morning only and the other later', () => {
    expect(atOnce(mornings, afternoons)).toBe(0);
    expect(atOnce(mornings, evenings)).toBe(0);
    // From 13 to 18 and from 17 to 22 o'clock.
    expect(atOnce(afternoons, evenings, today, 5)).toBe(60);
  });

  it('are all of theirs on a weekend, and beside who is home all day', () => {
    expect(atOnce(mornings, afternoons, SATURDAY)).toBe(180);
    expect(atOnce(mornings, atHome)).toBe(180);
    expect(atOnce(mornings, mornings)).toBe(180);
  });
});

describe('work for two, of whom one has mornings and one has afternoons', () => {
  const pens = newOwnJob({ hours: 2, dueOn: '2027-04-12', conditions: { peopleNeeded: 2 } });
  const planOf = (people: Person[], work = [] as ReturnType<typeof newBatchWork>[]) =>
    workPlanOf(newWork({ people, ownJobs: [pens], work }), 20);
  const own = (people: Person[]) => planOf(people).jobs.find(({ key }) => key === 'own/bed')!;

  it('is on the weekend, and by those who are there at once where others are', () => {
    expect(own([mornings, afternoons]).pieces).toMatchObject([{ date: SATURDAY }]);
    expect(own([mornings, evenings, atHome]).pieces).toMatchObject([{ date: today }]);
    expect(own([mornings, atHome]).pieces).toMatchObject([{ date: today }]);
  });

  it('has nobody where they have no hours then, and says that two are never free for it', () => {
    const weekdaysOnly = [mornings, afternoons].map((each) => ({
      ...each,
      hoursByWeekday: [3, 3, 3, 3, 3, 0, 0],
    }));
    const job = own(weekdaysOnly);
    expect(job.pieces).toEqual([]);
    expect(job.why).toContain('2 people at once');
    // More of either’s hours would not make them be there at once.
    expect(job.waysToFit.join(' ')).not.toContain(' more ');
  });

  it('lacks hours on a set day of the week, and has them where one is at home', () => {
    const shortOn = (people: Person[]) =>
      planOf(people, [newBatchWork('2027-05-05', today)])
        .jobs.filter(({ key }) => key.includes('catch-move-and-count'))
        .map(({ shortHours, pieces }) => [weekdayOf(pieces[0]!.date) < 6, 0 < shortHours]);
    expect(shortOn([mornings, afternoons])).toEqual([[true, true]]);
    expect(shortOn([mornings, atHome])).toEqual([[true, false]]);
  });
});
