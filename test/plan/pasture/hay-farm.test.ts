import { describe, expect, it } from '@jest/globals';
import { daysBetween } from '../../../shared/calendar/plain-date.js';
import { startedHayFarm } from '../../support/hay-farm.js';
import { planPasture } from '../../../shared/plan/pasture/pasture-plan.js';
import { tables } from '../../support/factories.js';

const plan = planPasture(startedHayFarm(), tables);

// As a neighbor does it: twelve acres or so in one or two dry spells of June.
describe('eight cows on twenty acres that make hay', () => {
  it('have their first cutting in two goes by the middle of June, several paddocks each', () => {
    const first = plan.surplus.filter(({ cutOn }) => cutOn < '2027-07-20');
    const goes = [...new Set(first.map(({ mowFrom }) => mowFrom))].sort();
    expect(first.length).toBeGreaterThanOrEqual(5);
    expect(goes).toHaveLength(2);
    expect(daysBetween(goes[0]!, goes[1]!)).toBeLessThanOrEqual(7);
    expect(goes[1]! <= '2027-06-20').toBe(true);
  });

  it('graze a round of short stays meanwhile, none of them twice as long as the next is ready', () => {
    const stays = plan.moves.filter(({ from }) => from < '2027-07-15');
    expect(new Set(stays.map(({ paddockId }) => paddockId)).size).toBeGreaterThanOrEqual(4);
    for (const { days } of stays) expect(days).toBeLessThanOrEqual(9);
    // Each paddock is of some use before the summer is half over.
    const used = new Set([...stays, ...plan.surplus].map(({ paddockId }) => paddockId));
    expect(used.size).toBe(10);
  });
});
