import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { Person } from '../../../shared/farm/farm.js';
import { compareWorkPlans } from '../../../shared/plan/work/compare-plans.js';
import type { WorkChange } from '../../../shared/plan/work/work-changes.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import type { WorkRequest } from '../../../shared/plan/work/work-request.js';
import { tables } from '../../support/factories.js';
import { newBatchWork, newOwnJob, newWork } from '../../support/season-factories.js';

type More = Parameters<typeof newWork>[0];
const today = '2027-04-05'; // a Monday
const one = [{ id: 'a', name: 'Adult A', away: [] }];

/** What changes from one season to another, the second one or more days later. */
function changes(first: More, second: More): readonly WorkChange[] {
  const { keep } = workPlanOf(newWork({ today, people: one, ...first }), 100);
  const then: WorkRequest = newWork({ today: addDays(today, 1), people: one, ...second });
  return workPlanOf({ ...then, kept: keep, before: keep }, 100).changes!.list;
}
const rain = (days: readonly number[]) => {
  const season = newWork();
  const forecast = days.map((mm, k) => ({
    date: addDays(today, k),
    minC: 5,
    maxC: 15,
    rainMm: mm,
  }));
  return { climate: { ...season.climate, forecast } };
};

describe('what changed since the day before', () => {
  it('is nothing when nothing changed', () => {
    const more = { ownJobs: [newOwnJob({ notBefore: '2027-04-08' })] };
    expect(changes(more, more)).toEqual([]);
  });

  it('does not call new what has only come into sight', () => {
    const { horizonDays } = tables.work;
    const far = newOwnJob({
      notBefore: addDays(today, horizonDays.value),
      dueOn: addDays(today, horizonDays.value + 5),
    });
    expect(changes({ ownJobs: [far] }, { ownJobs: [far] })).toEqual([]);
    const near = { ...far, notBefore: addDays(today, 20) };
    expect(changes({}, { ownJobs: [near] })[0]).toMatchObject({ kind: 'new' });
  });

  it('names work that was not ticked off', () => {
    const more = { ownJobs: [newOwnJob()] };
    expect(changes(more, more)).toEqual([
      {
        key: 'own/bed',
        name: 'Dig the long bed',
        kind: 'moved',
        from: '2027-04-05',
        to: '2027-04-06',
        why: 'It was not ticked off on Mon 5 Apr.',
      },
    ]);
  });

  it('names rain that is forecast now', () => {
    const ownJobs = [newOwnJob({ notBefore: '2027-04-08', conditions: { noRain: true } })];
    const [change] = changes(
      { ownJobs, ...rain([0, 0, 0, 0, 0, 0]) },
      { ownJobs, ...rain([0, 0, 0, 7, 0, 0]) },
    );
    expect(change).toMatchObject({ from: '2027-04-08', to: '2027-04-09' });
    expect(change!.why).toBe('Rain on Thu 8 Apr.');
  });

  it('names who is away, what was put off, and hours that were changed', () => {
    const on = { notBefore: '2027-04-08' };
    const away = [{ from: '2027-04-08', to: '2027-04-09' }];
    expect(
      changes(
        { ownJobs: [newOwnJob(on)] },
        { ownJobs: [newOwnJob(on)], people: [{ id: 'a', name: 'Adult A', away }] },
      )[0]!.why,
    ).toBe('Adult A has too few hours left on Thu 8 Apr.');
    expect(
      changes(
        { ownJobs: [newOwnJob(on)] },
        { ownJobs: [newOwnJob(on)], progress: [{ key: 'own/bed', notBefore: '2027-04-11' }] },
      )[0]!.why,
    ).toBe('You put it off to Sun 11 Apr.');
    expect(
      changes(
        { ownJobs: [newOwnJob({ ...on, hours: 1 })] },
        { ownJobs: [newOwnJob({ ...on, hours: 3.5 })] },
      )[0]!.why,
    ).toBe('It takes 3 h 30 min now, not 1 h.');
  });

  it('names what it follows, and what took its hours', () => {
    const first = newOwnJob({ id: 'first', name: 'Clear', notBefore: '2027-04-07' });
    const after = newOwnJob({ waitsForId: 'first', waitDays: 1 });
    expect(
      changes(
        { ownJobs: [first, after] },
        { ownJobs: [{ ...first, notBefore: '2027-04-09' }, after] },
      ).find(({ key }) => key === 'own/bed')!.why,
    ).toBe('It follows “Clear”, which is on Fri 9 Apr now.');
    const urgent = newOwnJob({
      id: 'urgent',
      name: 'Mend the pump',
      priority: 'must',
      hours: 2,
      canBeSpread: false,
      notBefore: '2027-04-08',
      dueOn: '2027-04-08',
      noUseAfter: '2027-04-08',
    });
    const bed = newOwnJob({ notBefore: '2027-04-08', hours: 2, canBeSpread: false });
    const list = changes({ ownJobs: [bed] }, { ownJobs: [bed, urgent] });
    expect(list.find(({ key }) => key === 'own/bed')!.why).toBe(
      'The hours of Thu 8 Apr go to “Mend the pump” now.',
    );
    expect(list.find(({ key }) => key === 'own/urgent')!.kind).toBe('new');
  });

  it('tells apart what is gone, what no longer fits and what fits again', () => {
    const on = { notBefore: '2027-04-08', dueOn: '2027-04-08', noUseAfter: '2027-04-08' };
    const nobody = [{ id: 'a', name: 'Adult A', away: [{ from: '2027-04-08', to: '2027-04-08' }] }];
    const job = newOwnJob(on);
    expect(changes({ ownJobs: [job] }, { ownJobs: [] })[0]).toMatchObject({ kind: 'gone' });
    expect(changes({ ownJobs: [job] }, { ownJobs: [job], people: nobody })[0]).toMatchObject({
      kind: 'fits-no-more',
      why: 'Nobody has hours on its suitable days.',
    });
    expect(changes({ ownJobs: [job], people: nobody }, { ownJobs: [job] })[0]).toMatchObject({
      kind: 'fits-now',
      to: '2027-04-08',
    });
    const done = { ownJobs: [job], marks: [{ key: 'own/bed', doneOn: '2027-04-06' }] };
    expect(changes({ ownJobs: [job] }, done)).toEqual([]);
  });
});

describe('one time of weekly work that was missed', () => {
  const nest = newOwnJob({
    id: 'nest',
    name: 'Straw in the nests',
    hours: 1,
    canBeSpread: false,
    dueOn: today,
    repeats: { every: 'weekdays', weekdays: [1] },
  });
  /** Hours on Mondays alone, for the next time and one more. */
  const mondays = [{ ...one[0]!, hoursByWeekday: [2, 0, 0, 0, 0, 0, 0] }];
  const more = { ownJobs: [nest], people: mondays };

  it('is said as missed, before what the days that are left lack', () => {
    expect(changes(more, more).find(({ to }) => to === undefined)).toMatchObject({
      kind: 'fits-no-more',
      why: 'It was not ticked off on Mon 5 Apr. Nobody has hours on its suitable days.',
    });
  });

  it('is offered no day on which the next time has come', () => {
    const { jobs } = workPlanOf(newWork({ today: addDays(today, 1), ...more }), 100);
    const missed = jobs.find(({ key }) => key === `own/nest/${today}`)!;
    expect(missed.pieces).toEqual([]);
    expect(missed.waysToFit.join()).not.toContain('later last day');
  });
});

describe('compareWorkPlans', () => {
  it('says what an arrival a week later frees, and moves nothing that can stay', () => {
    const ownJobs = [newOwnJob({ notBefore: '2027-04-20' })];
    const season = (arrival: string) => newWork({ work: [newBatchWork(arrival, today)], ownJobs });
    const { changes: list, plan } = compareWorkPlans(season('2027-05-05'), season('2027-05-12'));
    expect(list.some(({ key }) => key === 'own/bed')).toBe(false);
    expect(plan.events.find(({ id }) => id === 'event/meat/arrival')!.date).toBe('2027-05-12');
    const collect = list.find(({ key }) => key.endsWith('meat.collect-chicks'))!;
    expect(collect).toMatchObject({ from: '2027-05-05', to: '2027-05-12', kind: 'moved' });
    expect(collect.why).toBe('It cannot begin before Wed 12 May now.');
  });

  it('names first what animals need, of the work that has no time where somebody falls ill', () => {
    const people = (away: Person['away']): Person[] => [
      { id: 'a', name: 'Adult A', away, hoursByWeekday: Array<number>(7).fill(6) },
      { id: 'b', name: 'Adult B', away: [], hoursByWeekday: Array<number>(7).fill(0.75) },
    ];
    const arrival = '2027-04-28';
    const ownJobs = [
      newOwnJob({
        notBefore: '2027-04-26',
        dueOn: '2027-04-28',
        hours: 8,
        noUseAfter: '2027-04-28',
      }),
    ];
    const season = (away: Person['away']) =>
      newWork({ work: [newBatchWork(arrival, today)], ownJobs, people: people(away) });
    const ill = [{ from: '2027-04-26', to: '2027-05-03' }];
    const { noLongerFits } = compareWorkPlans(season([]), season(ill));
    const needs = noLongerFits.map(({ animalsNeedIt }) => animalsNeedIt === true);
    expect(needs).toContain(true);
    expect(needs).toContain(false);
    expect(needs).toEqual([...needs].sort((one, other) => Number(other) - Number(one)));
    const [first] = noLongerFits;
    expect(first!.key).toContain('meat.');
  });
});
