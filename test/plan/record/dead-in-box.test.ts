import { describe, expect, it } from '@jest/globals';
import type { FactOf } from '../../../shared/farm/told-fact.js';
import type { Batch } from '../../../shared/farm/batch.js';
import { changedByFact } from '../../../shared/plan/record/changed-by-fact.js';
import { newBatch, newBrooder, newRequest, tables } from '../../support/factories.js';
import { newPicture } from '../../support/pictures.js';

const today = '2027-05-05';
const { farm, climate } = newRequest({});

/** What is said when a box of 100 is told, so many of them dead. */
function said(dead: number, more: Partial<Batch> = {}, id = 'dead-in-box', now = today): string[] {
  const batch = { ...newBatch({ brooderId: 'brooder', orderedBirds: 100, ...more }), id: 'c' };
  const picture = newPicture({
    ...{ farm, climate, today: now, facilities: [newBrooder()] },
    batches: [{ ...batch, arrivalDate: today }],
    headChanges: [{ id: 'came', batchId: 'c', date: today, change: 'arrived', birds: 100 - dead }],
  });
  const fact: FactOf<'arrived'> = {
    ...{ id: 'came', key: 'came', kind: 'arrived', about: 'c', on: today },
    ...{ toldAt: `${today}T08:00:00.000Z`, details: { birds: 100, dead } },
  };
  return changedByFact(picture, tables, { fact, facts: [fact] })
    .changes.filter((each) => each.id === id)
    .map(({ words }) => words);
}

describe('birds that were dead in the box', () => {
  it('are to be told to the hatchery first, and set beside the loss of the strain', () => {
    // 2 in 100 of fast meat birds in the first week: the target of the trade in seeds/losses.json.
    const [first, usual] = said(7);
    expect(first).toMatch(/^Tell the hatchery today, with photos/);
    expect(usual).toContain('7 dead are more than usual: of 100, about 2 are lost');
    expect(said(2)[1]).toBe(
      '2 dead are no more than usual: of 100, about 2 are lost in the whole first week.',
    );
    expect(said(7, { firstWeekLossPercent: 8 })[1]).toContain('no more than usual');
  });

  it('told the day after, have nothing of what was for the day of the box', () => {
    const late = said(7, {}, 'dead-in-box', '2027-05-06').join(' ');
    expect(late).toContain('Tell the hatchery now if nobody has');
    expect(late).toContain('7 dead are more than usual');
    expect(late).not.toContain('today');
    expect(late).not.toContain('2 to 3 hours');
  });

  it('are so many short of those wanted, where they are', () => {
    expect(said(7, { wantedBirds: 95 }, 'birds')[0]).toMatch(
      /Birds at the end: \d+ instead of \d+\. \d+ short of the 95 wanted: what the seller makes good, or another batch\.$/,
    );
    expect(said(7, { wantedBirds: 60 }, 'birds')[0]).toMatch(/instead of \d+\.$/);
  });

  it('say nothing where none were, nor of own eggs', () => {
    expect(said(0)).toEqual([]);
    const own = { origin: 'hen', hatchToArrivalDays: 0, sex: 'straight-run' } as const;
    expect(said(7, own)).toEqual([]);
  });
});
