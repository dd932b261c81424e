import { expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { Handover } from '../../../shared/farm/handover.js';
import type { OwnJob } from '../../../shared/farm/job.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import type { WorkPlan } from '../../../shared/plan/work/planned-work.js';
import type { WorkRequest } from '../../../shared/plan/work/work-request.js';
import { tables } from '../../support/factories.js';
import { newOwnJob } from '../../support/season-factories.js';
import { TEN_HOUSEHOLDS, TODAY } from '../../support/ten-households.js';

/** So few that a better plan is nearly always found when it is looked for once more. */
const FIRST_PLANS = 1;
const PLANS = 700;
/** More than this week has hours for, so that another order loses less. */
const CROWDED: OwnJob[] = Array.from({ length: 24 }, (_, k) =>
  newOwnJob({
    ...{ id: `near-${k}`, name: `Job ${k}`, hours: 1 + ((k * 7) % 5), canBeSpread: false },
    ...{ dueOn: addDays(TODAY, k % 6), noUseAfter: addDays(TODAY, 1 + (k % 6)) },
    priority: (['must', 'should', 'could'] as const)[(k * 5) % 3]!,
  }),
);

/** Pieces of the next days by what they are of. */
const soon = ({ jobs }: Pick<WorkPlan, 'jobs'>): string[] =>
  jobs
    .flatMap(({ key, pieces }) =>
      pieces[0] && pieces[0].date < addDays(TODAY, 7)
        ? pieces.map(({ date, personIds }) => `${key} ${date} ${personIds.join()}`)
        : [],
    )
    .sort();

const october = (personId: string): Handover => ({
  ...{ id: 'away', from: '2027-10-09', to: '2027-10-16', personId, hoursPerDay: 3 },
  ...{ awayIds: [], roundOrder: [], phones: [], whereabouts: [] },
});

it.each(TEN_HOUSEHOLDS)('%s: what changes months off moves nothing of this week', (_, picture) => {
  const request = workOfFarm(picture, tables, planAnimals(picture, tables));
  const now = { ...request, ownJobs: [...request.ownJobs, ...CROWDED] };
  const first = workPlanOf(now, FIRST_PLANS);
  const before = soon(first);
  expect(before.length).toBeGreaterThan(2);
  const job = newOwnJob({ id: 'far', hours: 9, notBefore: '2027-09-20', dueOn: '2027-10-10' });
  const changed: WorkRequest[] = [
    { ...now, handovers: [october(now.people[0]!.id)] },
    { ...now, ownJobs: [...now.ownJobs, job] },
  ];
  for (const then of changed)
    expect(soon(workPlanOf({ ...then, kept: first.keep }, PLANS))).toEqual(before);
});
