import { describe, expect, it } from '@jest/globals';
import type { Person } from '../../../shared/farm/farm.js';
import { planContext } from '../../../shared/plan/plan-context.js';
import { stopCurve } from '../../../shared/plan/cost/curve.js';
import { newRequest } from '../../support/factories.js';
import { plannedBatch } from '../../support/pictures.js';

/** At work on weekdays: the birds go on the Sunday before the Tuesday of their age. */
const WORKING: readonly Person[] = [
  { id: 'a', name: 'A', away: [], hoursByWeekday: [2, 2, 2, 2, 2, 9, 9] },
  { id: 'b', name: 'B', away: [], hoursByWeekday: [0, 0, 0, 0, 0, 8, 8] },
];

describe('what all birds weigh by the day on which they are processed', () => {
  it('is what the plan says on its own day, where that comes before the day of their age', () => {
    const request = newRequest({ batch: { leaveAgeDays: 56, wantedBirds: 60 }, people: WORKING });
    const plan = plannedBatch(request);
    const context = planContext(request);
    const { dressedKg, plannedDay } = stopCurve(context, plan, 0);
    expect(plannedDay).toBeLessThan(context.life.days - 1);
    expect(dressedKg[plannedDay]).toBeCloseTo(plan.leaving!.dressedAll.value, 2); // The plan rounds.
  });
});
