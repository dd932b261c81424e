import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { ToldFact } from '../../../shared/farm/told-fact.js';
import { usualRainMm } from '../../../shared/plan/record/rain-told.js';
import { yearCounts } from '../../../shared/plan/record/year-counts.js';

let k = 0;
const fact = (kind: ToldFact['kind'], on: string, details: object, more: object = {}): ToldFact =>
  ({
    ...{ id: `f${++k}`, key: `f${k}`, kind, about: 'b', on, details },
    toldAt: `${on}T10:00:00.${String(k % 1000).padStart(3, '0')}Z`,
    ...more,
  }) as ToldFact;

describe('the counts of a calendar year', () => {
  it('go from the first of January to the last of December', () => {
    const facts = [
      fact('processed', '2026-12-31', { birds: 1 }),
      fact('processed', '2027-01-01', { birds: 20 }, { about: 'a' }),
      fact('processed', '2027-12-31', { birds: 300 }),
      fact('processed', '2028-01-01', { birds: 4000 }),
    ];
    const { birds, processedOf } = yearCounts(2027, facts, 'USD');
    expect(birds.processed).toBe(320);
    expect(processedOf).toEqual([
      { batchId: 'b', birds: 300 },
      { batchId: 'a', birds: 20 },
    ]);
  });

  it('add up what the gauge held, beside what is usual over the same days', () => {
    const facts = [
      fact('rained', '2026-12-31', { mm: 30 }, { about: 'ground' }),
      fact('rained', '2027-04-01', { mm: 14.2 }, { about: 'ground' }),
      fact('rained', '2027-04-30', { mm: 0.1 }, { about: 'ground' }),
    ];
    const { rain } = yearCounts(2027, facts, 'USD');
    expect(rain).toEqual({ mm: 14.3, from: '2027-04-01', to: '2027-04-30' });
    const meanRainMm = Array.from({ length: 366 }, (_, day) => (day < 100 ? 1 : 3));
    expect(usualRainMm(rain!, { meanRainMm })).toBe(10 + 3 * 20);
    expect(usualRainMm(rain!, {})).toBeUndefined();
    // A shower is held against no single day.
    expect(usualRainMm({ ...rain!, from: '2027-04-20' }, { meanRainMm })).toBeUndefined();
    expect(yearCounts(2028, facts, 'USD')).not.toHaveProperty('rain');
  });

  it('tell what was sold from what was given, and what it brought', () => {
    const counts = yearCounts(
      2027,
      [
        fact('gone', '2027-05-01', { birds: 3, how: 'sold', money: '30.10' }),
        fact('gone', '2027-05-02', { birds: 2, how: 'given' }),
        fact('gone', '2027-05-03', { birds: 1, how: 'sold' }),
        fact('eggs-gone', '2027-05-04', { eggs: 24, how: 'sold', money: '10.20' }),
        fact('eggs-gone', '2027-05-04', { eggs: 12, how: 'given' }),
        fact('bought', '2027-05-05', { what: 'hay', amount: 1, money: '7' }, { about: 'farm' }),
        fact('bought', '2027-05-05', { what: 'gas', amount: 1 }, { about: 'farm' }),
      ],
      'USD',
    );
    expect(counts.birds).toMatchObject({ sold: 4, given: 2 });
    expect(counts.eggs).toEqual({ counted: 0, sold: 24, given: 12, keptOut: 0 });
    expect(counts.money).toEqual({ taken: 4030, spent: 700 }); // 30.10 + 10.20
    expect(counts.withoutMoney).toEqual({ sales: 1, purchases: 1 });
  });

  it('count what was changed once, and what was taken back not at all', () => {
    const first = fact('processed', '2027-05-01', { birds: 50 });
    const changed = fact('processed', '2027-05-01', { birds: 48 }, { replaces: first.id });
    const back = fact('processed', '2027-05-02', { birds: 9 }, { takenBackAt: '2027-05-03T00' });
    expect(yearCounts(2027, [first, changed, back], 'USD').birds.processed).toBe(48);
  });

  it('add money to the cent, however much of it there is', () => {
    const cents = fc.array(fc.integer({ min: 0, max: 9_999_999 }), { maxLength: 200 });
    fc.assert(
      fc.property(cents, (all) => {
        const facts = all.map((minor) =>
          fact('gone', '2027-06-01', { birds: 1, how: 'sold', money: (minor / 100).toFixed(2) }),
        );
        const taken = all.reduce((sum, minor) => sum + minor, 0);
        expect(yearCounts(2027, facts, 'USD').money.taken).toBe(taken);
      }),
      { numRuns: 50 },
    );
  });

  it('lose and make no egg, in whatever order it was told, changed, taken back or kept out', () => {
    const day = fc.constantFrom('2026-12-30', '2026-12-31', '2027-01-01', '2027-01-02');
    const eggs = fc.nat(60);
    const told = fc.record({
      on: day,
      is: fc.constantFrom('eggs-counted', 'sold', 'given'),
      eggs,
      then: fc.constantFrom('holds', 'is changed', 'is taken back'),
      changedTo: fc.record({ on: day, eggs }),
    });
    const order = fc.array(told, { maxLength: 30 }).chain((rows) =>
      fc.tuple(
        fc.constant(rows),
        fc.shuffledSubarray(
          rows.map((_, at) => at),
          { minLength: rows.length },
        ),
        fc.boolean(),
      ),
    );
    const of = (is: string, on: string, n: number, more: object = {}): ToldFact =>
      is === 'eggs-counted'
        ? fact('eggs-counted', on, { days: 1, eggs: n }, more)
        : fact('eggs-gone', on, { eggs: n, how: is }, more);
    const treated = fact('treated', '2026-12-31', { product: 'Of the label', eggDays: 1 });
    fc.assert(
      fc.property(order, ([rows, turns, isTreated]) => {
        const each = rows.map(({ on, is, eggs: n, then, changedTo }) => {
          const takenBackAt = '2027-01-03T00:00:00.000Z';
          const first = of(is, on, n, then === 'is taken back' ? { takenBackAt } : {});
          return then === 'is changed'
            ? [first, of(is, changedTo.on, changedTo.eggs, { replaces: first.id })]
            : [first];
        });
        const facts = [...turns.flatMap((at) => each[at]!), ...(isTreated ? [treated] : [])];
        const years = [2026, 2027].map((year) => yearCounts(year, facts, 'USD'));
        const inAll = (count: (eggs: (typeof years)[number]['eggs']) => number): number =>
          years.reduce((sum, year) => sum + count(year.eggs), 0);
        const holds = (is: string): number =>
          rows
            .filter((row) => row.is === is && row.then !== 'is taken back')
            .reduce((sum, r) => sum + (r.then === 'is changed' ? r.changedTo.eggs : r.eggs), 0);
        expect(inAll(({ counted, keptOut }) => counted + keptOut)).toBe(holds('eggs-counted'));
        expect(inAll(({ sold }) => sold)).toBe(holds('sold'));
        expect(inAll(({ given }) => given)).toBe(holds('given'));
        if (!isTreated) expect(inAll(({ keptOut }) => keptOut)).toBe(0);
      }),
    );
  });
});
