import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { fixedRotation } from '../../shared/pasture/fixed-rotation.js';
import { leastHayKg } from '../../shared/pasture/least-hay.js';
import { chooseRotation } from '../../shared/pasture/rotation.js';
import type { RotationProblem } from '../../shared/pasture/rotation-problem.js';
import { playSeason } from '../../shared/pasture/season-books.js';
import { massOn, swardOf, type PlainSward, type Sward } from '../../shared/pasture/sward.js';
import { valuesOf } from '../../shared/tables/judgements.js';
import { tables } from '../support/factories.js';
import { provenRotation } from '../support/proven-rotation.js';

/** Share eaten by days of stay: Penn State Agronomy Guide table 1.8-9. */
const HARVEST = [0.8, 0.75, 0.75, 0.7, 0.65, 0.6, 0.6];

function sward(days: number, given: Partial<PlainSward> = {}): Sward {
  return swardOf({
    areaHa: 1,
    ceilingKgPerHa: 6700,
    rate: new Float64Array(days).fill(0.03),
    loss: new Float64Array(days),
    residualKgPerHa: 1000,
    turnInKgPerHa: 2200,
    rankKgPerHa: 4000,
    minRestDays: new Int16Array(days).fill(12),
    isClosed: new Uint8Array(days),
    cutDays: [],
    stubbleKgPerHa: 1100,
    startKgPerHa: 2000,
    lastGrazedEnd: undefined,
    ...given,
  });
}
function problem(given: {
  days: number;
  starts: readonly number[];
  rate: number;
  demandKg: readonly number[];
  stay?: number;
  areaHa?: number;
}): RotationProblem {
  const { days, starts, rate, demandKg } = given;
  return {
    swards: starts.map((startKgPerHa, p) =>
      sward(days, {
        startKgPerHa,
        areaHa: given.areaHa ?? 0.4 + 0.1 * p,
        rate: new Float64Array(days).fill(rate),
      }),
    ),
    herds: demandKg.map((kg) => ({
      demandKg: new Float64Array(days).fill(kg),
      longestStayDays: given.stay ?? 3,
      notBefore: 0,
    })),
    from: 0,
    to: days,
    harvestShare: HARVEST,
    rankDrop: 0.15,
    judged: valuesOf(tables.judgements.grazing),
  };
}

const anyProblem = fc
  .record({
    days: fc.integer({ min: 5, max: 120 }),
    starts: fc.array(fc.integer({ min: 300, max: 6000 }), { minLength: 1, maxLength: 8 }),
    rate: fc.double({ min: 0, max: 0.1, noNaN: true }),
    demandKg: fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 2 }),
    stay: fc.integer({ min: 1, max: 7 }),
  })
  .map(problem);

describe('playSeason', () => {
  it('loses no grass: what stood and grew is eaten, trampled, mown, died off or still stands', () => {
    fc.assert(
      fc.property(anyProblem, fc.boolean(), fc.boolean(), (given, isWinter, isMown) => {
        const swards = given.swards.map((s) =>
          swardOf({
            ...s,
            loss: new Float64Array(s.rate.length).fill(isWinter ? 0.006 : 0),
            cutDays: isMown ? [3] : [],
          }),
        );
        const season = { ...given, swards };
        const books = playSeason(season, chooseRotation(season, 2).stays);
        for (const book of books.paddocks) {
          const came = book.startKg + book.grownKg;
          const went = book.endKg + book.eatenKg + book.trampledKg + book.mownKg + book.diedOffKg;
          expect(Math.abs(came - went)).toBeLessThan(1e-6 * (1 + came));
          for (const kg of Object.values(book)) expect(kg).toBeGreaterThanOrEqual(-1e-9);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('feeds every herd its need on every day, from grass or hay, and never below the residual', () => {
    fc.assert(
      fc.property(anyProblem, (given) => {
        const books = playSeason(given, chooseRotation(given, 3).stays);
        given.herds.forEach((herd, h) => {
          for (let day = given.from; day < given.to; day++) {
            const fed = books.eatenKg[h]![day]! + books.hayKg[h]![day]!;
            expect(Math.abs(fed - herd.demandKg[day]!)).toBeLessThan(1e-9 * (1 + fed));
          }
        });
        for (const stay of books.stays) {
          const { residualKgPerHa } = given.swards[stay.paddock]!;
          expect(stay.massAfter).toBeGreaterThanOrEqual(
            Math.min(residualKgPerHa, stay.massBefore) - 1e-9,
          );
        }
      }),
      { numRuns: 20 },
    );
  });

  it('costs what the search said it would', () => {
    fc.assert(
      fc.property(anyProblem, (given) => {
        const rotation = chooseRotation(given, 3);
        const books = playSeason(given, rotation.stays);
        const hay = books.hayKg.reduce((sum, days) => sum + days.reduce((a, b) => a + b, 0), 0);
        expect(hay).toBeLessThanOrEqual(rotation.costKg + 1e-6 * (1 + hay));
      }),
      { numRuns: 20 },
    );
  });
});

describe('chooseRotation', () => {
  it('keeps the rest, never puts two herds in one paddock, and never stays too long', () => {
    fc.assert(
      fc.property(anyProblem, (given) => {
        const { stays } = chooseRotation(given, 4);
        for (const stay of playSeason(given, stays).stays) {
          const isShort = stay.restDays !== undefined && stay.restDays < 12;
          if (isShort) expect(stay.isEarly).toBe(false);
        }
        const busy = new Map<string, number>();
        const left = new Map<number, number>();
        for (const stay of [...stays].sort((a, b) => a.from - b.from)) {
          expect(stay.days).toBeLessThanOrEqual(given.herds[stay.herd]!.longestStayDays);
          const before = left.get(stay.paddock);
          // A fifth of the twelve days at the least, and less than all only at full height.
          if (before !== undefined) expect(stay.from - before).toBeGreaterThanOrEqual(3);
          left.set(stay.paddock, stay.from + stay.days);
          for (let day = stay.from; day < stay.from + stay.days; day++) {
            const key = `${stay.paddock}/${day}`;
            expect(busy.has(key)).toBe(false);
            busy.set(key, stay.herd);
          }
        }
      }),
      { numRuns: 20 },
    );
  });

  const small: readonly (readonly [string, RotationProblem])[] = [
    ['grass enough', problem({ days: 20, starts: [2600, 2300, 1900], rate: 0.06, demandKg: [45] })],
    ['grass short', problem({ days: 20, starts: [2400, 2000, 1600], rate: 0.03, demandKg: [60] })],
    [
      'one rank',
      problem({ days: 20, starts: [4300, 2500, 2200, 1500], rate: 0.04, demandKg: [70] }),
    ],
    [
      'slow growth',
      problem({ days: 15, starts: [2500, 2400, 2300, 2200], rate: 0.015, demandKg: [50] }),
    ],
    [
      'two herds',
      problem({
        days: 8,
        starts: [2600, 2400, 2250, 1800],
        rate: 0.05,
        demandKg: [40, 35],
        stay: 2,
      }),
    ],
    [
      'long stays',
      problem({ days: 28, starts: [2800, 2400, 2100], rate: 0.05, demandKg: [40], stay: 5 }),
    ],
  ];
  it.each(small)('comes within 2 %% of the proven best: %s', (_, given) => {
    const proven = provenRotation(given);
    expect(proven.isProven).toBe(true);
    const chosen = chooseRotation(given);
    expect(chosen.costKg).toBeGreaterThanOrEqual(proven.costKg - 1e-9);
    expect(chosen.costKg).toBeLessThanOrEqual(1.02 * proven.costKg + 1e-9);
  });

  it('never needs less hay than can be proven to be needed', () => {
    fc.assert(
      fc.property(anyProblem, (given) => {
        const books = playSeason(given, chooseRotation(given, 2).stays);
        const hay = books.hayKg.reduce(
          (sum, days) => sum + days.subarray(given.from, given.to).reduce((a, b) => a + b, 0),
          0,
        );
        expect(hay).toBeGreaterThanOrEqual(leastHayKg(given) - 1e-6);
      }),
      { numRuns: 20 },
    );
  });

  it('feeds less hay than the simple fixed rotation where grass is uneven', () => {
    const given = problem({
      days: 150,
      starts: [2400, 1500, 3000, 1200, 2600, 1800],
      rate: 0.035,
      demandKg: [120],
    });
    const hayOf = (stays: Parameters<typeof playSeason>[1]): number =>
      playSeason(given, stays).hayKg[0]!.reduce((a, b) => a + b, 0);
    const chosen = chooseRotation(given, 16);
    expect(hayOf(chosen.stays)).toBeLessThan(hayOf(fixedRotation(given)));
  });
});

describe('massOn', () => {
  it('looks up over weeks what stepping day by day gives', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 0.12, noNaN: true }), { minLength: 30, maxLength: 30 }),
        fc.integer({ min: 50, max: 6600 }),
        (rates, start) => {
          const own = sward(30, { rate: Float64Array.from(rates), cutDays: [11] });
          let mass = start;
          for (let day = 0; day < 30; day++) mass = massOn(own, mass, day, day + 1);
          expect(Math.abs(massOn(own, start, 0, 30) / mass - 1)).toBeLessThan(1e-9);
        },
      ),
    );
  });
});
