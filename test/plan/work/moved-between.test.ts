import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { movedBetween } from '../../../shared/plan/work/moved-between.js';
import { nextPlanned } from '../../../shared/plan/work/next-planned.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { newBatchWork, newWork } from '../../support/season-factories.js';

const today = '2027-04-05';
const plan = workPlanOf(newWork({ work: [newBatchWork('2027-04-28', today)] }), 1);

describe('movedBetween', () => {
  it('names the work that stands on another day, and nothing where all stays', () => {
    expect(movedBetween(plan, plan)).toEqual([]);
    const [first] = plan.jobs.filter(({ pieces }) => 0 < pieces.length);
    const from = first!.pieces[0]!.date;
    const to = addDays(from, 3);
    const pieces = first!.pieces.map((piece, k) => (k === 0 ? { ...piece, date: to } : piece));
    const jobs = plan.jobs.map((job) => (job === first ? { ...job, pieces } : job));
    expect(movedBetween(plan, { jobs })).toMatchObject([
      { key: first!.key, kind: 'moved', from, to },
    ]);
    const without = plan.jobs.map((job) => (job === first ? { ...job, pieces: [] } : job));
    expect(movedBetween(plan, { jobs: without })).toMatchObject([{ kind: 'fits-no-more', from }]);
    expect(movedBetween({ jobs: without }, plan)).toMatchObject([{ kind: 'fits-now', to: from }]);
  });
});

describe('nextPlanned', () => {
  it('is the earliest piece from a day on', () => {
    const days = plan.jobs.flatMap(({ pieces }) => pieces.map(({ date }) => date)).sort();
    expect(nextPlanned(plan, today)!.on).toBe(days[0]);
    const later = addDays(days[0]!, 1);
    expect(nextPlanned(plan, later)!.on).toBe(days.find((day) => later <= day));
    expect(nextPlanned({ jobs: [] }, today)).toBeUndefined();
  });
});
