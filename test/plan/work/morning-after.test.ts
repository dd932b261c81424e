import { expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { Progress } from '../../../shared/farm/job.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import type { PlannedJob } from '../../../shared/plan/work/planned-work.js';
import { seededRandom } from '../../../shared/schedule/random.js';
import { tables } from '../../support/factories.js';
import { newPaddocks } from '../../support/pasture-factories.js';
import { randomPicture } from '../../support/random-pictures.js';
import { TEN_HOUSEHOLDS } from '../../support/ten-households.js';
import {
  boughtAsPlanned,
  doneAsPlanned,
  movedAsPlanned,
  mownAsPlanned,
} from '../../support/told-as-planned.js';

interface Planned {
  readonly work: ReturnType<typeof workPlanOf>;
  readonly pasture?: PasturePlan | undefined;
}
const FEW_PLANS = 300;

function planOf(picture: FarmPicture): Planned {
  const animals = planAnimals(picture, tables);
  return {
    work: workPlanOf(workOfFarm(picture, tables, animals), FEW_PLANS),
    pasture: animals.pasture,
  };
}

/** The picture of the next morning, with the plan that was kept. */
function nextMorning(
  picture: FarmPicture,
  { work, pasture }: Planned,
  told: readonly Progress[],
): FarmPicture {
  const keys = new Set(told.map(({ key }) => key));
  const walked = pasture ? movedAsPlanned(picture, pasture) : picture;
  const mown = pasture ? mownAsPlanned(pasture, told, picture.today) : [];
  return {
    ...walked,
    today: addDays(picture.today, 1),
    keptPlans: [work.keep],
    mowings: [...(picture.mowings ?? []), ...mown],
    feedBought: [...(picture.feedBought ?? []), ...boughtAsPlanned(work, told)],
    progress: [...picture.progress.filter(({ key }) => !keys.has(key)), ...told],
  };
}

const isInPart = ({ lostHours, pieces }: PlannedJob): boolean => 0 < lostHours && 0 < pieces.length;
/** Pieces from a day on by the key of their work, in minutes. */
const placesOf = ({ work }: Planned, from: string) =>
  new Map(
    work.jobs.map(({ key, pieces }) => [
      key,
      pieces
        .filter(({ date }) => from <= date)
        .map(({ date, hours, personIds }) => `${date} ${Math.round(60 * hours)} ${personIds}`),
    ]),
  );

/** With all done that makes ready for turn-out: cattle for which it is not stay in, and are not moved. */
function readied(picture: FarmPicture): FarmPicture {
  const done = (planAnimals(picture, tables).pasture?.tasks ?? []).flatMap((task): Progress[] =>
    task.event === 'turn-out' && task.noUseAfter === picture.today
      ? [{ key: `herd/${task.belongsToId!}/${task.id}`, doneOn: addDays(picture.today, -1) }]
      : [],
  );
  return { ...picture, progress: [...picture.progress, ...done] };
}

/** Follows the plan of a household for some days, and holds each next one against it. */
function expectNothingMoves(first: FarmPicture, days: number): void {
  let picture = readied(first);
  let plan = planOf(picture);
  for (let day = 0; day < days; day++) {
    const before = plan;
    const { today } = picture;
    picture = nextMorning(
      picture,
      plan,
      plan.work.jobs.flatMap((job) => doneAsPlanned(job, today)),
    );
    plan = planOf(picture);
    const now = placesOf(plan, picture.today);
    const inPart = new Set(before.work.jobs.filter(isInPart).map(({ key }) => key));
    for (const [key, was] of placesOf(before, picture.today)) {
      if (was.length === 0) continue;
      const is = now.get(key) ?? [];
      // Of what had no place for a part, a later last day of the plan may give room to more.
      const held = inPart.has(key) ? is.filter((piece) => was.includes(piece)) : is;
      expect([today, key, ...held]).toEqual([today, key, ...was]);
    }
    // What had no place may find one once what it waits for is behind.
    const moved = plan.work.changes!.list.filter(({ kind }) => kind !== 'fits-now');
    expect(moved.filter(({ key }) => !inPart.has(key))).toEqual([]);
  }
}

/** The same household with a quarter of its hours, in which work finds room for a part alone. */
const withFewHours = (picture: FarmPicture): FarmPicture => ({
  ...picture,
  people: picture.people.map(({ hoursByWeekday, ...person }) => ({
    ...person,
    ...(hoursByWeekday ? { hoursByWeekday: hoursByWeekday.map((h) => h / 4) } : {}),
  })),
});

it('a day done as it was planned leaves the next as it was, whatever household it is', () => {
  let inPart = 0;
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
      const drawn = randomPicture(seededRandom(seed));
      const hasGrass = 0 < drawn.herds.length && seed % 2 === 0;
      const drawnWith = hasGrass ? { ...drawn, paddocks: newPaddocks(5) } : drawn;
      const picture = seed % 3 === 0 ? withFewHours(drawnWith) : drawnWith;
      if (planOf(picture).work.jobs.some(isInPart)) inPart++;
      expectNothingMoves(picture, 2);
    }),
    { numRuns: 12, seed: 7 },
  );
  expect(inPart).toBeGreaterThan(2);
});

it.each([
  ['three generations', '2027-05-20'],
  ['a milk cow', '2027-05-21'],
  ['away at calving', '2027-05-21'],
])('the morning after turn-out is as it was planned: %s', (name, today) => {
  const [, picture] = TEN_HOUSEHOLDS.find(([each]) => each === name)!;
  expectNothingMoves({ ...picture, today }, 3);
});

it('a day on which nothing was done says of all that is on other days now what moved, and why', () => {
  let moved = 0;
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
      const picture = randomPicture(seededRandom(seed));
      const before = planOf(picture);
      const { work } = planOf(nextMorning(picture, before, []));
      const said = new Map(work.changes!.list.map((change) => [change.key, change]));
      const was = new Map(before.work.jobs.map((job) => [job.key, job]));
      for (const { key, pieces } of work.jobs) {
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

it('somebody who is new takes what was late, not only what had no place', () => {
  const [, { jobs, ...picture }] = TEN_HOUSEHOLDS.find(([name]) => name === 'one alone')!;
  const dueOn = addDays(picture.today, 5);
  const alone = {
    ...picture,
    batches: [],
    jobs: jobs.map((job) => ({ ...job, dueOn, conditions: {} })),
  };
  const before = planOf(alone);
  const daysLate = ({ work }: Planned): number =>
    work.jobs.reduce((sum, { lateDays }) => sum + lateDays, 0);
  expect(daysLate(before)).toBeGreaterThan(0);
  const next = nextMorning(
    alone,
    before,
    before.work.jobs.flatMap((job) => doneAsPlanned(job, alone.today)),
  );
  const cleo = { id: 'cleo', name: 'Cleo', away: [] };
  const withCleo = planOf({ ...next, people: [...next.people, cleo] });
  expect(daysLate(withCleo)).toBeLessThanOrEqual(daysLate(before) / 2);
  expect(withCleo.work.changes!.list.every(({ why }) => 10 < why.length)).toBe(true);
});
