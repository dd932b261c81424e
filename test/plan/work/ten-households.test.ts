import { describe, expect, it } from '@jest/globals';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { planBatch } from '../../../shared/plan/batch-plan.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import type { PlannedJob } from '../../../shared/plan/work/planned-work.js';
import type { WorkRequest } from '../../../shared/plan/work/work-request.js';
import { tables } from '../../support/factories.js';
import { TEN_HOUSEHOLDS } from '../../support/ten-households.js';

const PLANS = 600;
const isWhole = ({ pieces, lostHours }: PlannedJob): boolean =>
  0 < pieces.length && lostHours === 0;
const HOURS = /^(?:(\d+) h)? ?(?:(\d+) min)? ?more on/;

/** The household with what a sentence offers; undefined for what is somebody else’s to do. */
function taken(
  request: WorkRequest,
  { key, hours }: PlannedJob,
  way: string,
): WorkRequest | undefined {
  const { progress, ownJobs, people } = request;
  const [, h = 0, min = 0] = HOURS.exec(way) ?? [];
  const more = Number(h) + Number(min) / 60;
  // Hours more of somebody are as many less that are left to the others.
  if (0 < more) {
    const left = Math.max(0.02, hours - more - 0.02);
    return { ...request, progress: [...progress, { key, ownHours: left }] };
  }
  if (way.startsWith('A later last day')) {
    const open = ({ noUseAfter: _last, ...job }: (typeof ownJobs)[number]) => job;
    return {
      ...request,
      ownJobs: ownJobs.map((job) => (`own/${job.id}` === key ? open(job) : job)),
    };
  }
  if (way.startsWith('It takes'))
    return { ...request, people: [...people, { id: 'helper', name: 'Helper', away: [] }] };
  return undefined;
}

/** Ways of each household that could be tried as they were said. */
const TRIED: Record<string, number> = { 'one alone': 1, 'a wet spring': 1 };

describe.each(TEN_HOUSEHOLDS)('the household: %s', (name, picture: FarmPicture) => {
  const animals = planAnimals(picture, tables);
  const request = workOfFarm(picture, tables, animals);
  const plan = workPlanOf(request, PLANS);

  it('fits what does not fit when what is offered is taken', () => {
    expect(plan.jobs.length).toBeGreaterThan(15);
    let tried = 0;
    for (const job of plan.jobs.filter((each) => !isWhole(each))) {
      expect([job.name, job.why.length]).not.toEqual([job.name, 0]);
      for (const way of job.waysToFit) {
        const other = taken(request, job, way);
        if (!other) continue;
        tried++;
        const now = workPlanOf(other, PLANS).jobs.find(({ key }) => key === job.key);
        expect([job.name, way, now && isWhole(now)]).toEqual([job.name, way, true]);
      }
    }
    expect(tried).toBeGreaterThanOrEqual(TRIED[name] ?? 0);
  });

  it('has each bird processed by somebody, in one of the ways offered', () => {
    for (const { id, plan: batch } of animals.batches) {
      for (const { chosenBy } of batch.leaving?.processingWays ?? []) {
        const { targetLiveKg: _none, ...chosen } = chosenBy ?? {};
        const batches = picture.batches.map((each) =>
          each.id === id ? { ...each, ...chosen } : each,
        );
        const { leaving } = planBatch({ ...picture, batches }, tables, id);
        expect(leaving!.birdsWithoutHands).toBeUndefined();
        for (const { untilH = 0 } of leaving!.processingDays) expect(untilH).toBeLessThan(21);
      }
    }
  });
});
