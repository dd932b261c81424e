import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../shared/calendar/plain-date.js';
import { asMeant, withLeftAgain, withoutLeft } from '../../shared/farm/cattle-gone.js';
import type { CattleGroup } from '../../shared/farm/herd.js';

const TODAY = '2027-06-15';
const day = fc.integer({ min: -60, max: 60 }).map((days) => addDays(TODAY, days));
const some = (days: typeof day) => fc.option(days, { nil: undefined });
const herds = fc.array(
  fc
    .record({
      classId: fc.constantFrom('dry-cow', 'stocker'),
      head: fc.integer({ min: 1, max: 9 }),
      arrivesOn: some(day),
      calvesOn: some(day),
    })
    .map((group) => JSON.parse(JSON.stringify(group)) as CattleGroup),
  { minLength: 1, maxLength: 4 },
);
const leavings = fc.array(
  fc.record({
    classId: fc.constantFrom('dry-cow', 'stocker'),
    head: fc.integer({ min: 1, max: 5 }),
    on: day,
  }),
  { maxLength: 6 },
);
const headOf = (groups: readonly CattleGroup[]): number =>
  groups.reduce((sum, { head }) => sum + head, 0);

describe('cattle that left a herd', () => {
  it('are neither more nor fewer than were there, however often some leave and come back', () => {
    fc.assert(
      fc.property(herds, leavings, fc.array(fc.nat(5), { maxLength: 6 }), (start, told, undone) => {
        let groups: readonly CattleGroup[] = start;
        const facts = told.map((each, k) => ({ ...each, factId: `fact-${k}` }));
        const held = new Set<(typeof facts)[number]>();
        for (const fact of facts) {
          const left = withoutLeft(groups, fact);
          if (0 < left.short) continue;
          groups = left.groups;
          held.add(fact);
        }
        expect(headOf(groups)).toBe(headOf(start));
        for (const k of undone) {
          const fact = facts[k];
          if (!fact || !held.delete(fact)) continue;
          groups = withLeftAgain(groups, fact);
        }
        const gone = headOf(groups.filter(({ leftAs }) => leftAs !== undefined));
        expect(gone).toBe(headOf([...held] as never));
        expect(headOf(groups)).toBe(headOf(start));
        // All told back, the herd is what it was.
        for (const fact of held) groups = withLeftAgain(groups, fact);
        expect(groups).toEqual(start);
      }),
    );
  });

  it('are meant to come in the year after as many as came', () => {
    const start: CattleGroup[] = [{ classId: 'stocker', head: 6, leavesOn: '2027-10-01' }];
    const one = withoutLeft(start, { factId: 'a', classId: 'stocker', head: 1, on: TODAY });
    const all = withoutLeft(one.groups, { factId: 'b', classId: 'stocker', head: 5, on: TODAY });
    expect(all.groups.map(({ head, leavesOn }) => [head, leavesOn])).toEqual([
      [5, TODAY],
      [1, TODAY],
    ]);
    expect(asMeant(all.groups)).toEqual(start);
  });

  it('are there again when somebody has struck them out of the herd since', () => {
    const start: CattleGroup[] = [{ classId: 'dry-cow', head: 4 }];
    const fact = { factId: 'a', classId: 'dry-cow', head: 1, on: TODAY };
    const [rest] = withoutLeft(start, fact).groups;
    expect(withLeftAgain([rest!], fact)).toEqual(start);
    expect(withLeftAgain([{ classId: 'bull', head: 1 }], fact)).toEqual([
      { classId: 'bull', head: 1 },
      { classId: 'dry-cow', head: 1 },
    ]);
  });
});
