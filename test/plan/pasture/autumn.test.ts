import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import { climateFromMonthlyMeans } from '../../../shared/weather/climate.js';
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

  // Tall fescue grows into the winter of middle Tennessee: the last day of a plan is not the end of it.
  it('goes by the first fall frost where grass still grows on the last day of the plan', () => {
    const climate = climateFromMonthlyMeans(
      [-2, -0.4, 3.6, 8.4, 13.1, 17.5, 20.1, 19.3, 14.8, 8.7, 3.3, -0.6],
      [8.7, 11.5, 16.8, 22, 26.2, 29.8, 32.1, 31.5, 28, 22.6, 16.2, 10.6],
      6,
      [120, 115, 127, 134, 123, 109, 103, 95, 88, 96, 118, 129],
    );
    const mild = (to?: string): PasturePlan['keyDates'] =>
      plannedPasture(
        newPastureRequest({
          ...{ farm: { latitudeDeg: 35.47, firstFrost: '10-25' }, climate, today: '2027-03-01' },
          paddocks: newPaddocks(4, { forageId: 'tall-fescue' }),
          choices: to ? { to, keepForAutumnIds: ['p1'] } : { keepForAutumnIds: ['p1'] },
        }),
      ).keyDates;
    const { growthEnds, stockpile } = mild();
    expect(growthEnds).toBe('2027-12-15');
    expect(stockpile!.shutFrom.value).toBe(addDays('2027-10-25', -75));
    expect(mild('2027-06-30').stockpile).toBeUndefined();
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
