import { describe, expect, it } from '@jest/globals';
import { calvingDue } from '../../../shared/plan/today/calving-due.js';
import { tables } from '../../support/factories.js';
import { newHerd } from '../../support/pasture-factories.js';

describe('cows of which no date of calving is told', () => {
  const asked = (...groups: object[]) =>
    calvingDue({ herds: [newHerd({ groups: groups as never })], cows: [] }, tables).map(
      ({ words }) => words,
    );

  it('are asked about once for the herd, until a date of calving or of service is given', () => {
    const dry = { head: 3, classId: 'dry-cow' };
    expect(asked(dry, { head: 1, classId: 'heifer' })).toEqual(['when do 4 cows calve?']);
    expect(asked({ ...dry, calvesOn: '2027-04-20' })).toEqual([]);
    expect(asked({ ...dry, bredOn: '2026-07-12' })).toEqual([]);
  });

  it('are asked about though others of the herd, whose day was told, are not in calf', () => {
    const groups = [
      { head: 2, classId: 'dry-cow' },
      { head: 3, classId: 'heifer', calvesOn: '2027-04-20' },
    ];
    const calvings = [{ herdId: 'h1', date: '2027-05-01', calves: 0, notInCalf: 3 }];
    const herds = [newHerd({ groups: groups as never })];
    const picture = { herds, cows: [], calvings };
    expect(calvingDue(picture, tables).map(({ words }) => words)).toEqual([
      'when do 2 cows calve?',
    ]);
  });

  it('are not cattle that never calve', () => {
    expect(asked({ head: 9, classId: 'stocker' }, { head: 1, classId: 'bull' })).toEqual([]);
  });
});
