import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { FactOf } from '../../../shared/farm/told-fact.js';
import { planBatch } from '../../../shared/plan/batch-plan.js';
import { changedByFact } from '../../../shared/plan/record/changed-by-fact.js';
import { newBatch, newBrooder, newRequest, tables } from '../../support/factories.js';
import { newPicture } from '../../support/pictures.js';

const CAME = '2027-05-05';
const { farm, climate } = newRequest({});
const batch = {
  ...newBatch({ brooderId: 'brooder', orderedBirds: 60 }),
  id: 'c',
  arrivalDate: CAME,
};

/** What is said of 30 birds that weigh so much of what is planned for their age. */
function said(ofPlan: number, ageDays: number): string[] {
  // They are a day old when they come.
  const today = addDays(CAME, ageDays - 1);
  const picture = newPicture({
    ...{ farm, climate, today, facilities: [newBrooder()], batches: [batch] },
  });
  const row = (kg: number) => ({
    ...picture,
    weighings: [{ id: 'w', batchId: 'c', date: today, birds: 30, averageKg: kg }],
  });
  const plannedKg = planBatch(row(1), tables, 'c').birds.weighed!.rows[0]!.plannedKg!;
  const averageKg = Math.round(1000 * ofPlan * plannedKg) / 1000;
  const fact: FactOf<'weighed'> = {
    ...{ id: 'w', key: 'w', kind: 'weighed', about: 'c', on: today },
    ...{ toldAt: `${today}T08:00:00.000Z`, details: { birds: 30, averageKg } },
  };
  return changedByFact(row(averageKg), tables, { fact, facts: [fact] })
    .changes.filter(({ id }) => id === 'weighed')
    .map(({ words }) => words);
}

describe('weights that were told', () => {
  // Birds stray from their curve by 19 % at 8 days and 5 % at 28 (CHICK_WEIGHTS_1990), flocks by 15 %
  // in pace: one standard deviation of both is 24 % and 16 %.
  it('are within the usual a fifth below the plan at 8 days, and not at 28', () => {
    expect(said(0.81, 8)[0]).toContain('19 % under');
    expect(said(0.81, 8)[0]).toContain('within the usual, flocks of that age lie up to 24 %');
    expect(said(0.81, 28)[0]).toContain('less than is usual, up to 16 %');
    expect(said(0.81, 28)[0]).toContain('whether all of them eat at once');
  });

  it('ask for the scale where they are heavy, and say when they are as planned', () => {
    expect(said(1.2, 28)[0]).toContain('See that the scale is set to the right unit');
    expect(said(1, 28)[0]).toContain('the same as the');
    expect(said(1, 28)[0]).toContain('within the usual');
  });

  it('say nothing of birds too young for it, or so far off that the plan leaves them out', () => {
    expect(said(0.81, 5)).toEqual([]);
    expect(said(0.2, 28)).toEqual([]);
  });
});
