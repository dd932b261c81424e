import { describe, expect, it } from '@jest/globals';
import { pastureContext } from '../../../shared/plan/pasture/pasture-context.js';
import { lowEntries } from '../../../shared/plan/pasture/low-entries.js';
import { chooseMoves } from '../../../shared/plan/pasture/surplus.js';
import type { PlanIssue } from '../../../shared/problems/plan-issue.js';
import {
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';

/** What is said, and how many moves go in below the ready height. */
function saidOf(request: Partial<Parameters<typeof newPastureRequest>[0]>): {
  issues: PlanIssue[];
  low: number;
  moves: number;
} {
  const context = pastureContext(newPastureRequest(request));
  const chosen = chooseMoves(context);
  const { stays } = chosen.books;
  const low = stays.filter(
    ({ paddock, massBefore }) => massBefore < chosen.problem.swards[paddock]!.turnInKgPerHa,
  );
  return { issues: lowEntries(context, chosen), low: low.length, moves: stays.length };
}

describe('moves into grass below its full height', () => {
  const herds = [newHerd({ groups: [newGroup({ head: 6 })] })];
  const rainShareByMonth = Array.from({ length: 12 }, (_, m) => (5 <= m && m <= 8 ? 0.4 : 1));

  it('are counted, and each kind says why it goes in and how tall it stands', () => {
    const { issues, low, moves } = saidOf({ herds, choices: { rainShareByMonth } });
    expect(issues).toHaveLength(1);
    const { text } = issues[0]!;
    expect(text).toContain(`${low} of ${moves} moves`);
    expect(text).toMatch(
      /old leaves would die before it is taller \([^)]* at \d\d cm(?: or more)?\)/,
    );
    expect(text).toMatch(/shut less for hay|keep fewer head/);
    const counts = [...text.matchAll(/(?:: |; )(\d+) /g)].map(([, n]) => Number(n));
    expect(counts.reduce((a, b) => a + b, 0)).toBe(low);
  });

  it('say so where none of them is at the least height that is advised', () => {
    const { issues } = saidOf({ paddocks: newPaddocks(1, { areaM2: 30_000 }) });
    expect(issues[0]!.text).toContain('below its best height, none of them at the least height');
  });

  it('are not spoken of where few do', () => {
    const { issues, low, moves } = saidOf({
      paddocks: newPaddocks(12),
      choices: { makesHay: false },
    });
    expect(low).toBeLessThanOrEqual(moves / 10);
    expect(issues).toEqual([]);
  });
});
