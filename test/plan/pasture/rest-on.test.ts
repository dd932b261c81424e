import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import type { Mowing } from '../../../shared/farm/mowing.js';
import { restOn } from '../../../shared/plan/pasture/rest-on.js';
import { newPaddocks, newPastureRequest } from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const paddocks = newPaddocks(6, { areaM2: 2000 });
const plan = plannedPasture(newPastureRequest({ paddocks }));

describe('restOn', () => {
  it('is what the plan says of every stay that follows another, on the day they go in', () => {
    let compared = 0;
    for (const move of plan.moves.filter(({ restDays }) => restDays !== undefined)) {
      const paddock = paddocks.find(({ id }) => id === move.paddockId)!;
      const morning = daysBetween(plan.from, move.from);
      expect(restOn(plan, paddock, morning)).toEqual({ is: 'grazed' });
      const evening = restOn(plan, paddock, morning - 1);
      if (evening?.is !== 'resting') continue;
      expect(evening.of.value + 1).toBe(move.restDays);
      compared++;
    }
    expect(compared).toBeGreaterThan(5);
  });

  it('counts from a cut, and from what was told before; without either it is not known', () => {
    const [first] = paddocks;
    const before = daysBetween(plan.from, plan.moves[0]!.from) - 1;
    expect(restOn(plan, first!, before)).toBeUndefined();
    const told = { ...first!, lastGrazedOn: addDays(plan.from, before - 20) };
    const rest = restOn(plan, told, before);
    expect(rest?.is === 'resting' && rest.of.value).toBe(19);
    for (const { paddockId, cutOn } of plan.surplus) {
      const own = restOn(plan, { id: paddockId, name: 'x' }, daysBetween(plan.from, cutOn) + 4);
      expect(own?.is === 'resting' && own.of.value).toBe(4);
    }
  });

  it('counts from a mowing that was told before the plan begins, topped or baled', () => {
    const [first] = paddocks;
    const told = { id: 'm', paddockId: first!.id, date: addDays(plan.from, -11) };
    const since = (lastGrazedOn: string | undefined, mowings: readonly Mowing[]) => {
      const rest = restOn(
        plan,
        { ...first!, ...(lastGrazedOn === undefined ? {} : { lastGrazedOn }) },
        0,
        mowings,
      );
      return rest?.is === 'resting' ? rest.of.value : undefined;
    };
    expect(since(undefined, [])).toBeUndefined();
    expect(since(undefined, [told])).toBe(11);
    expect(since(addDays(plan.from, -40), [{ ...told, isLeftLying: true }])).toBe(11);
    expect(since(addDays(plan.from, -5), [told])).toBe(4);
    expect(since(undefined, [{ ...told, paddockId: paddocks[1]!.id }])).toBeUndefined();
  });
});
