import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { moveHeads } from '../../../shared/plan/pasture/move-quantities.js';
import { rowNotes, seasonRows } from '../../../shared/plan/pasture/season-rows.js';
import { contextAt, MORE_PLACES, PLACES } from '../../support/five-farms.js';
import { newPaddocks } from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const farm = fc.record({
  place: fc.constantFrom(...PLACES, ...MORE_PLACES),
  head: fc.integer({ min: 1, max: 14 }),
  count: fc.integer({ min: 1, max: 12 }),
  areaM2: fc.integer({ min: 2000, max: 9000 }),
  makesHay: fc.boolean(),
  rainShares: fc.array(fc.double({ min: 0, max: 1.5, noNaN: true }), {
    minLength: 12,
    maxLength: 12,
  }),
});

const LOW_NOTES = ['first quick pass', 'ready by its leaves', 'nothing grows now', 'last round'];
const WHY_LOW = /quick pass|ready by its leaves|nothing grows|last round/;
const WHY_EARLY = /nothing grows|last round/;

describe('a move into grass below its ready height, or back before its rest', () => {
  it('says why on its row and among its reasons, on any farm', () => {
    let low = 0;
    fc.assert(
      fc.property(farm, ({ place, head, count, areaM2, makesHay, rainShares }) => {
        const paddocks = newPaddocks(count, { areaM2, forageId: place.forageId });
        const choices = { version: 1, makesHay, rainShareByMonth: rainShares } as const;
        const plan = plannedPasture(contextAt(place, head, areaM2, choices, paddocks));
        for (const row of seasonRows(plan)) {
          if (row.kind !== 'graze' || row.move.start === 'out-already') continue;
          const { move } = row;
          const { turnInKgPerHa } = plan.paddocks.find(({ id }) => id === move.paddockId)!;
          const isLow = move.massBefore < turnInKgPerHa - 0.1; // one decimal is told
          const isEarly = move.restDays !== undefined && move.restDays < move.restAskedDays;
          if (!isLow && !isEarly) continue;
          low++;
          expect(LOW_NOTES).toContain(rowNotes(row)[0]);
          const { inputs } = moveHeads(plan, move).date;
          const why = inputs.find(({ label }) => label === 'Why this one')!.value;
          expect(why).toMatch(isEarly ? WHY_EARLY : WHY_LOW);
        }
      }),
      { numRuns: 60 },
    );
    expect(low).toBeGreaterThan(60);
  }, 60_000);
});
