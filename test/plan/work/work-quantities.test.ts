import { describe, expect, it } from '@jest/globals';
import { explain } from '../../../shared/formulas/explanation.js';
import { daysBetween } from '../../../shared/calendar/plain-date.js';
import { fittedDays } from '../../../shared/plan/work/fitted-days.js';
import { gardenDates } from '../../../shared/plan/year/garden-dates.js';
import { yearSpan } from '../../../shared/plan/year/year-span.js';
import { workOutlookOf } from '../../../shared/plan/work/work-outlook.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import {
  frostFree,
  frostLow,
  jobQuantities,
  outlookQuantities,
  weekQuantities,
} from '../../../shared/plan/work/work-quantities.js';
import { tables } from '../../support/factories.js';
import { newBatchWork, newWork } from '../../support/season-factories.js';

describe('the numbers of a season', () => {
  const request = newWork({ work: [newBatchWork('2027-05-05', '2027-04-05')] });
  const plan = workPlanOf(request, 50);
  const outlook = workOutlookOf({ ...request, history: [] }, 50);
  const all = [
    ...plan.jobs.flatMap((job) => Object.values(jobQuantities(job, plan.basis))),
    ...plan.weeks.flatMap((week) => Object.values(weekQuantities(week, plan.basis))),
    ...outlook.frost.map((frost) => frostLow(outlook, frost)),
    ...outlook.frost.flatMap((frost) => frostFree(outlook, frost, request.farm) ?? []),
    ...gardenDates(request, tables, yearSpan(request.today)),
    ...outlook.jobs.flatMap((job) => Object.values(outlookQuantities(outlook, job))),
  ];

  it('open to a formula, inputs and sources that are listed', () => {
    expect(all.length).toBeGreaterThan(100);
    for (const each of all) {
      const opened = explain(each, tables, request.farm);
      expect(opened.words.length).toBeGreaterThan(20);
      expect(opened.sources.length).toBeGreaterThan(0);
    }
  });

  it('name frosts as the weather service does, and by the table', () => {
    const lows = outlook.frost.map((frost) => frostLow(outlook, frost));
    expect(lows.map(({ label, value }) => [label, value])).toEqual([
      ['Frost', 2.2], // 36 °F
      ['Freeze', 0], // 32 °F
      ['Hard freeze', -2.2], // 28 °F
    ]);
    for (const { mark, sources } of lows)
      expect([mark, ...sources]).toEqual(['computed', 'NWS_FROST']);
    const changed = structuredClone(tables);
    Object.assign(changed.work.frost.lows[0]!, { name: 'Cold', atOrBelowC: 4 });
    const [other] = workOutlookOf({ ...request, tables: changed, history: [] }, 50).frost;
    expect([other!.name, other!.thresholdC]).toEqual(['Cold', 4]);
  });

  it('are those of the plan', () => {
    const job = plan.jobs[3]!;
    expect(jobQuantities(job, plan.basis).spareDays.value).toBe(job.spareDays);
    expect(jobQuantities(job, plan.basis).latest.value).toBe(job.latest);
  });

  it('spare as many days on the card of a task as in the work: from where it is planned', () => {
    const days = fittedDays(plan);
    const placed = plan.jobs.filter(({ pieces, alreadyLate }) => 0 < pieces.length && !alreadyLate);
    expect(placed.length).toBeGreaterThan(10);
    for (const { key, pieces, latest, spareDays } of placed) {
      expect(days.get(key)!.spareDays).toBe(spareDays);
      expect(days.get(key)!.spareDays).toBe(daysBetween(pieces.at(-1)!.date, latest));
    }
  });
});
