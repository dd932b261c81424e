import { describe, expect, it } from '@jest/globals';
import type { OwnJob, Progress } from '../../../shared/farm/job.js';
import type { KeptPlan } from '../../../shared/farm/kept-plan.js';
import { afterSaid } from '../../../shared/farm/said-of-work.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import type { WorkPlan } from '../../../shared/plan/work/planned-work.js';
import { tables } from '../../support/factories.js';
import { TEN_HOUSEHOLDS, TODAY } from '../../support/ten-households.js';
import { newBatchWork, newOwnJob, newWork } from '../../support/season-factories.js';

type More = Parameters<typeof newWork>[0];
const today = '2027-04-05'; // a Monday
const planOf = (more: More = {}): WorkPlan => workPlanOf(newWork(more), 20);
const jobOf = (plan: WorkPlan, key = 'own/bed') => plan.jobs.find((job) => job.key === key);
const said = (more: Omit<Progress, 'key'>, ownJobs: OwnJob[] = [newOwnJob({ hours: 3 })]) =>
  planOf({ ownJobs, progress: [{ key: 'own/bed', ...more }] });
const dates = (plan: WorkPlan, id = 'bed') =>
  plan.jobs.filter(({ key }) => key.startsWith(`own/${id}/`)).map(({ key }) => key.slice(-10));
const choresOn = (plan: WorkPlan) =>
  plan.chores.flatMap((list, day) => (list.some(({ key }) => key === 'own/bed') ? [day] : []));

describe('what is said of work', () => {
  it('strikes it out, and what waits for it waits no longer', () => {
    const ownJobs = [
      newOwnJob({ dueOn: '2027-06-20', notBefore: '2027-06-01' }),
      newOwnJob({ id: 'plant', name: 'Plant', dueOn: '2027-06-20', waitsForId: 'bed' }),
    ];
    expect('2027-06-01' <= jobOf(planOf({ ownJobs }), 'own/plant')!.earliest).toBe(true);
    const plan = said({ struckOut: true, because: 'No seed' }, ownJobs);
    expect(jobOf(plan)).toBeUndefined();
    expect(jobOf(plan, 'own/plant')!.pieces[0]!.date).toBe(today);
    expect(plan.struckOut).toMatchObject([{ key: 'own/bed', because: 'No seed' }]);
  });

  it('gives it other hours and other days', () => {
    const job = jobOf(said({ ownHours: 5, notBefore: '2027-05-03', dueOn: '2027-07-01' }))!;
    expect(job).toMatchObject({ hours: 5, reckonedHours: 3, hasOwnHours: true });
    expect(job).toMatchObject({ earliest: '2027-05-03', latest: '2027-07-01' });
    expect(job.hoursFrom.mark).toBe('own-record');
  });

  it('of a chore and of a task months ahead as well', () => {
    const work = [newBatchWork('2027-05-05', today)];
    const before = planOf({ work });
    const chore = before.chores.flat()[0]!.key;
    const last = before.jobs.at(-1)!.key;
    const progress = [
      { key: chore, struckOut: true },
      { key: last, doneOn: today },
    ];
    const after = planOf({ work, progress });
    expect(after.chores.flat().some(({ key }) => key === chore)).toBe(false);
    expect(after.struckOut.map(({ key }) => key)).toEqual([chore]);
    expect(jobOf(after, last)).toBeUndefined();
    expect(after.done.map(({ key }) => key)).toEqual([last]);
  });

  it('takes them off whose work it was, so that what another has today stays', () => {
    const person = (id: string, h: number) => ({
      id,
      name: id,
      away: [],
      hoursByWeekday: [h, h, h, h, h, h, h],
    });
    const people = [person('long', 4), person('short', 2)];
    const ownJobs = [
      newOwnJob({ hours: 2, dueOn: today }),
      newOwnJob({ id: 'hay', name: 'Hay', hours: 4, dueOn: today, canBeSpread: false }),
    ];
    const kept = workPlanOf(newWork({ people, ownJobs }), 20).keep;
    expect(kept.jobs['own/bed']!.pieces).toMatchObject([{ date: today, personIds: ['short'] }]);
    const progress = [{ key: 'own/bed', doneOn: today }];
    const hay = (more: More) => jobOf(planOf({ people, ownJobs, progress, ...more }), 'own/hay')!;
    expect(hay({ kept }).pieces).toMatchObject([{ date: today, hours: 4 }]);
    // A second tick: the plan made after the first has it no more.
    const after = workPlanOf(newWork({ people, ownJobs, progress, kept, before: kept }), 20).keep;
    expect(hay({ kept: after, before: kept }).pieces).toMatchObject([{ date: today, hours: 4 }]);
  });

  it('takes nothing else from today, however many are ticked one after another', () => {
    // Spread work, work of two on one day, and a round: each tick plans the day anew.
    let ticks = 0;
    for (const [name, picture] of TEN_HOUSEHOLDS.slice(2, 3)) {
      const animals = planAnimals(picture, tables);
      let [kept, progress]: [KeptPlan | undefined, Progress[]] = [undefined, []];
      const planned = (): ReadonlyMap<string, number> => {
        const keptPlans = kept ? [kept] : [];
        const asked = workOfFarm({ ...picture, progress, keptPlans }, tables, animals);
        const { keep, jobs } = workPlanOf(asked, 50);
        kept = keep;
        return new Map(
          jobs.flatMap(({ key, pieces }) =>
            pieces.filter(({ date }) => date === TODAY).map(({ hours }) => [key, hours]),
          ),
        );
      };
      const morning = [...planned()];
      for (const [k, [key]] of morning.entries()) {
        progress = [...progress, { key, doneOn: TODAY }];
        const still = planned();
        const lost = morning.slice(k + 1).filter(([open, h]) => (still.get(open) ?? 0) < h - 0.02);
        expect([name, lost]).toEqual([name, []]);
        ticks++;
      }
    }
    expect(ticks).toBeGreaterThan(5);
  });

  it('takes hours done today off the hours of today, whole or in part', () => {
    const people = [{ id: 'a', name: 'A', away: [], hoursByWeekday: [4, 4, 4, 4, 4, 4, 4] }];
    const ownJobs = [newOwnJob({ hours: 3 }), newOwnJob({ id: 'shed', hours: 2.5 })];
    const first = (more: Omit<Progress, 'key'>) =>
      jobOf(planOf({ people, ownJobs, progress: [{ key: 'own/bed', ...more }] }), 'own/shed')!
        .pieces[0]!;
    expect(first({ doneOn: '2027-04-04', hours: 3 })).toMatchObject({ date: today, hours: 2.5 });
    const short = first({ doneOn: today, hours: 3 });
    expect(short.date === today ? short.hours : 0).toBeLessThanOrEqual(1);
    const part = afterSaid({}, { hoursDone: 2 }, today);
    expect(part).toEqual({ hoursDone: 2, partOn: today, partHours: 2 });
    // The rest of it, half an hour of other work, and no more.
    const plan = planOf({ people, ownJobs, progress: [{ key: 'own/bed', ...part }] });
    const hours = plan.jobs.flatMap(({ pieces }) => pieces.filter(({ date }) => date === today));
    expect(hours.reduce((sum, piece) => sum + piece.hours, 0)).toBeLessThanOrEqual(2.01);
  });

  it('takes the rest off the hours of today, where a part was logged and planned with before', () => {
    const people = [{ id: 'a', name: 'A', away: [], hoursByWeekday: Array<number>(7).fill(6) }];
    const ownJobs = [
      newOwnJob({ hours: 4, dueOn: today, noUseAfter: '2027-04-06', priority: 'must' }),
      newOwnJob({ id: 'shed', hours: 60, dueOn: '2027-04-09', noUseAfter: '2027-04-09' }),
    ];
    const after = (kept: KeptPlan, more: Omit<Progress, 'key'>) =>
      workPlanOf(newWork({ people, ownJobs, kept, progress: [{ key: 'own/bed', ...more }] }), 100);
    const shedToday = (plan: WorkPlan) =>
      jobOf(plan, 'own/shed')!.pieces.find(({ date }) => date === today)?.hours;
    const morning = workPlanOf(newWork({ people, ownJobs }), 100);
    const part = { hoursDone: 2, partOn: today, partHours: 2 };
    const noon = after(morning.keep, part);
    const evening = after(noon.keep, { ...part, doneOn: today });
    expect(shedToday(after(morning.keep, { doneOn: today }))).toBeCloseTo(2, 6);
    expect(shedToday(evening)).toBeCloseTo(2, 6);
    // Planned once more, it stays so.
    expect(shedToday(after(evening.keep, { ...part, doneOn: today }))).toBeCloseTo(2, 6);
  });

  it('is of the first of two who are at it, until the plan is made on another day', () => {
    const hours = (h: number) => Array<number>(7).fill(h);
    const people = [
      { id: 'a', name: 'A', away: [], hoursByWeekday: hours(2) },
      { id: 'b', name: 'B', away: [], hoursByWeekday: hours(1) },
    ];
    const ownJobs = [
      newOwnJob({ hours: 9, dueOn: today, priority: 'must' }),
      newOwnJob({ id: 'shed', hours: 60, dueOn: '2027-04-09', priority: 'could' }),
    ];
    const of = (plan: WorkPlan) =>
      plan.jobs.flatMap(({ key, pieces }) =>
        pieces
          .filter(({ date }) => date === today)
          .map((piece) => [key, Math.round(60 * piece.hours), ...piece.personIds]),
      );
    const morning = workPlanOf(newWork({ people, ownJobs }), 100);
    expect(of(morning)).toEqual([
      ['own/bed', 120, 'a'],
      ['own/bed', 60, 'b'],
    ]);
    let kept = morning.keep;
    for (let time = 0; time < 3; time++) {
      const part = { hoursDone: 2, partOn: today, partHours: 2 };
      const progress = [{ key: 'own/bed', ...part }];
      const plan = workPlanOf(newWork({ people, ownJobs, kept, progress }), 100);
      expect(of(plan)).toEqual([['own/bed', 60, 'b']]);
      kept = plan.keep;
    }
  });

  it('stays beside what is said later', () => {
    const put = afterSaid({ ownHours: 2 }, { notBefore: '2027-04-09' }, today);
    expect(put).toEqual({ ownHours: 2, notBefore: '2027-04-09' });
    const done = afterSaid(afterSaid(put, { doneOn: today }, today), { hours: 4 }, today);
    expect(done).toMatchObject({ ownHours: 2, doneOn: today, hours: 4 });
    expect(afterSaid(done, { struckOut: true }, today)).toEqual({ ...put, struckOut: true });
  });
});

describe('jobs that come again', () => {
  const repeats = (more: NonNullable<OwnJob['repeats']>, rest: Partial<OwnJob> = {}) => [
    newOwnJob({ dueOn: '2027-04-10', repeats: more, ...rest }),
  ];

  it('come on their weekday, each ticked by itself', () => {
    const ownJobs = repeats({ every: 'weekdays', weekdays: [6], until: '2027-05-01' });
    expect(dates(planOf({ ownJobs }))).toEqual([
      '2027-04-10',
      '2027-04-17',
      '2027-04-24',
      '2027-05-01',
    ]);
    const progress = [{ key: 'own/bed/2027-04-10', doneOn: today }];
    const plan = planOf({ ownJobs, progress });
    expect(dates(plan)).toEqual(['2027-04-17', '2027-04-24', '2027-05-01']);
    expect(plan.done).toMatchObject([{ key: 'own/bed/2027-04-10' }]);
  });

  it('come every so many days, until a key date that moves', () => {
    const untilTiedTo = { eventId: 'event/place/last-frost-2027', on: '2027-05-12' };
    const ownJobs = repeats({ every: 'days', everyDays: 10, until: '2027-05-12', untilTiedTo });
    expect(dates(planOf({ ownJobs, farm: { lastFrost: '05-12' } }))).toHaveLength(4);
    expect(dates(planOf({ ownJobs, farm: { lastFrost: '05-22' } })).at(-1)).toBe('2027-05-20');
  });

  it('are chores where they come more often than weekly, on the days that suit', () => {
    const ownJobs = repeats({ every: 'day', until: '2027-04-14' }, { dueOn: today });
    expect(choresOn(planOf({ ownJobs }))).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
    const warm = repeats({ every: 'day' }, { conditions: { nightMinAtLeastC: 10 } });
    const plan = planOf({ ownJobs: warm });
    expect(choresOn(plan).length).toBeGreaterThan(0);
    expect(choresOn(plan).every((day) => 10 <= plan.weather.minC[day]!)).toBe(true);
  });

  it('go to a child where they are for one, and never where they need an adult', () => {
    const people = [
      { id: 'a', name: 'Adult', away: [], hoursByWeekday: [1, 1, 1, 1, 1, 1, 1] },
      { id: 'c', name: 'Child', away: [], hoursByWeekday: [5, 5, 5, 5, 5, 5, 5], isChild: true },
    ];
    const who = (more: Partial<OwnJob>) =>
      jobOf(planOf({ people, ownJobs: [newOwnJob({ hours: 3, canBeSpread: false, ...more })] }))!
        .pieces[0]?.personIds;
    expect(who({})).toBeUndefined();
    expect(who({ forWhom: 'child' })).toEqual(['c']);
    expect(who({ personIds: ['c'] })).toEqual(['c']);
    expect(who({ personIds: ['c'], forWhom: 'adult' })).toBeUndefined();
  });

  it('go daily to a child that has the time for all of them, and then count among the hours', () => {
    const people = [
      { id: 'a', name: 'Adult', away: [], hoursByWeekday: [8, 8, 8, 8, 8, 8, 8] },
      { id: 'c', name: 'Child', away: [], hoursByWeekday: [1, 1, 1, 1, 1, 1, 1], isChild: true },
    ];
    const daily = (hours: number, more: Partial<OwnJob> = {}) => {
      const ownJobs = repeats({ every: 'day' }, { dueOn: today, hours, ...more });
      const plan = planOf({ people, ownJobs });
      return { who: plan.chores[1]![0]!.personId, hours: plan.weeks[1]!.hours };
    };
    expect(daily(0.5, { forWhom: 'child' })).toEqual({ who: 'c', hours: 7 * 8.5 });
    expect(daily(2, { forWhom: 'child' })).toEqual({ who: 'a', hours: 7 * 8 });
    expect(daily(0.5)).toEqual({ who: 'a', hours: 7 * 8 });
  });

  it('go to no child on a day on which nobody grown is there', () => {
    const away = [{ from: '2027-04-06', to: '2027-04-07' }];
    const people = [
      { id: 'a', name: 'Adult', away, hoursByWeekday: [8, 8, 8, 8, 8, 8, 8] },
      { id: 'c', name: 'Child', away: [], hoursByWeekday: [1, 1, 1, 1, 1, 1, 1], isChild: true },
    ];
    const more = { dueOn: today, hours: 0.5, forWhom: 'child' } as const;
    const { chores } = planOf({ people, ownJobs: repeats({ every: 'day' }, more) });
    expect(chores.slice(0, 4).map(([chore]) => chore!.personId)).toEqual([
      'c',
      undefined,
      undefined,
      'c',
    ]);
    // Nor where somebody only comes in for the animals.
    const rest = { roundOrder: [], phones: [], whereabouts: [], awayIds: ['a'] };
    const days = { from: '2027-04-06', to: '2027-04-07', hoursPerDay: 0.25 };
    const sitter = { id: 'h', sitter: 'Sam', ...days, ...rest };
    const sat = planOf({ people, ownJobs: repeats({ every: 'day' }, more), handovers: [sitter] });
    expect(sat.chores.slice(0, 4).map(([chore]) => chore?.personId === 'c')).toEqual([
      true,
      false,
      false,
      true,
    ]);
  });
});

it('begins weeks as the country does', () => {
  const first = (farm: NonNullable<NonNullable<More>['farm']>) => planOf({ farm }).weeks[0]!.from;
  expect(first({ country: 'US' })).toBe('2027-04-04');
  expect(first({ country: 'DE' })).toBe('2027-04-05');
});
