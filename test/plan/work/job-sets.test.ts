import { describe, expect, it } from '@jest/globals';
import { addDays, dayOfYear, daysBetween } from '../../../shared/calendar/plain-date.js';
import {
  jobsOfSet,
  jobsToTake,
  passedOfSet,
  suggestedAnchor,
} from '../../../shared/plan/work/job-sets.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { ownJobProblems } from '../../../shared/plan/work/check-jobs.js';
import { usualSoilC } from '../../../shared/weather/soil-temperature.js';
import { SOIL_DAYS } from '../../../shared/weather/warm-days.js';
import { newFarm, tables } from '../../support/factories.js';
import { newWork } from '../../support/season-factories.js';

const today = '2027-01-10';
const { jobSets } = tables;
const setOf = (id: string) => jobSets.find((set) => set.id === id)!;

describe('jobsOfSet', () => {
  // Iowa State University Extension, fencing costs (second-hand): 42 h for a quarter mile, 1,320 ft.
  it('takes 42 h to build a quarter mile of woven wire, with two', () => {
    const jobs = jobsOfSet(setOf('fence'), { anchorOn: '2027-05-20', count: 13.2, today });
    const build = jobs.find(({ id }) => id === 'build')!;
    expect(build.conditions.peopleNeeded).toBe(2);
    // All labor of the source, shared by the two; 2 h to set up, whatever its length.
    expect(Math.abs(build.hours * 2 - 2 - 42)).toBeLessThan(0.5);
  });

  it('hangs work on its date, and moves all of it with that date', () => {
    const [now, later] = ['2027-05-20', '2027-05-27'].map((anchorOn) =>
      jobsOfSet(setOf('garden-beds'), { anchorOn, count: 1, today }),
    );
    expect(now!.find(({ id }) => id === 'beds-again')!.dueOn).toBe('2027-05-19');
    expect(later!.find(({ id }) => id === 'beds-again')!.dueOn).toBe('2027-05-26');
  });

  it('leaves as many days to sow in warm soil where that comes late, and moves no other work', () => {
    const { climate, farm } = newWork();
    const place = { climate, latitudeDeg: farm.latitudeDeg };
    const on = { anchorOn: '2027-05-01', count: 1, today: '2027-01-01' };
    const byFrost = jobsOfSet(setOf('garden-beds'), on);
    const bySoil = jobsOfSet(setOf('garden-beds'), { ...on, place });
    const usual = usualSoilC(climate, farm.latitudeDeg);
    let later = 0;
    byFrost.forEach((job, i) => {
      const { soilAtLeastC = -Infinity } = job.conditions;
      const { notBefore, dueOn } = bySoil[i]!;
      expect(daysBetween(notBefore!, dueOn)).toBe(daysBetween(job.notBefore!, job.dueOn));
      if (notBefore === job.notBefore) return;
      later++;
      // Warm enough from that day on, and not the day before.
      const day = dayOfYear(`2024${notBefore!.slice(4)}`) - 1;
      expect(usual[day]).toBeGreaterThanOrEqual(soilAtLeastC);
      expect(usual[day - SOIL_DAYS]).toBeLessThan(soilAtLeastC);
    });
    expect(later).toBeGreaterThan(0);
  });

  it('is never worked in pieces too short to be of use', () => {
    const [, ...others] = newWork({}).people;
    const people = [
      { ...newWork({}).people[0]!, hoursByWeekday: [1.25, 0.75, 1.25, 0.75, 1.25, 3, 3] },
      ...others.map((person) => ({ ...person, hoursByWeekday: [0.5, 0.5, 0.5, 0.5, 1, 3, 3] })),
    ];
    let inPieces = 0;
    for (const set of jobSets) {
      const ownJobs = jobsOfSet(set, { anchorOn: '2027-05-20', count: 3, today });
      const { jobs } = workPlanOf(newWork({ today, people, ownJobs }), 100);
      for (const { id, hours: all } of ownJobs) {
        const least = set.jobs.find((job) => job.id === id)?.smallestPieceHours;
        const { pieces } = jobs.find(({ key }) => key === `own/${id}`)!;
        if (least === undefined || all < 2 * least || pieces.length < 2) continue;
        inPieces++;
        // One may be what is left of it.
        const short = pieces.filter(({ hours }) => hours < least).map(({ hours }) => hours);
        expect([set.id, id, short.slice(1)]).toEqual([set.id, id, []]);
      }
    }
    expect(inPieces).toBeGreaterThan(6);
  });

  it('leaves out what is past, and lets nothing wait for it', () => {
    const jobs = jobsOfSet(setOf('hives'), {
      anchorOn: '2027-04-20',
      count: 3,
      today: '2027-04-22',
    });
    expect(jobs.map(({ id }) => id)).not.toContain('order');
    const ids = new Set(jobs.map(({ id }) => id));
    expect(jobs.filter(({ waitsForId }) => waitsForId && !ids.has(waitsForId))).toEqual([]);
  });

  it('still has a day for the first inspection of hives where it is two weeks late', () => {
    const ownJobs = jobsOfSet(setOf('hives'), { anchorOn: '2027-04-20', count: 2, today });
    const late = '2027-05-04';
    const { jobs } = workPlanOf(newWork({ today: late, ownJobs }), 50);
    const { pieces, alreadyLate } = jobs.find(({ key }) => key === 'own/first-look')!;
    expect(alreadyLate).toBe(true);
    expect(pieces.length).toBeGreaterThan(0);
    // Before the first look for swarm cells, which waits for it, is over.
    for (const { date } of pieces) expect(date <= '2027-05-20').toBe(true);
  });

  it('comes again as often as it says', () => {
    const jobs = jobsOfSet(setOf('hives'), { anchorOn: '2027-04-20', count: 3, today });
    const swarm = jobs.filter(({ name }) => name.startsWith('Check for swarm cells'));
    expect(swarm).toHaveLength(6);
    expect(new Set(swarm.map(({ id }) => id)).size).toBe(6);
  });

  it.each(jobSets.map((set) => [set.id] as const))('%s is a valid set of own jobs', (id) => {
    const farm = newFarm();
    const { climate, people } = newWork();
    const anchorOn = suggestedAnchor(setOf(id), { farm, climate, tables, today });
    const jobs = jobsOfSet(setOf(id), { anchorOn, count: 2, today });
    expect(jobs.length).toBeGreaterThan(0);
    jobs.forEach((job) => expect(ownJobProblems(job, { people, ownJobs: jobs })).toEqual([]));
    const plan = workPlanOf(newWork({ today, ownJobs: jobs }), 50);
    expect(plan.jobs.length).toBeGreaterThan(0);
  });
});

it('counts sets in the units of the farm, which are converted as tables of units give them', () => {
  // One thousand square feet, an acre and a cord: NIST Handbook 44, appendix C.
  const each = (id: string) => setOf(id).counted.metric.each;
  expect(each('garden-beds')).toBeCloseTo(100 / 92.903, 3);
  expect(each('hay')).toBeCloseTo(1 / 0.404686, 3);
  expect(each('firewood')).toBeCloseTo(1 / 3.624556, 3);
  expect(each('fence')).toBeCloseTo(100 / 30.48, 3);
});

it('refuses a longest wait that is shorter than the wait, with the least that can be', () => {
  const jobs = jobsOfSet(setOf('hay'), { anchorOn: '2027-06-07', count: 2, today });
  const bale = { ...jobs.find(({ id }) => id === 'bale')!, mostWaitDays: 0 };
  const { people } = newWork();
  const [problem] = ownJobProblems(bale, { people, ownJobs: jobs });
  expect(problem).toMatchObject({ field: 'mostWaitDays', given: 0, min: 1 });
});

it('refuses a longest wait for nothing, and for work that is spread over days', () => {
  const jobs = jobsOfSet(setOf('hay'), { anchorOn: '2027-06-07', count: 2, today });
  const { people } = newWork();
  const problemsOf = (more: object) =>
    ownJobProblems(
      { ...jobs.find(({ id }) => id === 'bale')!, ...more },
      { people, ownJobs: jobs },
    );
  expect(problemsOf({})).toEqual([]);
  expect(problemsOf({ waitsForId: undefined, waitDays: undefined })).toMatchObject([
    { field: 'mostWaitDays', given: 1, code: 'not-allowed' },
  ]);
  expect(problemsOf({ canBeSpread: true })).toMatchObject([
    { field: 'mostWaitDays', given: 1, code: 'conflict' },
  ]);
});

it('begins no set in the past', () => {
  for (const set of tables.jobSets)
    for (const { notBefore } of jobsOfSet(set, { anchorOn: addDays(today, 2), count: 1, today }))
      expect(notBefore! >= today).toBe(true);
});

describe('suggestedAnchor', () => {
  const given = { farm: newFarm({ lastFrost: '05-20' }), climate: newWork().climate, tables };

  it('is the coming last frost, and next year’s when most of the work is over', () => {
    const beds = setOf('garden-beds');
    expect(suggestedAnchor(beds, { ...given, today: '2027-01-10' })).toBe('2027-05-20');
    expect(suggestedAnchor(beds, { ...given, today: '2027-08-10' })).toBe('2028-05-20');
  });

  it('is the first of three mean days at 55 °F for hives', () => {
    const on = suggestedAnchor(setOf('hives'), { ...given, today });
    const { meanMaxC } = given.climate;
    const first = meanMaxC.findIndex(
      (c, i) => 12.8 <= Math.min(c, meanMaxC[i + 1]!, meanMaxC[i + 2]!),
    );
    expect(on.slice(0, 4)).toBe('2027');
    expect(Number(on.slice(5, 7))).toBeGreaterThanOrEqual(3);
    expect(first).toBeGreaterThan(60);
  });

  it('is that of this season for hives and beds that are there in the middle of it', () => {
    const onMay3 = { ...given, today: '2027-05-03' };
    for (const id of ['hives', 'garden-beds']) {
      const set = setOf(id);
      const anchorOn = suggestedAnchor(set, onMay3);
      expect(anchorOn.slice(0, 4)).toBe('2027');
      const on = { anchorOn, count: 2, today: onMay3.today };
      const taken = jobsToTake(set, on);
      const names = taken.map(({ name }) => name).join('; ');
      for (const word of id === 'hives' ? ['swarm cells', 'supers', 'mites'] : ['Weed', 'beans'])
        expect(names).toContain(word);
      // Nothing is late before anybody knew of it, and what is over is told apart.
      expect(taken.filter(({ dueOn }) => dueOn < onMay3.today)).toEqual([]);
      const passed = passedOfSet(set, on);
      expect(passed.map(({ name }) => name)).toContain(
        id === 'hives'
          ? 'Order packages or queens, if you need any'
          : 'Order seed and seed potatoes',
      );
      const ids = (jobs: readonly { id: string }[]) => jobs.map((job) => job.id);
      expect(ids(passed).filter((each) => ids(taken).includes(each))).toEqual([]);
    }
  });

  it('is next year’s once little of this one is left', () => {
    expect(suggestedAnchor(setOf('hives'), { ...given, today: '2027-08-01' }).slice(0, 4)).toBe(
      '2028',
    );
  });
});
