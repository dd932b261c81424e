import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import { jobsOfSet } from '../../../shared/plan/work/job-sets.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import type { WorkPlan } from '../../../shared/plan/work/planned-work.js';
import type { OwnJob, Progress } from '../../../shared/farm/job.js';
import type { KeptPlan } from '../../../shared/farm/kept-plan.js';
import type { DailyWeather } from '../../../shared/weather/climate.js';
import { tables } from '../../support/factories.js';
import { datedWork } from '../../../shared/plan/work/dated-work.js';
import {
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';
import { newOwnJob, newWork } from '../../support/season-factories.js';

const today = '2027-06-07'; // a Monday
const hay = tables.jobSets.find(({ id }) => id === 'hay')!;
const IN_FIELD = ['mow', 'ted', 'rake', 'bale'];
const LEFT_OF_CUT = ['ted', 'rake', 'bale', 'stack'];
const hours = { hoursByWeekday: [8, 8, 8, 8, 8, 8, 8], startH: { weekday: 8, weekend: 8 } };
const people = ['a', 'b'].map((id) => ({ id, name: id, away: [], ...hours }));

const weather = (rain: readonly boolean[], first: string): DailyWeather[] =>
  rain.map((isWet, k) => ({
    date: addDays(first, k),
    minC: 12,
    maxC: 24,
    rainMm: isWet ? 8 : 0,
  }));
const dryBefore = weather(new Array<boolean>(40).fill(false), addDays(today, -40));

/** A cut of hay that may begin today, planned under a forecast: the days of its passes from today. */
function cutUnder(forecast: readonly boolean[], rainMm?: number[]) {
  const ownJobs = jobsOfSet(hay, { anchorOn: today, count: 2, today });
  const { climate, ...rest } = newWork({ today, people, ownJobs, ...(rainMm ? { rainMm } : {}) });
  const known = { recent: dryBefore, forecast: weather(forecast, today) };
  const plan = workPlanOf({ ...rest, climate: { ...climate, ...known } }, 20);
  const job = (id: string) => plan.jobs.find(({ key }) => key === `own/${id}`)!;
  return {
    on: IN_FIELD.map((id) => daysBetween(today, job(id).pieces[0]?.date ?? '2027-12-31')),
    why: job('mow').why,
  };
}

/** Hours enough to mow on one day of the week, and to bale four days after it alone. */
const MOW_AND_BALE = [1.5, 1, 1, 1, 8, 1, 1];

describe('a cut of hay', () => {
  const [dry, wet] = [false, true];

  it('is not begun on the eve of rain, and dries in the first dry spell that is forecast', () => {
    const { on, why } = cutUnder([dry, dry, wet, dry, dry, dry, dry, dry, dry]);
    expect(on[0]).toBeGreaterThanOrEqual(3);
    expect(on).toEqual([0, 1, 2, 3].map((k) => on[0]! + k));
    expect(why).toContain('Rain within 4 days on Mon 7 Jun and Tue 8 Jun');
    expect(why).toContain('4 dry days in a row are forecast');
  });

  it('beyond the forecast is planned in one go, with the odds of such a week', () => {
    // As wet a June as there is: no spell of the usual weather is four days long.
    const { on, why } = cutUnder([wet, wet, wet, wet], new Array<number>(12).fill(120));
    expect(on[0]).toBeGreaterThan(3);
    expect(on).toEqual([0, 1, 2, 3].map((k) => on[0]! + k));
    expect(why).toMatch(/4 dry days in a row come in [1-4] of 10 such weeks/);
  });

  it('that is mown is turned and raked in its spell, whatever the usual showers of those days', () => {
    const ownJobs = jobsOfSet(hay, { anchorOn: today, count: 2, today });
    for (let ago = 0; ago < 10; ago++) {
      const now = addDays(today, ago);
      const progress = [{ key: 'own/mow', doneOn: now }];
      const { jobs } = workPlanOf(newWork({ today: now, people, ownJobs, progress }), 20);
      const on = (id: string) => jobs.find(({ key }) => key === `own/${id}`)!.pieces[0]!.date;
      expect(daysBetween(now, on('bale'))).toBeLessThanOrEqual(3);
    }
  });

  it('is baled when somebody can bring it in: bales lie out for a night at most', () => {
    const ownJobs = jobsOfSet(hay, { anchorOn: today, count: 2, today });
    for (let free = 0; free < 7; free++) {
      // The second pair of hands that hauling takes is there on one day of the week.
      const hoursByWeekday = Array.from({ length: 7 }, (_, day) => (day === free ? 8 : 0));
      const few = [people[0]!, { ...people[1]!, hoursByWeekday }];
      const { jobs } = workPlanOf(newWork({ today, people: few, ownJobs }), 20);
      const on = (id: string) => jobs.find(({ key }) => key === `own/${id}`)!.pieces[0]!.date;
      expect(daysBetween(on('bale'), on('stack'))).toBeLessThanOrEqual(1);
    }
  });

  it('is all done in one dry spell, and days that lack the hours for it say so', () => {
    const ownJobs = jobsOfSet(hay, { anchorOn: today, count: 2, today });
    const progress = [{ key: 'own/service', doneOn: addDays(today, -1) }];
    for (const free of [0, 1, 2, 3, 6]) {
      // Time to mow or bale is there on one day of the week, to turn and rake on every day.
      const hoursByWeekday = Array.from({ length: 7 }, (_, day) => (day === free ? 8 : 1));
      const few = people.map((person) => ({ ...person, hoursByWeekday }));
      const work = newWork({ today, people: few, ownJobs, progress });
      const { jobs, shortDays } = workPlanOf(work, 20);
      const on = (id: string) => jobs.find(({ key }) => key === `own/${id}`)!.pieces[0]!.date;
      expect(daysBetween(on('rake'), on('bale'))).toBe(1);
      expect(daysBetween(on('mow'), on('bale'))).toBeLessThanOrEqual(4);
      expect(shortDays.length).toBeGreaterThan(0);
      for (const { keys } of shortDays)
        for (const key of keys) expect(['own/mow', 'own/bale']).toContain(key);
      expect(jobs.find(({ key }) => key === 'own/mow')!.why).toContain('the fewest are wanting');
    }
  });

  it('is baled in the spell it was mown in, though no day has the hours, and its day asks for them', () => {
    const ownJobs = jobsOfSet(hay, { anchorOn: today, count: 2, today });
    const hoursByWeekday = new Array<number>(7).fill(1);
    const few = people.map((person) => ({ ...person, hoursByWeekday }));
    const onDay = (now: string, progress: readonly Progress[], kept?: KeptPlan) =>
      workPlanOf(
        newWork({ today: now, people: few, ownJobs, progress, ...(kept ? { kept } : {}) }),
        20,
      );
    const daysOf = ({ jobs }: WorkPlan) =>
      LEFT_OF_CUT.map((id) => jobs.find(({ key }) => key === `own/${id}`)?.pieces[0]?.date);
    const asks = ({ shortDays }: WorkPlan) =>
      shortDays.filter(({ keys }) => keys.includes('own/bale'));
    const service = { key: 'own/service', doneOn: addDays(today, -1) };
    let plan = onDay(today, [service]);
    const days = daysOf(plan);
    const mownOn = plan.jobs.find(({ key }) => key === 'own/mow')!.pieces[0]!.date;
    expect(days.slice(0, 3)).toEqual([1, 2, 3].map((lag) => addDays(mownOn, lag)));
    const told = [service];
    // Planned again as each is ticked: with the plan that was kept, and as if there were none.
    [mownOn, ...days].forEach((date, k) => {
      if (3 <= k) return;
      told.push({ key: `own/${['mow', ...LEFT_OF_CUT][k]!}`, doneOn: date! });
      for (const kept of [undefined, plan.keep]) {
        const next = onDay(date!, told, kept);
        expect(daysOf(next).slice(k, 3)).toEqual(days.slice(k, 3));
        expect(daysOf(next)[3]).toBeDefined();
        expect(asks(next).map((each) => each.date)).toEqual([days[2]]);
        if (kept) plan = next;
      }
    });
  });

  it('that is turned a day late lies for a day more, and is baled', () => {
    const ownJobs = jobsOfSet(hay, { anchorOn: addDays(today, -3), count: 2, today });
    const hoursByWeekday = new Array<number>(7).fill(1);
    const few = people.map((person) => ({ ...person, hoursByWeekday }));
    const progress = [
      { key: 'own/service', doneOn: addDays(today, -3) },
      { key: 'own/mow', doneOn: addDays(today, -2) },
    ];
    const { jobs } = workPlanOf(newWork({ today, people: few, ownJobs, progress }), 20);
    const on = (id: string) => jobs.find(({ key }) => key === `own/${id}`)!.pieces[0]?.date;
    expect(['ted', 'rake', 'bale'].map(on)).toEqual([0, 1, 2].map((lag) => addDays(today, lag)));
  });

  it('lies for a day more where its own days have no hours for all of it, and it is said', () => {
    const ownJobs = jobsOfSet(hay, { anchorOn: today, count: 2, today });
    const progress = [{ key: 'own/service', doneOn: addDays(today, -1) }];
    // Time to mow on one day of the week, to bale on the fourth after it.
    const few = people.map((person) => ({ ...person, hoursByWeekday: MOW_AND_BALE }));
    const { jobs } = workPlanOf(newWork({ today, people: few, ownJobs, progress }), 20);
    const job = (id: string) => jobs.find(({ key }) => key === `own/${id}`)!;
    expect(daysBetween(job('rake').pieces[0]!.date, job('bale').pieces[0]!.date)).toBe(1);
    expect(daysBetween(job('mow').pieces[0]!.date, job('bale').pieces[0]!.date)).toBe(4);
    expect(job('rake').why).toContain('as “Bale” follows within a day');
    expect(job('mow').why).toMatch(/it lies until \w{3} \d+ \w{3}, as there is no time/);
  });

  it('is baled later than the day after raking where that day has no time, and it is said', () => {
    const rake = newOwnJob({ id: 'rake', name: 'Rake', hours: 1, dueOn: today, noUseAfter: today });
    const soon = { waitsForId: 'rake', waitDays: 1, mostWaitDays: 1 };
    const bale = newOwnJob({ id: 'bale', hours: 1, dueOn: addDays(today, 6), ...soon });
    const away = [{ from: addDays(today, 1), to: addDays(today, 2) }];
    const few = people.map((person) => ({ ...person, away }));
    const ownJobs = [rake, bale].map((job) => ({ ...job, canBeSpread: false }));
    const { jobs } = workPlanOf(newWork({ today, people: few, ownJobs }), 20);
    const baled = jobs.find(({ key }) => key === 'own/bale')!;
    expect(baled.pieces[0]!.date).toBe(addDays(today, 3));
    expect(baled.why).toContain('“Rake” is done 3 days before, where a day after it');
  });

  it('says of work that is done in pieces that it is not held to its longest wait', () => {
    const spread = { canBeSpread: true, hours: 6 };
    const rake = newOwnJob({ id: 'rake', name: 'Rake', ...spread, dueOn: today });
    const soon = { waitsForId: 'rake', waitDays: 1, mostWaitDays: 1 };
    const bale = newOwnJob({ id: 'bale', ...spread, ...soon, dueOn: addDays(today, 9) });
    const away = [{ from: addDays(today, 1), to: addDays(today, 5) }];
    const few = people.map((person) => ({ ...person, away }));
    const { jobs } = workPlanOf(newWork({ today, people: few, ownJobs: [rake, bale] }), 20);
    const { why } = jobs.find(({ key }) => key === 'own/bale')!;
    expect(why).toContain('work that is done in pieces is not held to that');
  });

  it('lies until the last of it is baled, not until what is done on the field weeks after', () => {
    const ownJobs = jobsOfSet(hay, { anchorOn: today, count: 2, today });
    const last = { id: 'lime', name: 'Lime', dueOn: addDays(today, 60), waitsForId: 'bale' };
    const lime = newOwnJob({ ...last, waitDays: 21, hours: 1 });
    const progress = [{ key: 'own/service', doneOn: addDays(today, -1) }];
    const few = people.map((person) => ({ ...person, hoursByWeekday: MOW_AND_BALE }));
    const whyOf = (all: OwnJob[]) =>
      workPlanOf(newWork({ today, people: few, ownJobs: all, progress }), 20).jobs.find(
        ({ key }) => key === 'own/mow',
      )!.why;
    expect(whyOf(ownJobs)).toContain('it lies until');
    expect(whyOf([...ownJobs, lime])).toBe(whyOf(ownJobs));
  });

  it('stands on no day that is forecast to be wet, and never lies in forecast rain', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 8, maxLength: 12 }), (forecast) => {
        const { on } = cutUnder(forecast);
        for (let day = on[0]!; day < on[0]! + 4; day++) expect(forecast[day] ?? dry).toBe(dry);
        on.forEach((day) => expect(forecast[day] ?? dry).toBe(dry));
        expect([...on].sort((a, b) => a - b)).toEqual(on);
      }),
      { numRuns: 25 },
    );
  });
});

describe('hay that the grass plan mows', () => {
  const herd = newHerd({ groups: [newGroup({ classId: 'cow-calf', head: 6 })] });
  const pasture = plannedPasture(
    newPastureRequest({ paddocks: newPaddocks(12, { areaM2: 4000 }), herds: [herd] }),
  );
  const request = newWork({
    today: pasture.today,
    people,
    work: datedWork([], { herds: [herd], cows: [] }, pasture),
  });
  const { jobs } = workPlanOf(request, 20);
  const firstGo = (id: string) => jobs.find(({ key }) => key.endsWith(`.h0.hay.${id}`))!;

  it('is work of one dry spell, each pass the day after the last', () => {
    const days = IN_FIELD.map((id) => firstGo(id).pieces[0]!.date);
    expect(days).toEqual([0, 1, 2, 3].map((k) => addDays(days[0]!, k)));
    expect(firstGo('stack').pieces[0]!.date >= days[3]!).toBe(true);
    expect(firstGo('mow').why).toContain('4 dry days in a row');
  });

  it('takes an hour of somebody for every ton that is stacked', () => {
    const task = pasture.tasks.find(({ id }) => id.endsWith('.h0.hay.stack'))!;
    // Two, 8 h for 16 tons: half an hour beforehand, then 1 h for each ton.
    expect(task.hours).toBeCloseTo(0.5 + task.units, 2);
    expect(firstGo('stack').hours * 2).toBeCloseTo(task.hours, 2);
    // A cut of good grass is one to three tons an acre.
    const acres = pasture.tasks.find(({ id }) => id.endsWith('.h0.hay.mow'))!.units;
    expect(task.units / acres).toBeGreaterThan(0.5);
    expect(task.units / acres).toBeLessThan(3.5);
  });
});

describe('other conditions of the days to come', () => {
  const placed = (conditions: object, forecast: readonly Partial<DailyWeather>[]) => {
    const { climate, ...rest } = newWork({ today, people, ownJobs: [newOwnJob({ conditions })] });
    const days = weather(
      forecast.map(() => false),
      today,
    ).map((day, k) => ({
      ...day,
      ...forecast[k],
    }));
    const [job] = workPlanOf(
      { ...rest, climate: { ...climate, recent: dryBefore, forecast: days } },
      20,
    ).jobs;
    return [job!.pieces[0]!.date, job!.why];
  };

  it('asks for the night after: a frost tomorrow morning keeps plants in today', () => {
    const [on, why] = placed({ nextNightMinAtLeastC: 4 }, [{}, { minC: 1 }, {}, {}]);
    expect(on).toBe('2027-06-08');
    expect(why).toContain('Next night too cold on Mon 7 Jun');
  });

  it('asks for warm soil, which follows the air of the days before', () => {
    const warm = { minC: 20, maxC: 32 };
    const [on, why] = placed({ soilAtLeastC: 22 }, new Array(10).fill(warm) as (typeof warm)[]);
    expect(daysBetween(today, on!)).toBeGreaterThan(1);
    expect(daysBetween(today, on!)).toBeLessThan(10);
    expect(why).toContain('Soil too cold on');
    // Beyond the forecast it says until when.
    const [, usual] = placed({ soilAtLeastC: 19 }, []);
    expect(usual).toMatch(/soil is usually too cold for it until/i);
  });
});
