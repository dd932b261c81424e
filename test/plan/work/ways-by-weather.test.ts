import { describe, expect, it } from '@jest/globals';
import type { OwnJob } from '../../../shared/farm/job.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import type { PlannedJob } from '../../../shared/plan/work/planned-work.js';
import { RAIN_MM } from '../../support/pasture-factories.js';
import { newOwnJob, newWork } from '../../support/season-factories.js';

/** A spring with more than twice the usual rain: in many years the ground never dries. */
const WET = RAIN_MM.map((mm) => 2.2 * mm);

function planned(more: Partial<OwnJob>): PlannedJob {
  const job = newOwnJob({ hours: 6, noUseAfter: '2027-05-20', priority: 'must', ...more });
  return workPlanOf(newWork({ rainMm: WET, ownJobs: [job] }), 100).jobs[0]!;
}

describe('ways to make room in a wet spring', () => {
  it('offers the driest days where the ground suits in too few years, which are enough when tried', () => {
    const fence = { conditions: { dryGround: true } };
    const { pieces, why, waysToFit } = planned(fence);
    expect(pieces).toEqual([]);
    expect(why).toMatch(
      /^Of the days from .* one suits it in about [1-8] of 10 years: do it if one does\.$/,
    );
    const [, date] =
      /^On the driest days, though the ground is wetter .*: it would be done on (.*)\.$/.exec(
        waysToFit[0]!,
      )!;
    expect(date).toBeDefined();
    expect(planned({ conditions: { noRain: true } })).toMatchObject({
      lostHours: 0,
      waysToFit: [],
    });
  });

  it('offers colder days than were asked for before it offers any weather', () => {
    const paint = { hours: 4, canBeSpread: false, dueOn: '2027-04-12', noUseAfter: '2027-04-12' };
    const { pieces, waysToFit } = planned({ ...paint, conditions: { nightMinAtLeastC: 15 } });
    expect(pieces).toEqual([]);
    expect(waysToFit[0]).toMatch(/^Though it is colder than asked for, if you can: /);
    expect(planned({ ...paint, conditions: {} }).lostHours).toBe(0);
  });

  it('leaves nothing that must be done without a way, whatever is asked of its days', () => {
    for (const hours of [2, 9, 60])
      for (const dueOn of ['2027-04-06', '2027-04-30'])
        for (const conditions of [
          { dryGround: true },
          { nightMinAtLeastC: 25 },
          { dryGround: true, dryDaysInRow: 6 },
        ]) {
          const job = planned({ hours, dueOn, noUseAfter: dueOn, conditions, canBeSpread: false });
          expect(job.pieces.length === 0 ? job.waysToFit : ['fits']).not.toEqual([]);
        }
  });

  it('offers no day of frozen ground for work of the ground, and says that it is frozen', () => {
    const soon = { hours: 3, dueOn: '2027-01-20', noUseAfter: '2027-01-31' };
    const job = newOwnJob({ ...soon, notBefore: '2027-01-05', conditions: { dryGround: true } });
    const [spread] = workPlanOf(newWork({ today: '2027-01-04', ownJobs: [job] }), 50).jobs;
    expect(spread!.pieces).toEqual([]);
    expect(spread!.why).toBe('The ground is frozen or under snow on all of its days.');
    expect(spread!.waysToFit.filter((way) => /driest|Whatever/.test(way))).toEqual([]);
  });
});
