import { expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { Progress } from '../../../shared/farm/job.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import type { PlannedJob } from '../../../shared/plan/work/planned-work.js';
import { seededRandom } from '../../../shared/schedule/random.js';
import { tables } from '../../support/factories.js';
import { randomPicture } from '../../support/random-pictures.js';

type Plan = ReturnType<typeof workPlanOf>;
const FEW_PLANS = 300;
const planOf = (picture: FarmPicture): Plan =>
  workPlanOf(workOfFarm(picture, tables, planAnimals(picture, tables)), FEW_PLANS);

/** What is told of a job by somebody who does today what the plan says. */
function asPlanned(job: PlannedJob, today: string): Progress[] {
  const { key, hours, hoursDone, kind, pieces } = job;
  const [first] = pieces;
  if (first?.date !== today) return [];
  const all = hours + hoursDone;
  if (1 < pieces.length) return [{ key, hoursDone: hoursDone + first.hours }];
  const of = kind === undefined ? {} : { kind };
  return [{ key, doneOn: today, hours: all, reckonedHours: all, ...of }];
}

/** The picture of the next morning, with the plan that was kept. */
function nextMorning(picture: FarmPicture, plan: Plan, told: readonly Progress[]): FarmPicture {
  const keys = new Set(told.map(({ key }) => key));
  return {
    ...picture,
    today: addDays(picture.today, 1),
    keptPlans: [plan.keep],
    progress: [...picture.progress.filter(({ key }) => !keys.has(key)), ...told],
  };
}

const isInPart = ({ lostHours, pieces }: PlannedJob): boolean => 0 < lostHours && 0 < pieces.length;
const placesOf = (plan: Plan, from: string) =>
  plan.jobs
    .map(({ key, pieces }): [string, unknown] => [
      key,
      pieces
        .filter(({ date }) => from <= date)
        .map(({ date, hours, personIds }) => [date, Math.round(60 * hours), personIds]),
    ])
    .filter(([, pieces]) => 0 < (pieces as unknown[]).length);

it('a day done as it was planned leaves the next as it was, whatever household it is', () => {
  let tried = 0;
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
      let picture = randomPicture(seededRandom(seed));
      let plan = planOf(picture);
      // What was done of work that is planned in part may give room to the rest of it.
      if (plan.jobs.some(isInPart)) return;
      tried++;
      for (let day = 0; day < 2; day++) {
        const before = plan;
        const { today } = picture;
        picture = nextMorning(
          picture,
          plan,
          plan.jobs.flatMap((job) => asPlanned(job, today)),
        );
        plan = planOf(picture);
        const was = placesOf(before, picture.today);
        const known = new Set(was.map(([key]) => key));
        const now = placesOf(plan, picture.today).filter(([key]) => known.has(key));
        expect(now.sort()).toEqual(was.sort());
        // What had no place may find one once what it waits for is behind.
        expect(plan.changes!.list.filter(({ kind }) => kind !== 'fits-now')).toEqual([]);
      }
    }),
    { numRuns: 10, seed: 7 },
  );
  expect(tried).toBeGreaterThan(4);
});

it('a day on which nothing was done says of all that is on other days now what moved, and why', () => {
  let moved = 0;
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
      const picture = randomPicture(seededRandom(seed));
      const before = planOf(picture);
      const next = nextMorning(picture, before, []);
      const plan = planOf(next);
      const said = new Map(plan.changes!.list.map((change) => [change.key, change]));
      const was = new Map(before.jobs.map((job) => [job.key, job]));
      for (const { key, pieces } of plan.jobs) {
        const first = was.get(key)?.pieces[0]?.date;
        if (first === undefined || pieces[0]?.date === first) continue;
        moved++;
        expect(said.get(key)?.why.length).toBeGreaterThan(10);
      }
    }),
    { numRuns: 4, seed: 7 },
  );
  expect(moved).toBeGreaterThan(4);
});
