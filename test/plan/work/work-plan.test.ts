import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import type { WorkPlan } from '../../../shared/plan/work/planned-work.js';
import type { DailyWeather } from '../../../shared/weather/climate.js';
import { RAIN_MM } from '../../support/pasture-factories.js';
import { newBatchWork, newOwnJob, newWork } from '../../support/season-factories.js';

type More = Parameters<typeof newWork>[0];
const today = '2027-04-05'; // a Monday
const planOf = (more: More = {}): WorkPlan => workPlanOf(newWork(more), 100);
const jobOf = (plan: WorkPlan, key: string) => plan.jobs.find((job) => job.key === key)!;
const forecast = (rainMm: readonly number[]): DailyWeather[] =>
  rainMm.map((mm, k) => ({ date: addDays(today, k), minC: 4, maxC: 14, rainMm: mm }));
const withForecast = (rainMm: readonly number[], more: More = {}): WorkPlan => {
  const request = newWork(more);
  return workPlanOf(
    { ...request, climate: { ...request.climate, forecast: forecast(rainMm) } },
    100,
  );
};

/** Hours of work and chores of a person on a day. */
function hoursOn(plan: WorkPlan, personId: string, date: string): number {
  // Hours that nobody has are said to be short, and are nobody's; a few minutes somebody stays longer.
  const work = plan.jobs
    .flatMap(({ pieces, shortHours, longerHours = 0 }) =>
      pieces.map((piece) => {
        const longer = piece === pieces.at(-1) ? longerHours : 0;
        return { ...piece, short: shortHours + longer };
      }),
    )
    .filter((piece) => piece.date === date && piece.personIds.includes(personId))
    .reduce((sum, piece) => sum + piece.hours - piece.short, 0);
  const chores = plan.chores[daysBetween(plan.today, date)]!.filter(
    (chore) => chore.personId === personId,
  ).reduce((sum, chore) => sum + chore.hours, 0);
  return work + chores;
}

const USUAL_HOURS = [2, 2, 2, 2, 2, 5, 3]; // seeds/work.json

describe('workPlanOf', () => {
  it('gives nobody more than their hours, and nothing to who is away', () => {
    const away = [{ from: '2027-05-03', to: '2027-05-06' }];
    const plan = planOf({
      people: [
        { id: 'a', name: 'Adult A', away },
        { id: 'b', name: 'Adult B', away: [], hoursByWeekday: [1, 1, 1, 1, 1, 6, 0] },
      ],
      work: [newBatchWork('2027-05-05', today)],
      ownJobs: [newOwnJob({ hours: 20 }), newOwnJob({ id: 'shed', hours: 15 })],
    });
    for (let day = 0; day < 90; day++) {
      const date = addDays(today, day);
      const isAway = away[0]!.from <= date && date <= away[0]!.to;
      expect(hoursOn(plan, 'a', date)).toBeLessThanOrEqual(
        isAway ? 0 : USUAL_HOURS[day % 7]! + 0.01,
      );
      expect(hoursOn(plan, 'b', date)).toBeLessThanOrEqual([1, 1, 1, 1, 1, 6, 0][day % 7]! + 0.01);
    }
    expect(plan.jobs.filter((job) => 0 < job.pieces.length).length).toBeGreaterThan(20);
  });

  it('does not keep back what waits for work that can be done no more', () => {
    const bed = newOwnJob({ dueOn: '2027-04-01', noUseAfter: '2027-04-03' });
    const after = newOwnJob({ id: 'plant', dueOn: '2027-04-20', waitsForId: 'bed' });
    const plan = planOf({ ownJobs: [bed, after] });
    expect(jobOf(plan, 'own/bed').why).toBe('Its last day is over.');
    expect(jobOf(plan, 'own/plant').pieces[0]!.date).toBe(today);
  });

  it('plans what fits of work that may be spread, and says what has no place', () => {
    const bed = newOwnJob({ hours: 8, dueOn: '2027-04-07', noUseAfter: '2027-04-07' });
    const people = [{ id: 'a', name: 'Adult A', away: [] }];
    const after = newOwnJob({ id: 'plant', waitsForId: 'bed', waitDays: 1 });
    const plan = planOf({ people, ownJobs: [bed, after] });
    const { pieces, lostHours, whyPart, waysToFit } = jobOf(plan, 'own/bed');
    expect(pieces.map(({ hours }) => hours)).toEqual([2, 2, 2]);
    expect(lostHours).toBe(2);
    expect(whyPart).toBe(
      '6 h of 8 h fit; there is no place for the last 2 h. Its days have fewer hours than it takes, even if nothing else was done on them.',
    );
    expect(waysToFit).toEqual([
      '2 h more on Mon 5 Apr, or a helper for as long, whose hours you tell as done.',
    ]);
    expect(jobOf(plan, 'own/plant').pieces[0]!.date).toBe('2027-04-08');
    const atATime = planOf({ people, ownJobs: [{ ...bed, smallestPieceHours: 3 }] });
    expect(jobOf(atATime, 'own/bed').pieces).toEqual([]);
    const onItsDay = planOf({ people, ownJobs: [{ ...bed, notBefore: '2027-04-07' }] });
    expect(jobOf(onItsDay, 'own/bed').pieces).toEqual([]);
  });

  it('has somebody stay a few minutes longer, and no more than that', () => {
    const people = [{ id: 'a', name: 'Adult A', away: [] }];
    const planned = (hours: number) => {
      const bed = newOwnJob({ hours, dueOn: '2027-04-07' });
      return jobOf(planOf({ people, ownJobs: [bed] }), 'own/bed');
    };
    const short = planned(6.2);
    expect(short.pieces.map(({ hours }) => hours)).toEqual([2, 2, 2.2]);
    expect([short.lateDays, short.why.split('. ').at(-1)]).toEqual([
      0,
      'Adult A stays 12 min longer on Wed 7 Apr.',
    ]);
    const long = [{ ...people[0]!, hoursByWeekday: [12, 12, 12, 12, 12, 12, 12] }];
    const bed = newOwnJob({ hours: 12.2, notBefore: '2027-04-07', dueOn: '2027-04-07' });
    const beyond = jobOf(planOf({ people: long, ownJobs: [bed] }), 'own/bed');
    expect([beyond.why, beyond.lateDays]).toEqual([expect.not.stringContaining('stays'), 1]);
    const longer = planned(6.3);
    expect(longer.pieces.map(({ hours }) => hours)[2]).toBeLessThanOrEqual(2);
    expect([longer.lateDays, longer.waysToFit[0]]).toEqual([1, expect.stringMatching(/^18 min/)]);
  });

  it('has nobody sow in cold soil to be in time: what is due by then is due too early', () => {
    const beans = newOwnJob({ hours: 3, dueOn: '2027-05-24', conditions: { soilAtLeastC: 15 } });
    const { lateDays, waysToFit } = jobOf(planOf({ ownJobs: [beans] }), 'own/bed');
    expect(lateDays).toBeGreaterThan(0);
    expect(waysToFit).toEqual([
      expect.stringMatching(/^A later day .* too cold for it until Tue 25 May\.$/),
    ]);
  });

  it('waits for rain that is forecast to pass, and says so', () => {
    const job = newOwnJob({ conditions: { noRain: true } });
    const plan = withForecast([6, 6, 0, 0, 0], { ownJobs: [job] });
    expect(jobOf(plan, 'own/bed').pieces[0]!.date).toBe('2027-04-07');
    expect(jobOf(plan, 'own/bed').why).toBe('Rain on Mon 5 Apr and Tue 6 Apr; due by Thu 20 May.');
  });

  it('keeps off the ground on the dry day after a heavy rain', () => {
    const job = newOwnJob({ conditions: { dryGround: true } });
    const plan = withForecast([40, 0, 0, 0, 0, 0, 0], { ownJobs: [job] });
    expect('2027-04-07' < jobOf(plan, 'own/bed').pieces[0]!.date).toBe(true);
  });

  it('does not call a day wet by name beyond the forecast', () => {
    const job = newOwnJob({ notBefore: '2027-05-01', conditions: { dryGround: true } });
    const { why } = jobOf(planOf({ ownJobs: [job], rainMm: new Array(12).fill(160) }), 'own/bed');
    expect(why).toMatch(
      /usually about \d+ of the 20 days from Sat 1 May to Thu 20 May suits? it: take the first/,
    );
    expect(why).not.toMatch(/[Rr]ain on/);
  });

  it('gives the one dry day to the job that needs it and matters', () => {
    const plan = withForecast([9, 9, 9, 0, 9, 9, 9, 9, 9, 9], {
      people: [{ id: 'a', name: 'Adult A', away: [] }],
      ownJobs: [
        newOwnJob({ id: 'in', hours: 2, dueOn: '2027-04-11', noUseAfter: '2027-04-11' }),
        newOwnJob({
          id: 'out',
          hours: 2,
          dueOn: '2027-04-11',
          noUseAfter: '2027-04-11',
          conditions: { noRain: true },
          canBeSpread: false,
        }),
      ],
    });
    expect(jobOf(plan, 'own/out').pieces.map((p) => p.date)).toEqual(['2027-04-08']);
    expect(jobOf(plan, 'own/in').pieces.map((p) => p.date)).not.toContain('2027-04-08');
  });

  it('works in daylight only within the hours that are light', () => {
    // In late December at 43° north the sun is down before 17:00, when weekday hours begin.
    const plan = planOf({
      today: '2027-12-20',
      ownJobs: [newOwnJob({ dueOn: '2028-01-10', conditions: { daylight: true } })],
    });
    expect(jobOf(plan, 'own/bed').pieces[0]!.date).toBe('2027-12-25'); // Saturday
    const fromNoon = planOf({
      today: '2027-12-20',
      people: [{ id: 'a', name: 'Adult A', away: [], startH: { weekday: 12, weekend: 8 } }],
      ownJobs: [newOwnJob({ hours: 2, dueOn: '2028-01-10', conditions: { daylight: true } })],
    });
    expect(jobOf(fromNoon, 'own/bed').pieces[0]!.date).toBe('2027-12-20'); // Monday
  });

  it('moves what hangs from an arrival by a week when it moves by a week', () => {
    const [now, later] = ['2027-05-05', '2027-05-12'].map((arrival) =>
      planOf({ work: [newBatchWork(arrival, today)] }),
    );
    const key = 'batch/meat/meat.preheat-brooder-and-check-floor';
    const dates = [now, later].map(
      (plan) => plan!.jobs.find((job) => job.key.startsWith(key))!.latest,
    );
    expect(dates).toEqual(['2027-05-04', '2027-05-11']);
  });

  it('drops what is ticked off, and puts off what is put off', () => {
    const ownJobs = [newOwnJob(), newOwnJob({ id: 'after', waitsForId: 'bed', waitDays: 3 })];
    expect(jobOf(planOf({ ownJobs }), 'own/after').pieces[0]!.date).toBe('2027-04-08');
    const done = planOf({ ownJobs, progress: [{ key: 'own/bed', doneOn: today }] });
    expect(done.jobs.map((job) => job.key)).toEqual(['own/after']);
    expect(done.jobs[0]!.pieces[0]!.date).toBe(today);
    const off = planOf({ ownJobs, progress: [{ key: 'own/bed', notBefore: '2027-04-20' }] });
    expect(jobOf(off, 'own/bed').pieces[0]!.date).toBe('2027-04-20');
  });

  it('takes chores first', () => {
    const work = [newBatchWork('2027-04-06', today)];
    const plan = planOf({ work, ownJobs: [newOwnJob({ hours: 1.9, canBeSpread: false })] });
    expect(plan.chores[3]!.length).toBeGreaterThan(0);
    expect(plan.weeks[0]!.choreHours).toBeGreaterThan(0);
  });

  it('says what chores take beyond the hours of a day', () => {
    const people = [
      { id: 'a', name: 'Adult A', away: [], hoursByWeekday: new Array(7).fill(0.25) },
    ];
    const plan = planOf({ people, work: [newBatchWork('2027-04-06', today)] });
    const chores = plan.chores[3]!;
    const short = chores.reduce((sum, chore) => sum + chore.shortHours, 0);
    const all = chores.reduce((sum, chore) => sum + chore.hours, 0);
    expect(short).toBeCloseTo(all - 0.25, 6); // a quarter of an hour is all there is
  });

  it('says that the last day of a job is over, and names what could not be planned', () => {
    const ownJobs = [newOwnJob({ dueOn: '2027-04-01', noUseAfter: '2027-04-02' })];
    const plan = planOf({ ownJobs, unplanned: ['Old batch'] });
    expect(jobOf(plan, 'own/bed').why).toBe('Its last day is over.');
    expect(plan.unplanned).toEqual(['Old batch']);
  });

  it('says what lacks when work is longer than any day', () => {
    const plan = planOf({ ownJobs: [newOwnJob({ hours: 9, canBeSpread: false })] });
    const job = jobOf(plan, 'own/bed');
    expect(job.pieces).toEqual([]);
    expect(job.why).toBe('Nobody has the time for it in one go on any of its days.');
    expect(job.waysToFit[0]).toBe('4 h more on Sat 10 Apr, or a helper for all 9 h of it.');
  });

  it('names own jobs that wait for each other in a circle', () => {
    const ownJobs = [
      newOwnJob({ id: 'a', name: 'Till', waitsForId: 'b' }),
      newOwnJob({ id: 'b', name: 'Sow', waitsForId: 'a' }),
    ];
    expect(() => planOf({ ownJobs })).toThrow(/Till.*Sow|Sow.*Till/);
  });

  it('plans for nobody, and says that nobody is there', () => {
    const plan = planOf({ people: [], ownJobs: [newOwnJob()] });
    expect(jobOf(plan, 'own/bed').why).toBe('It takes more people than there are who can do it.');
  });

  it('leaves everything where it was when it plans again from its own plan', () => {
    // Too much of it for two people, so that some is late, in part or left out.
    const ownJobs = ['bed', 'shed', 'fence', 'barn'].map((id, k) =>
      newOwnJob({ id, name: id, hours: 30 + 9 * k, noUseAfter: '2027-05-10' }),
    );
    const more = { work: [newBatchWork('2027-05-05', today)], ownJobs };
    const { keep: kept, ...first } = workPlanOf(newWork(more), 100);
    expect(first.jobs.filter(({ lostHours }) => 0 < lostHours)).not.toEqual([]);
    const again = planOf({ ...more, kept });
    expect(again.jobs).toEqual(first.jobs);
    expect(again.cost).toBe(first.cost);
  });

  it('keeps work that animals depend on on its day, and says what hours it lacks', () => {
    const people = [{ id: 'a', name: 'Adult A', away: [], hoursByWeekday: new Array(7).fill(0.5) }];
    const plan = planOf({ people, work: [newBatchWork('2027-05-05', today)] });
    const place = plan.jobs.find(({ key }) => key.includes('dip-beaks'))!;
    expect(place.pieces.map(({ date }) => date)).toEqual(['2027-05-05']);
    const onDay = plan.jobs.filter((job) => job.pieces.some(({ date }) => date === '2027-05-05'));
    const hours = onDay.reduce((sum, job) => sum + job.hours - job.shortHours, 0);
    const chores = plan.chores[30]!.reduce((sum, chore) => sum + chore.hours - chore.shortHours, 0);
    expect(hours + chores).toBeCloseTo(0.5, 1); // all there is, each to its minute
    expect(place.why).toBe('It belongs to this day, and animals depend on it.');
  });

  it('gives looks through the day to who is in the house, not to who is at work', () => {
    const person = (id: string, byDay: 'out' | 'at-home', hours: number) => ({
      ...{ id, byDay, name: id, away: [] },
      hoursByWeekday: new Array(7).fill(hours),
    });
    const people = [person('out', 'out', 6), person('in', 'at-home', 5)];
    // A Wednesday, and the Friday of the first week.
    const plan = planOf({ people, work: [newBatchWork('2027-05-05', today)] });
    const checks = plan.jobs.find(({ key }) => key.includes('first-day-checks'))!;
    expect(checks.pieces.map(({ personIds }) => personIds)).toEqual([['in']]);
    const care = plan.chores[32]!.find(({ key }) => key.includes('brooder-care'))!;
    expect(care.personId).toBe('in');
  });

  it('makes calls and trips when shops are open: on no Sunday, holiday or day without post', () => {
    const call = newOwnJob({
      ...{ notBefore: '2027-04-11', dueOn: '2027-04-16', hours: 0.5 },
      conditions: { shopsOpen: true },
    });
    const { pieces, why } = jobOf(
      planOf({
        ownJobs: [call],
        publicHolidays: [{ date: '2027-04-12', name: 'Bank Holiday' }],
      }),
      'own/bed',
    );
    expect(pieces.map(({ date }) => date)).toEqual(['2027-04-13']);
    expect(why).toContain('hops and offices are closed on Sun 11 Apr and Mon 12 Apr');
  });

  it('leaves it to nobody who is away', () => {
    const away = [{ from: '2027-05-04', to: '2027-05-06' }];
    const both = ['a', 'b'].map((id) => ({ id, name: id, away }));
    const plan = planOf({ people: both, work: [newBatchWork('2027-05-05', today)] });
    const place = plan.jobs.find(({ key }) => key.includes('dip-beaks'))!;
    expect([place.pieces, place.shortHours]).toEqual([[], 0]);
    expect(place.why).toBe('Nobody has hours on its suitable days.');
  });

  it('plans a wet April otherwise than a usual one: ground work waits for dry days', () => {
    const ownJobs = [
      newOwnJob({ hours: 12, notBefore: '2027-04-05', conditions: { dryGround: true } }),
    ];
    const april = (mm: number): number[] => RAIN_MM.map((usual, k) => (k === 3 ? mm : usual));
    const last = (mm: number): string =>
      jobOf(planOf({ ownJobs, rainMm: april(mm) }), 'own/bed').pieces.at(-1)!.date;
    expect(last(40) < last(200)).toBe(true);
  });

  it('moves own work along with the arrival that it hangs on, and leaves it when that is gone', () => {
    const tiedTo = { eventId: 'event/meat/arrival', on: '2027-05-05' };
    const ownJobs = [newOwnJob({ tiedTo, notBefore: '2027-05-01', dueOn: '2027-05-04' })];
    const due = (more: More): string => jobOf(planOf({ ownJobs, ...more }), 'own/bed').latest;
    expect(due({ work: [newBatchWork('2027-05-05', today)] })).toBe('2027-05-04');
    expect(due({ work: [newBatchWork('2027-05-12', today)] })).toBe('2027-05-11');
    expect(due({})).toBe('2027-05-04');
  });

  it('asks for a missed time of a set until the next has begun, on the dates the event has now', () => {
    const tiedTo = { eventId: 'event/meat/arrival', on: '2027-03-29' };
    const ownJobs = ['2027-03-30', '2027-04-10'].map((dueOn, k) =>
      newOwnJob({
        ...{ id: `t${k + 1}`, name: `Weed the bed, ${k + 1} of 2`, setId: 'bed', tiedTo, dueOn },
        notBefore: k === 0 ? '2027-03-28' : '2027-04-04',
      }),
    );
    const asked = (arrival: string): string[] =>
      planOf({ ownJobs, work: [newBatchWork(arrival, today)] })
        .jobs.filter(({ key, pieces }) => key.startsWith('own/t') && 0 < pieces.length)
        .map(({ key }) => key);
    expect(asked('2027-03-29')).toEqual(['own/t2']);
    // A week later the first is late by a day, and the second has yet to begin; two weeks: neither.
    expect(asked('2027-04-04')).toEqual(['own/t1', 'own/t2']);
    expect(asked('2027-04-12')).toEqual(['own/t1', 'own/t2']);
  });

  it('takes off what is done of a piece of work, and lists what was ticked off', () => {
    const ownJobs = [newOwnJob({ hours: 6 }), newOwnJob({ id: 'shed', name: 'Sweep the shed' })];
    const marks = [
      { key: 'own/bed', hoursDone: 4 },
      { key: 'own/shed', doneOn: '2027-04-04' },
    ];
    const plan = planOf({ ownJobs, progress: marks });
    expect(jobOf(plan, 'own/bed')).toMatchObject({ hours: 2, hoursDone: 4 });
    expect(plan.done).toMatchObject([
      { key: 'own/shed', name: 'Sweep the shed', on: '2027-04-04', hours: 1 },
    ]);
    const whole = planOf({ ownJobs, progress: [{ key: 'own/bed', hoursDone: 9 }] });
    expect(jobOf(whole, 'own/bed').hours).toBe(0.25); // it has to be ticked off
  });

  it('says that daylight is what lacks, and that a day lies beyond the plan', () => {
    const people = [{ id: 'a', name: 'Adult A', away: [] }];
    const dark = planOf({
      people,
      today: '2027-12-20',
      ownJobs: [newOwnJob({ dueOn: '2028-01-10', conditions: { daylight: true } })],
    });
    expect(jobOf(dark, 'own/bed').why).toMatch(/^No hours in daylight on 5 days before/);
    const far = planOf({
      people,
      ownJobs: [
        newOwnJob({ dueOn: '2030-03-01', notBefore: '2027-10-01', hours: 40, canBeSpread: false }),
      ],
    });
    expect(jobOf(far, 'own/bed').why).toBe('It is due after the last day of this plan.');
  });

  it('offers to spread what is longer than any day, which then fits', () => {
    const barn = newOwnJob({ hours: 30, canBeSpread: false, dueOn: '2027-06-01' });
    const whole = jobOf(planOf({ ownJobs: [barn] }), 'own/bed');
    expect(whole.waysToFit).toContain('Let it be spread over several days.');
    const spread = planOf({ ownJobs: [{ ...barn, canBeSpread: true }] });
    expect(jobOf(spread, 'own/bed')).toMatchObject({ lostHours: 0, lateDays: 0 });
  });

  it('does not plan what is only done when weather asks for it', () => {
    const work = [newBatchWork('2027-05-05', today)];
    expect(work[0]!.tasks.some(({ id }) => id.endsWith('move-pen-to-higher-ground-before'))).toBe(
      true,
    );
    const plan = planOf({ work });
    expect(plan.jobs.some(({ key }) => key.endsWith('move-pen-to-higher-ground-before'))).toBe(
      false,
    );
  });
});
