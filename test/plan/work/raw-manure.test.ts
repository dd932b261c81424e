import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import { jobsOfSet } from '../../../shared/plan/work/job-sets.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { formatDate } from '../../../shared/units/dates.js';
import { tables } from '../../support/factories.js';
import { newOwnJob, newWork } from '../../support/season-factories.js';

const today = '2027-02-01';
const beds = tables.jobSets.find(({ id }) => id === 'garden-beds')!;
const manure = jobsOfSet(beds, { anchorOn: '2027-05-01', count: 1, today }).find(
  ({ isRawManure }) => isRawManure,
)!;

/** Nobody is there until after it is due. */
function planWith(job: typeof manure) {
  const person = { id: 'a', name: 'Ann', away: [{ from: today, to: addDays(manure.dueOn, 5) }] };
  const own = newOwnJob({ ...job, conditions: {} });
  return workPlanOf(newWork({ today, people: [person], ownJobs: [own] }), 20).jobs.find(
    ({ key }) => key === `own/${manure.id}`,
  )!;
}

describe('raw manure that is spread late', () => {
  const { noUseAfter: _last, ...open } = manure;

  it('is in time for what is picked as long after it as the rule asks', () => {
    const late = planWith(open);
    const on = late.pieces.at(-1)!.date;
    expect(late.lateDays).toBe(daysBetween(manure.dueOn, on));
    // 7 CFR 205.203 (c) (1): 120 days, and 90 where what is eaten does not touch the soil.
    const [touching, off] = [120, 90].map((days) =>
      formatDate(addDays(on, days), { units: newWork().farm.units, today }),
    );
    expect(late.waysToFit.join(' ')).toContain(
      `picked from ${touching} on, or off the soil from ${off}`,
    );
    expect(late.waysToFit.join(' ')).toContain('compost instead');
    const later = planWith({ ...open, dueOn: addDays(manure.dueOn, late.lateDays) });
    expect(later).toMatchObject({ lateDays: 0, lostHours: 0 });
    expect(later.pieces.at(-1)!.date).toBe(on);
  });

  it('that has no day before its last has the same way out', () => {
    const lost = planWith({ ...manure, noUseAfter: addDays(manure.dueOn, 2) });
    expect(lost.pieces).toEqual([]);
    expect(lost.waysToFit.join(' ')).toContain('Grow there what is picked from');
    expect(planWith(open).pieces).not.toEqual([]);
  });
});
