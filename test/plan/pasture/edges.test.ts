import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { FORMULAS } from '../../../shared/formulas/formulas.js';
import { checkPasture } from '../../../shared/plan/pasture/check-pasture.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import { FieldError } from '../../../shared/problems/field-problem.js';
import { tables } from '../../support/factories.js';
import {
  newGroup,
  newHerd,
  newPaddock,
  newPaddocks,
  newPastureRequest,
  newReading,
} from '../../support/pasture-factories.js';
import { notFiniteIn } from '../not-finite.js';
import { plannedPasture } from '../../support/pictures.js';

type More = Parameters<typeof newPastureRequest>[0];
/** Until the middle of summer. */
const planOf = ({ choices, ...more }: NonNullable<More>): PasturePlan =>
  plannedPasture(newPastureRequest({ ...more, choices: { to: '2027-07-15', ...choices } }));
const isRefused = (more: More): boolean => {
  try {
    checkPasture(newPastureRequest(more));
    return false;
  } catch (error) {
    return error instanceof FieldError;
  }
};

describe('checkPasture', () => {
  it('says what is allowed when the last day does not fit, not "at most undefined"', () => {
    expect(() => checkPasture(newPastureRequest({ choices: { to: '2027-04-01' } }))).not.toThrow(
      'undefined',
    );
  });

  it('refuses a stay of two days and a half, which makes the size of a paddock NaN', () => {
    expect(isRefused({ herds: [newHerd({ longestStayDays: 2.5 })] })).toBe(true);
  });

  it('refuses half a cow', () => {
    expect(isRefused({ herds: [newHerd({ groups: [newGroup({ head: 2.5 })] })] })).toBe(true);
  });

  it('refuses a last grazing in the future, as it does a reading', () => {
    expect(isRefused({ paddocks: [newPaddock({ lastGrazedOn: '2027-09-01' })] })).toBe(true);
  });
});

describe('planPasture', () => {
  it('refuses a farm without paddocks and says what to do', () => {
    expect(() => planOf({ paddocks: [] })).toThrow('Add at least one paddock');
  });

  it('says how far a reading was off after one of bare ground, 0 cm, without NaN', () => {
    const readings = [
      newReading({ id: 'a', date: '2027-04-10', heightCm: 0 }),
      newReading({ id: 'b', date: '2027-04-20', heightCm: 0 }),
    ];
    expect(notFiniteIn(planOf({ readings }))).toEqual([]);
  });

  it('grazes paddocks that were last grazed ninety years ago', () => {
    // Days are kept in 16 bits: −35 000 becomes 30 000, a rest that never ends.
    const plan = planOf({ paddocks: newPaddocks(6, { lastGrazedOn: '1930-05-01' }) });
    expect(plan.moves.length).toBeGreaterThan(0);
  });

  it('starts from a reading taken the week before the first of March', () => {
    // 12 cm are read, 5 cm are taken, and the 12 are named as the input of the 5.
    const readings = [newReading({ date: '2027-02-24', heightCm: 12 })];
    const [read] = planOf({ today: '2027-02-25', readings }).paddocks;
    expect(read!.height.value).toBeGreaterThan(11);
  });

  it('takes the weight of cattle as that of the first day of the plan', () => {
    // 300 kg on 1 August, gaining 1 kg a day, are 453 kg then: the gain since 1 March is added.
    const group = newGroup({ classId: 'stocker', head: 1, weightKg: 300, gainKgPerDay: 1 });
    const plan = planOf({
      today: '2027-08-01',
      herds: [newHerd({ groups: [group] })],
      choices: { to: '2027-10-15' },
    });
    expect(plan.moves[0]!.liveKg).toBeLessThan(300 + 76);
  });

  const land = newPaddocks(12, { areaM2: 3300, forageId: 'mixed' });
  it('does not stop a herd that leaves after three weeks for the need of a season', () => {
    // The need of the busiest day is counted for every day of the plan.
    const group = newGroup({ head: 20, leavesOn: addDays('2027-04-21', 21) });
    const plan = plannedPasture(
      newPastureRequest({ paddocks: land, herds: [newHerd({ groups: [group] })] }),
    );
    expect(plan.issues.map((each) => each.code)).not.toContain('more-than-grows');
  });

  it('stops a herd that needs more than grows, not only one that needs twice as much', () => {
    const plan = plannedPasture(
      newPastureRequest({
        paddocks: land,
        herds: [newHerd({ groups: [newGroup({ head: 13 })] })],
      }),
    );
    expect(plan.issues.map((each) => each.level)).toContain('stop');
  });
});

describe('FORMULAS', () => {
  it('name sources that are in the list', () => {
    const missing = [...FORMULAS.values()].flatMap(({ id, sources }) =>
      sources.filter((source) => !(source in tables.sources)).map((source) => `${id}: ${source}`),
    );
    expect(missing).toEqual([]);
  });
});
