import { describe, expect, it } from '@jest/globals';
import type { CattleGroup } from '../../../shared/farm/herd.js';
import {
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const saidOf = (...groups: CattleGroup[]): string | undefined =>
  plannedPasture(
    newPastureRequest({ paddocks: newPaddocks(8), herds: [newHerd({ groups })] }),
  ).issues.find(({ code }) => code === 'calving-unknown')?.text;

describe('cows of which no calving is told', () => {
  it('are said to be fed for milk all year, without what their calves eat', () => {
    const said = saidOf(newGroup({ classId: 'cow-calf', head: 3 }));
    expect(said).toMatch(
      /^When does .* calve\? .*3 cows with calves are fed as for their best milk/,
    );
    expect(said).toContain('5.4 kg');
    expect(said).toContain('“Calving due, if known”');
  });

  it('are said to stay dry where they are dry now', () => {
    const said = saidOf(newGroup({ classId: 'heifer', head: 1 }));
    expect(said).toContain('one cow or heifer stays dry all year');
    expect(said).not.toContain('best milk');
  });

  it.each([
    newGroup({ classId: 'cow-calf', calvesOn: '2027-04-01' }),
    newGroup({ classId: 'dry-cow', bredOn: '2026-08-01' }),
    newGroup({ classId: 'stocker' }),
    newGroup({ classId: 'bull' }),
  ])('is not said of %j', (group) => {
    expect(saidOf(group)).toBeUndefined();
  });
});
