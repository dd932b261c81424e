import { expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { Progress } from '../../../shared/farm/job.js';
import type { KeptPlan } from '../../../shared/farm/kept-plan.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { planWork } from '../../../shared/plan/farm/work-of-farm.js';
import type { PlannedJob } from '../../../shared/plan/work/planned-work.js';
import { checkDto } from '../../../src/common/check-dto.js';
import { FarmDocumentDto } from '../../../src/documents/farm-document.dto.js';
import { pictureOfDocument } from '../../../src/picture/farm-document.js';
import { readExample } from '../../support/examples.js';
import { tables } from '../../support/factories.js';
import { boughtAsPlanned } from '../../support/told-as-planned.js';

/** What is told of a job by somebody who does it on the days and in the hours of the plan. */
function asPlanned(job: PlannedJob, until: string): Progress | undefined {
  const last = job.pieces.at(-1)?.date;
  const hours = job.hours + job.hoursDone;
  if (last !== undefined && last < until) {
    const kind = job.kind === undefined ? {} : { kind: job.kind };
    return { key: job.key, doneOn: last, hours, reckonedHours: hours, ...kind };
  }
  const done = job.pieces.filter(({ date }) => date < until);
  const hoursDone = done.reduce((sum, piece) => sum + piece.hours, job.hoursDone);
  return done.length === 0 ? undefined : { key: job.key, hoursDone };
}

it('a plan that is followed to the letter is the same when it is made again', () => {
  const document = checkDto(FarmDocumentDto, readExample('household'));
  let picture = pictureOfDocument(document, tables, Date.UTC(2027, 3, 5, 12));
  let kept: KeptPlan | undefined;
  let all = 0;
  for (let week = 0; week < 5; week++) {
    const now = { ...picture, keptPlans: kept ? [kept] : [] };
    const plan = planWork(now, tables, planAnimals(now, tables));
    expect(plan.changes?.list ?? []).toEqual([]);
    kept = plan.keep;
    const until = addDays(picture.today, 7);
    const told = plan.jobs.flatMap((job) => asPlanned(job, until) ?? []);
    all += told.length;
    const keys = new Set(told.map(({ key }) => key));
    const before = picture.progress.filter(({ key }) => !keys.has(key));
    const feedBought = [...(picture.feedBought ?? []), ...boughtAsPlanned(plan, told)];
    picture = { ...picture, feedBought, progress: [...before, ...told], today: until };
  }
  expect(all).toBeGreaterThan(15);
});
