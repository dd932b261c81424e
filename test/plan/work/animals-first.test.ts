import { describe, expect, it } from '@jest/globals';
import { addDays, weekdayOf } from '../../../shared/calendar/plain-date.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import { todayJobs } from '../../../shared/plan/today/today-work.js';
import type { PlannedJob } from '../../../shared/plan/work/planned-work.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { newBatch, newRequest, tables } from '../../support/factories.js';
import { newPicture } from '../../support/pictures.js';
import { TEN_HOUSEHOLDS } from '../../support/ten-households.js';

const EVENINGS = [2, 2, 2, 2, 2, 5, 3];
const WEEKENDS = [0.5, 0.5, 0.5, 0.5, 0.5, 8, 8];
const PLANS = 300;

/** Two adults whose chicks come in so many days, with nothing ready. */
function lateHousehold(today: string, inDays: number, hoursByWeekday: number[]): FarmPicture {
  const { farm, climate, facilities } = newRequest();
  const people = ['Ann', 'Ben'].map((name) => ({ id: name, name, away: [], hoursByWeekday }));
  const meat = newBatch({ arrivalDate: addDays(today, inDays), wantedBirds: 75, leaveAgeDays: 56 });
  const batches = [{ ...meat, id: 'meat', name: 'Meat' }];
  return newPicture({ farm, climate, facilities, today, people, batches });
}

function jobsOf(picture: FarmPicture): readonly PlannedJob[] {
  const request = workOfFarm(picture, tables, planAnimals(picture, tables));
  return workPlanOf(request, PLANS).jobs;
}

const NEEDED = new Set(
  tables.taskTemplates.filter(({ animalsNeedIt }) => animalsNeedIt).map(({ id }) => `batch/${id}`),
);
const isNeeded = ({ kind = '' }: PlannedJob): boolean => NEEDED.has(kind);
const isSunday = (date: string): boolean => weekdayOf(date) === 7;

describe('what animals cannot do without, where chicks come soon', () => {
  const days = Array.from({ length: 11 }, (_, inDays) => inDays);
  it.each(days)('is all done, %d days before they come', (inDays) => {
    for (const hours of [EVENINGS, WEEKENDS]) {
      for (const today of ['2027-04-12', '2027-04-16', '2027-04-17']) {
        const arrival = addDays(today, inDays);
        const needed = jobsOf(lateHousehold(today, inDays, hours)).filter(isNeeded);
        expect(needed.length).toBeGreaterThan(3);
        const undone = needed.filter(
          ({ pieces, lostHours }) => pieces.length === 0 || 0.5 < lostHours,
        );
        expect(undone.map(({ name }) => name)).toEqual([]);
        const late = needed
          .filter(({ latest }) => latest <= arrival)
          .flatMap(({ name, pieces }) => {
            const last = pieces.at(-1)!.date;
            // On a Sunday no store is open.
            return arrival < last && !isSunday(arrival) ? [`${name} on ${last}`] : [];
          });
        expect(late).toEqual([]);
      }
    }
  });

  it('warms up no brooder that is not bedded, and beds none that does not stand', () => {
    const ORDER = [
      ['meat.bed-brooder-hang-heat-two-ways', 'meat.preheat-brooder-and-check-floor-temperature'],
      ['meat.get-brooder-and-gear', 'meat.bed-brooder-hang-heat-two-ways'],
    ];
    let seen = 0;
    for (const [inDays, hours, today] of [1, 2, 3, 5, 7].flatMap((days) =>
      [EVENINGS, WEEKENDS].flatMap((each) =>
        ['2027-04-12', '2027-04-16'].map((on) => [days, each, on] as const),
      ),
    ))
      for (const facilities of [undefined, []]) {
        const household = lateHousehold(today, inDays, hours);
        const jobs = jobsOf(facilities ? { ...household, facilities } : household);
        const pieces = (id: string) =>
          jobs.find(({ kind }) => kind === `batch/${id}`)?.pieces ?? [];
        for (const [first, then] of ORDER) {
          const [done, begun] = [pieces(first!).at(-1)?.date, pieces(then!)[0]?.date];
          if (done === undefined || begun === undefined) continue;
          seen++;
          expect(`${then} on ${begun}`).toBe(
            `${then} on ${begun < done ? `no day before ${done}` : begun}`,
          );
        }
      }
    expect(seen).toBeGreaterThan(20);
  });

  it('is not kept back by what has no time itself', () => {
    const jobs = jobsOf(lateHousehold('2027-04-12', 0, EVENINGS));
    const priced = jobs.find(({ name }) => name === 'Price and order feed')!;
    expect(priced.pieces).toEqual([]);
    const trips = jobs.filter(({ name }) => name.startsWith('Fetch feed'));
    expect(trips.length).toBeGreaterThan(1);
    for (const { pieces, why } of trips) {
      expect(pieces).toHaveLength(1);
      expect(why).toContain('“Price and order feed”');
    }
  });

  it('says what should be done before it, where that is planned after it', () => {
    let seen = 0;
    for (const inDays of [0, 1, 2, 3, 4])
      for (const count of [1, 2]) {
        const household = lateHousehold('2027-04-12', inDays, EVENINGS);
        const jobs = jobsOf({ ...household, people: household.people.slice(0, count) });
        const placed = new Map(jobs.map((job) => [job.kind, job]));
        for (const { id, waitsFor } of tables.taskTemplates) {
          const job = placed.get(`batch/${id}`);
          for (const other of waitsFor) {
            const before = placed.get(`batch/${other}`);
            const [first, last] = [job?.pieces[0]?.date, before?.pieces.at(-1)?.date];
            if (first === undefined || last === undefined || last <= first) continue;
            expect(job!.why).toContain(`“${before!.name}” should be done`);
            expect(job!.beforeItsTurn).toContain(before!.name);
            seen++;
          }
        }
      }
    expect(seen).toBeGreaterThan(2);
  });

  it('is done by one alone in twice the time, where two are meant', () => {
    const two = lateHousehold('2027-04-12', 20, WEEKENDS);
    const caught = (picture: FarmPicture) =>
      jobsOf(picture).find(({ name }) => name === 'Catch, move and count')!;
    const [together, alone] = [two, { ...two, people: two.people.slice(0, 1) }].map(caught);
    expect(together).toMatchObject({ peopleNeeded: 2, pieces: [expect.anything()] });
    expect(alone).toMatchObject({ peopleNeeded: 1, pieces: [expect.anything()] });
    expect(alone!.hours).toBeCloseTo(2 * together!.hours, 6);
  });

  it('comes before what is of use to nobody today', () => {
    // A Saturday: hours there are, but not for all.
    const jobs = jobsOf(lateHousehold('2027-04-17', 0, EVENINGS));
    const short = jobs.filter((job) => isNeeded(job) && job.pieces.length === 0);
    expect(short).toEqual([]);
    const others = jobs.filter((job) => !isNeeded(job) && job.pieces.length === 0);
    expect(others.length).toBeGreaterThan(0);
  });
});

describe('what is no animal’s but cannot be left out', () => {
  const householdOf = (name: string) => TEN_HOUSEHOLDS.find(([each]) => each === name)![1];
  const named = (picture: FarmPicture, word: string) =>
    jobsOf(picture).filter((job) => job.name.startsWith(word));

  it('is ice and tables on the day birds are processed, where no evening has the hours', () => {
    for (const word of ['Make or buy ice', 'Set up shade, tables']) {
      const [job] = named(householdOf('a milk cow'), word);
      expect(job).toMatchObject({ lostHours: 0, pieces: [expect.anything()] });
      expect(job!.why).toMatch(/the meat depends on it/i);
    }
  });

  it('is a paddock that is laid out, though nobody was there for a walk of the grass', () => {
    const home = householdOf('away at calving');
    const [walk] = named(home, 'Measure grass, two weeks');
    // Nobody is there on the days of that walk.
    const days = [{ from: walk!.earliest, to: walk!.latest }];
    const away = { ...home, people: home.people.map((each) => ({ ...each, away: days })) };
    expect(named(away, 'Measure grass, two weeks')[0]!.pieces).toEqual([]);
    const [lay] = named(away, 'Lay out first paddocks');
    expect(lay!.pieces.length).toBeGreaterThan(0);
    expect(lay!.why).toContain('without “Measure grass, two weeks before turn-out”');
  });
});

describe('birds that came days early', () => {
  const today = '2027-04-30';
  const waiting = lateHousehold(today, 5, EVENINGS);
  const request = workOfFarm(waiting, tables, planAnimals(waiting, tables));
  const { keep } = workPlanOf(request, PLANS);
  /** The same household on a day, its birds told to have come on the first, with the plan of that morning. */
  const onDay = (date: string) => {
    const came = {
      batchId: 'meat',
      date: today,
      change: 'arrived',
      birds: 78,
      id: 'came',
    } as const;
    const picture = { ...waiting, today: date, headChanges: [came], keptPlans: [keep] };
    const asked = workOfFarm(picture, tables, planAnimals(picture, tables));
    return { plan: workPlanOf(asked, PLANS), picture };
  };
  const named = (jobs: readonly { name: string }[], word: string) =>
    jobs.filter(({ name }) => name.includes(word));

  it('are not waited for, called about, collected or counted, though the plan of the morning had it', () => {
    const { plan } = onDay(today);
    // To bed and warm the brooder stays: they wait for it in a box in the house.
    const planned = Object.keys(keep.jobs).filter((key) =>
      /collect-chicks|confirm-dispatch|dip-beaks/.test(key),
    );
    expect(planned.length).toBe(3);
    expect(plan.jobs.filter(({ key }) => planned.includes(key))).toEqual([]);
  });

  it('have a place and feed before all else of today, and a brooder within days', () => {
    const { plan, picture } = onDay(today);
    const jobs = todayJobs(plan, picture);
    const first = jobs
      .slice(0, 2)
      .map(({ name }) => name.split(':')[0])
      .sort();
    expect(first).toEqual(['A warm place for the chicks at once', 'Fetch feed']);
    const [mend] = plan.jobs.filter(({ name }) => name.startsWith('Mend the brooder'));
    expect(mend!.alreadyLate).toBe(false);
    expect(mend!.pieces.at(-1)!.date <= addDays(today, 7)).toBe(true);
  });

  it('are asked for nothing of it once they have stood there for a week', () => {
    const { plan } = onDay(addDays(today, 8));
    for (const word of ['at once', 'Mend the brooder', 'Price and order'])
      expect(named(plan.jobs, word)).toEqual([]);
  });
});
