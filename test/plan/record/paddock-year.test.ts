import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { ToldFact } from '../../../shared/farm/told-fact.js';
import { paddocksByYear, paddockYears } from '../../../shared/plan/record/paddock-year.js';
import { tables } from '../../support/factories.js';
import { newGroup, newHerd, newPaddocks, toldMove } from '../../support/pasture-factories.js';

/** Ten cows of 1,200 lb, each 31.2 lb of dry matter a day by the rule of 26 lb for 1,000 lb. */
const LB = 0.45359237;
const herds = [newHerd({ groups: [newGroup({ head: 10, weightKg: 1200 * LB })] })];
const paddocks = newPaddocks(3, { areaM2: 40_468.564 / 10 }); // an acre
const mown = (bales: number, on: string): ToldFact => ({
  ...{ id: `m-${on}`, key: `m-${on}`, kind: 'paddock-mown', about: 'p3', on },
  ...{ details: { bales }, toldAt: `${on}T20:00:00.000Z` },
});

const yearOf = (facts: readonly ToldFact[], year = 2027, today = '2027-12-31') =>
  paddockYears({ today, herds, paddocks, pastureChoices: {} }, tables, { year, facts });

describe('what a paddock carried', () => {
  it('is head times days on it, and 26 lb a day for 1,000 lb of cattle', () => {
    const facts = [
      toldMove('h1', 'p1', '2027-05-01'),
      toldMove('h1', 'p2', '2027-05-04'),
      toldMove('h1', 'p1', '2027-05-05'),
      toldMove('h1', undefined, '2027-05-10'),
    ];
    const [first, second, none] = yearOf(facts);
    expect(first).toMatchObject({ paddockId: 'p1', stays: 2, days: 3 + 5, animalDays: 80 });
    expect(first!.grazedKg / LB).toBeCloseTo(80 * 31.2, 0);
    expect(first!.animalDaysPerHa).toBeCloseTo(80 / 0.404_685_64, 3);
    expect(second).toMatchObject({ paddockId: 'p2', stays: 1, days: 1, animalDays: 10 });
    expect(none).toMatchObject({ paddockId: 'p3', stays: 0, yieldKgPerHa: 0 });
  });

  it('parts a stay over the new year, and goes on to today where they still stand', () => {
    const facts = [toldMove('h1', 'p1', '2026-12-30')];
    const daysIn = (year: number) => yearOf(facts, year, '2027-01-05')[0]!.days;
    expect([2025, 2026, 2027, 2028].map(daysIn)).toEqual([0, 2, 5, 0]);
  });

  it('believes a stay of which nobody told the end no longer than a herd is silent', () => {
    const facts = [toldMove('h1', 'p1', '2027-05-01')];
    const days = tables.pasture.longestStayDays.value + tables.judgements.alarms.recentDays.value;
    const [row] = yearOf(facts);
    expect(row).toMatchObject({ days: 1 + days, countedTo: addDays('2027-05-01', days) });
    const seen = toldMove('h1', 'p1', '2027-06-01');
    const still = { ...seen, details: { ...seen.details, isStill: true } } as ToldFact;
    expect(yearOf([...facts, still])[0]!.countedTo).toBe(addDays('2027-06-01', days));
    expect(yearOf(facts, 2027, '2027-05-03')[0]).not.toHaveProperty('countedTo');
    // Where there is no other paddock they can have gone nowhere else.
    const only = { today: '2027-12-31', herds, paddocks: newPaddocks(1), pastureChoices: {} };
    const [alone] = paddockYears(only, tables, { year: 2027, facts });
    expect(alone).toMatchObject({ days: 245 }); // May 1 to December 31
    expect(alone).not.toHaveProperty('countedTo');
  });

  it('adds the hay that was baled, as dry matter, in the year it was cut', () => {
    const facts = [mown(20, '2027-06-20'), mown(7, '2026-06-20')];
    const [best] = yearOf(facts);
    const bale = tables.pasture.hay.bales.at(-1)!;
    expect(best).toMatchObject({ paddockId: 'p3', bales: 20 });
    expect(best!.baledKg).toBeCloseTo(20 * bale.kg * tables.pasture.hay.dryMatterShare, 6);
  });

  it('counts no animal before it came or after it left', () => {
    const some = [newHerd({ groups: [newGroup({ head: 4, arrivesOn: '2027-05-03' })] })];
    const picture = { today: '2027-12-31', herds: some, paddocks, pastureChoices: {} };
    const facts = [toldMove('h1', 'p1', '2027-05-01'), toldMove('h1', 'p2', '2027-05-06')];
    const rows = paddockYears(picture, tables, { year: 2027, facts });
    expect(rows.find(({ paddockId }) => paddockId === 'p1')!.animalDays).toBe(12);
  });

  it('is the same year by year as asked for one by one, from the first that was told', () => {
    const facts = [
      toldMove('h1', 'p1', '2025-05-01'),
      toldMove('h1', undefined, '2025-05-08'),
      mown(7, '2026-06-20'),
      toldMove('h1', 'p2', '2027-05-04'),
      toldMove('h1', undefined, '2027-05-09'),
    ];
    const picture = { today: '2027-12-31', herds, paddocks, pastureChoices: {} };
    const years = paddocksByYear(picture, tables, facts);
    expect(years.map(({ year }) => year)).toEqual([2025, 2026, 2027]);
    for (const { year, paddocks: rows } of years) expect(rows).toEqual(yearOf(facts, year));
    expect(paddocksByYear(picture, tables, []).map(({ year }) => year)).toEqual([2027]);
  });
});
