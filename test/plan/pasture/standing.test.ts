import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import type { NumberQuantity } from '../../../shared/explain/quantity.js';
import { hayAheadOf, hayMadeOn } from '../../../shared/plan/pasture/hay-beside-grass.js';
import {
  allStandingOn,
  averageOn,
  heightOn,
  needAheadOf,
  needOn,
  standingOn,
  usableOn,
} from '../../../shared/plan/pasture/standing.js';
import { tables } from '../../support/factories.js';
import {
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const plan = plannedPasture(
  newPastureRequest({
    paddocks: newPaddocks(14, { areaM2: 4000, forageId: 'mixed' }),
    herds: [
      newHerd({ groups: [newGroup({ head: 3 }), newGroup({ classId: 'stocker', head: 2 })] }),
    ],
    choices: { to: '2027-09-30' },
  }),
);
const days = plan.paddocks[0]!.massByDay.map((_, day) => day);
const valueOf = (quantity: NumberQuantity, symbol: string): number =>
  Number(quantity.inputs.find((each) => each.symbol === symbol)!.value);

describe('standingOn', () => {
  it('is what stood and grew less what went, in every paddock on every day', () => {
    expect(plan.surplus.length).toBeGreaterThan(0); // so that mowing is in the books too
    for (const paddock of plan.paddocks) {
      for (const day of days) {
        const standing = standingOn(plan, paddock, day);
        const of = (symbol: string): number => valueOf(standing, symbol);
        const went = of('eaten') + of('trampled') + of('mown') + of('died off');
        // Half a kilogram for the mass, and a twentieth for each sum that is shown.
        expect(Math.abs(of('W₀') + of('grown') - went - standing.value)).toBeLessThan(0.8);
      }
    }
  });

  it('names the evening, and what grew on that day', () => {
    const standing = standingOn(plan, plan.paddocks[2]!, 30);
    expect(standing.label).toBe('Grass on hand in Paddock 3');
    expect(standing.inputs[0]).toMatchObject({ value: addDays(plan.from, 30), unit: 'date' });
    expect(standing.inputs.at(-1)!.value).toBe(plan.paddocks[2]!.days.grown[30]);
    expect(standing.mark).toBe('assumed'); // no height was read
  });

  it('keeps the sums of the days true to the books of the season', () => {
    const { forageBalance: book, paddocks } = plan;
    for (const key of ['grown', 'eaten', 'trampled', 'mown', 'diedOff'] as const) {
      const kg = paddocks.reduce(
        (sum, own) => sum + (own.days[key].reduce((a, b) => a + b, 0) * own.area.value) / 10_000,
        0,
      );
      // 14 paddocks of 0.4 ha, each within 0.05 kg/ha
      expect(Math.abs(kg - book[`${key}Kg`])).toBeLessThan(0.05 + 14 * 0.4 * 0.05);
    }
  });
});

describe('heightOn', () => {
  it('is the mass over the dry matter in a centimeter, within the printed range', () => {
    const paddock = plan.paddocks[0]!;
    const height = heightOn(plan, paddock, 40);
    expect(height.value).toBeCloseTo(paddock.massByDay[40]! / paddock.perCm.value, 3);
    expect(height.spread!.low).toBeLessThan(height.value);
    expect(height.spread!.high).toBeGreaterThan(height.value);
    expect(height.spread!.low * paddock.perCm.spread!.high).toBeCloseTo(paddock.massByDay[40]!, 1);
  });

  it('has no range where the dry matter in a centimeter was measured', () => {
    const measured = plannedPasture(
      newPastureRequest({
        paddocks: newPaddocks(2, { massKgPerHaCm: 230 }),
        choices: { to: '2027-05-10' },
      }),
    );
    expect(heightOn(measured, measured.paddocks[0]!, 3).spread).toBeUndefined();
  });
});

describe('sums of all paddocks', () => {
  it('are their inputs added up, and the average is the total over the land', () => {
    for (const total of [allStandingOn(plan, 50), usableOn(plan, 50)]) {
      const sum = total.inputs.reduce((kg, each) => kg + Number(each.value), 0);
      expect(total.inputs).toHaveLength(14);
      expect(Math.abs(sum - total.value)).toBeLessThan(0.1); // six digits each
    }
    // 14 paddocks of one size: the mean of their masses.
    const mean = plan.paddocks.reduce((kg, own) => kg + own.massByDay[50]! / 14, 0);
    expect(averageOn(plan, 50).value).toBeCloseTo(mean, 1);
    expect(usableOn(plan, 50).value).toBeLessThan(allStandingOn(plan, 50).value);
  });
});

describe('need', () => {
  const herd = plan.herds[0]!;

  it('of a day is head times what each eats, over the classes', () => {
    for (const day of [0, 60, 120]) {
      const need = needOn(plan, herd, day);
      const of = (symbol: string): number[] =>
        need.inputs.filter((each) => each.symbol === symbol).map((each) => Number(each.value));
      const [head, each] = [of('head'), of('DMI')];
      expect(head).toEqual([3, 2]);
      const sum = head.reduce((kg, n, k) => kg + n * each[k]!, 0);
      expect(Math.abs(sum - need.value)).toBeLessThan(0.08); // 5 head at a hundredth, and a tenth
    }
  });

  it('of the days that are looked ahead is the sum of their days, and of fewer where the plan ends', () => {
    const sum = herd.needByDay.slice(10, 10 + 21).reduce((a, b) => a + b, 0);
    expect(needAheadOf(plan, 10).value).toBeCloseTo(sum, 1);
    expect(needAheadOf(plan, 10).label).toBe('Need of the 21 days from then');
    const last = needAheadOf(plan, days.length - 1);
    expect(last.label).toBe('Need of the day from then');
    expect(last.value).toBeCloseTo(herd.needByDay.at(-1)!, 1);
  });
});

describe('hay beside grass', () => {
  it('fed in the days ahead is a part of their need, and summed from the days', () => {
    for (const day of days) {
      expect(hayAheadOf(plan, day).value).toBeLessThanOrEqual(needAheadOf(plan, day).value + 0.1);
    }
    const last = days.length - 1;
    const fed = plan.herds[0]!.hayByDay.slice(last - 20).reduce((a, b) => a + b, 0);
    expect(hayAheadOf(plan, last - 20).value).toBeCloseTo(fed, 6);
  });

  it('made is all of the plan, each cut on its day, dry', () => {
    const byDay = days.map((day) => hayMadeOn(plan, day, tables));
    const all = byDay.reduce((sum, made) => sum + (made?.value ?? 0), 0);
    const cuts = plan.surplus.reduce((sum, { hay }) => sum + hay.value, 0);
    expect(all).toBeCloseTo(cuts * tables.pasture.hay.dryMatterShare, 1); // each day is rounded
    const mown = new Set(plan.surplus.map(({ cutOn }) => daysBetween(plan.from, cutOn)));
    expect(new Set(days.filter((day) => byDay[day] !== undefined))).toEqual(mown);
  });
});
