import { describe, expect, it } from '@jest/globals';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import { FieldError } from '../../../shared/problems/field-problem.js';
import { newPaddocks, newPastureRequest } from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const paddocks = newPaddocks(8, { areaM2: 4000 });
const planOf = (keepForAutumnIds?: string[]): PasturePlan =>
  plannedPasture(
    newPastureRequest({
      paddocks,
      today: '2027-07-01',
      choices: keepForAutumnIds ? { keepForAutumnIds } : {},
    }),
  );
const usual = planOf();
const kept = planOf(['p2', 'p5']);
const shutFrom = String(kept.keyDates.stockpile!.shutFrom.value);
const massAt = (plan: PasturePlan, id: string, date: string): number =>
  plan.paddocks.find((p) => p.id === id)!.massByDay[
    (Date.parse(date) - Date.parse(plan.from)) / 86_400_000
  ]!;

describe('keeping grass for fall', () => {
  it('is advice until paddocks are chosen', () => {
    expect(usual.keyDates.stockpile).toMatchObject({ isKept: false });
    expect(
      usual.paddocks.flatMap((p) => p.closedDays.filter((c) => c.why === 'stockpile')),
    ).toEqual([]);
  });

  it('shuts the chosen paddocks from the day advised until growth ends', () => {
    expect(kept.keyDates.stockpile).toMatchObject({ isKept: true, paddockIds: ['p2', 'p5'] });
    for (const id of ['p2', 'p5']) {
      expect(kept.paddocks.find((p) => p.id === id)!.closedDays).toContainEqual({
        from: shutFrom,
        to: kept.keyDates.growthEnds,
        why: 'stockpile',
      });
    }
  });

  it('sends no herd there while they are shut, and grazes them afterward', () => {
    const inThere = kept.moves.filter(({ paddockId }) => ['p2', 'p5'].includes(paddockId));
    const during = inThere.filter((m) => shutFrom <= m.to && m.from <= kept.keyDates.growthEnds);
    expect(during).toEqual([]);
    expect(inThere.some((m) => kept.keyDates.growthEnds < m.from)).toBe(true);
  });

  it('leaves more standing there when growth ends than grazing on would', () => {
    const { growthEnds } = kept.keyDates;
    const both = (of: PasturePlan): number =>
      massAt(of, 'p2', growthEnds) + massAt(of, 'p5', growthEnds);
    expect(both(usual)).toBeLessThan(both(kept));
  });

  it('does not mow what is kept', () => {
    const mown = kept.surplus.filter((cut) => shutFrom <= cut.cutOn);
    expect(mown.map((cut) => cut.paddockId)).not.toContain('p2');
  });

  it('does not mow ground that is shut for reseeding', () => {
    const closed = [{ from: '2027-04-21', to: '2027-12-15', why: 'reseeding' as const }];
    const shut = newPaddocks(8, { areaM2: 4000 }).map((p, k) =>
      k === 0 ? { ...p, closedDays: closed } : p,
    );
    const plan = plannedPasture(newPastureRequest({ paddocks: shut }));
    expect(plan.surplus.map((cut) => cut.paddockId)).not.toContain('p1');
    expect(plan.surplus.length).toBeGreaterThan(0);
  });

  it('refuses a paddock that is not there, by name', () => {
    expect(() => planOf(['nowhere'])).toThrow(FieldError);
    expect(() => planOf(['nowhere'])).toThrow(/keepForAutumnIds/);
  });
});
