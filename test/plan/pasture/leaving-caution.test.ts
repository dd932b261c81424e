import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { CattleGroup } from '../../../shared/farm/herd.js';
import { tables } from '../../support/factories.js';
import { newGroup, newHerd, newPastureRequest } from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const request = newPastureRequest({});
const cautionsOf = (more: Partial<CattleGroup>) =>
  plannedPasture({ ...request, herds: [newHerd({ groups: [newGroup(more)] })] }).cautions;

describe('cattle that are to be sold or slaughtered', () => {
  it('carry the caution of withdrawal days, and nobody else does', () => {
    const leavesOn = addDays(request.today, 90);
    expect(cautionsOf({ leavesOn })).toContain('cattle-leaving');
    expect(cautionsOf({})).not.toContain('cattle-leaving');
    // Those that are told to be gone already need none.
    expect(cautionsOf({ leavesOn, leftAs: 'fact' })).not.toContain('cattle-leaving');
    expect(tables.cautions['cattle-leaving']!.text).toContain('withdrawal days on the label');
  });
});
