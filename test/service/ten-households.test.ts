import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { farmParts } from '../../shared/farm/farm-document.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import type { WorkPlan } from '../../shared/plan/work/planned-work.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { TEN_HOUSEHOLDS } from '../support/ten-households.js';
import { cared, dayCalled, isInTime, isMended, leftOf, taken } from '../support/ways-taken.js';

type Parts = Partial<Record<keyof typeof farmParts | 'farm', unknown>>;

/** A household as it is sent whole. */
const documentOf = (picture: FarmPicture): Parts => ({
  ...Object.fromEntries(
    Object.entries(picture).filter(([part]) => part === 'farm' || part in farmParts),
  ),
  forecast: picture.climate.forecast ?? [],
});

/** What is sent of it where an event is moved as a way says; nothing for any other way. */
function moved(picture: FarmPicture, way: string): Parts[] {
  const [, name, what, day] = /^Move “(.*): (.*?)” to (.*?)(?: or later)?: /.exec(way) ?? [];
  if (day === undefined) return [];
  const to = dayCalled(picture, day);
  const as = <Row extends { readonly name: string }>(rows: readonly Row[], date: Partial<Row>) =>
    rows.map((row) => (row.name === name ? { ...row, ...date } : row));
  return what === 'turn-out'
    ? [{ herds: as(picture.herds, { turnOutOn: to }) }]
    : [{ batches: as(picture.batches, { moveOutDate: to }) }];
}

describe('each of ten households, sent whole', () => {
  let app: TestApp;
  beforeAll(async () => {
    app = await openApp(anyDatabase());
  }, 60_000);
  afterAll(() => app.close());

  const planOf = async (document: object): Promise<WorkPlan> =>
    (await app.api.post('/api/plans/work').send(document).expect(200)).body as WorkPlan;

  it.each(TEN_HOUSEHOLDS)(
    '%s: what does not fit says why, and does when what is offered is sent',
    async (name, picture) => {
      const document = documentOf(picture);
      const plan = await planOf(document);
      const { jobs: ownJobs, ...there } = picture;
      const asked = { ...there, ownJobs };
      const planWith = async ({ people, handovers, progress, ownJobs: jobs }: typeof asked) =>
        planOf({ ...document, people, handovers, progress, jobs });
      expect(plan.jobs.length).toBeGreaterThan(15);
      for (const job of plan.jobs.filter((each) => !isInTime(each) && !each.alreadyLate)) {
        expect([name, job.name, job.why.length, job.waysToFit.length]).not.toContain(0);
        for (const way of job.waysToFit) {
          const after = await Promise.all([
            ...taken(asked, plan, job, way).map(planWith),
            ...moved(picture, way).map((parts) => planOf({ ...document, ...parts })),
          ]);
          expect([job.name, way, after.length]).not.toContain(0);
          const works = after.some((each) => isMended(plan, job, way, each));
          expect([job.name, way, works]).toEqual([job.name, way, true]);
        }
      }
      for (const gap of plan.careGaps)
        for (const way of gap.ways)
          for (const other of cared(asked, gap, way))
            expect([way, leftOf(gap, await planWith(other))]).toEqual([way, []]);
    },
    120_000,
  );
});
