import { describe, expect, it } from '@jest/globals';
import type { CattleGroup, Herd } from '../../../shared/farm/herd.js';
import { L_PER_US_GAL } from '../../../shared/units/convert.js';
import { climateFromMonthlyMeans } from '../../../shared/weather/climate.js';
import type { HerdSizing } from '../../../shared/plan/pasture/herd-sizing.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import { lbToKg } from '../../support/conversions.js';
import {
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
  RAIN_MM,
} from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

/** A summer of which the hottest day of one year in ten is as hot as asked, by its mean highs. */
const climateOf = (hotC: number) => {
  const highs = Array<number>(12).fill(hotC - 2.4 * 3.5);
  return climateFromMonthlyMeans(
    highs.map((c) => c - 13),
    highs,
    6,
    RAIN_MM,
  );
};
const planOf = (group: Partial<CattleGroup>, herd: Partial<Herd> = {}, hotC = 32.22): PasturePlan =>
  plannedPasture(
    newPastureRequest({
      ...{ climate: climateOf(hotC), paddocks: newPaddocks(3) },
      choices: { from: '2027-07-01', to: '2027-07-31' },
      herds: [newHerd({ groups: [newGroup({ head: 10, gainKgPerDay: 0, ...group })], ...herd })],
    }),
  );
const sizing = (...asked: Parameters<typeof planOf>): HerdSizing =>
  planOf(...asked).stocking.herds[0]!;
const codes = (...asked: Parameters<typeof planOf>): string[] =>
  planOf(...asked).issues.map(({ code }) => code);

describe('water of a herd on the hottest day of one year in ten', () => {
  it('is much more than on the hottest usual day', () => {
    const { water, hotDay } = sizing({ classId: 'dry-cow' });
    expect(hotDay.value).toBeCloseTo(32.22, 1);
    const usual = water.inputs.find(({ label }) => label.includes('usual'))!.value as number;
    // 54 L at most of a mean July day by the lower chart; 66.6 L by the higher on the hot one.
    expect(usual).toBeLessThan(400);
    expect(Math.abs(water.value / (10 * 17.6 * L_PER_US_GAL) - 1)).toBeLessThan(0.005);
    expect(water.spread!.low).toBeLessThan(0.7 * water.value);
    expect(water.outside).toBeUndefined();
  });

  it('does not keep the last row for heavier growing cattle and hotter days, and says so', () => {
    const of = (lb: number, hotC?: number) =>
      sizing({ classId: 'stocker', weightKg: lbToKg(lb) }, {}, hotC).water;
    expect(of(1000).value).toBeGreaterThan(1.1 * of(800).value);
    expect(of(1400).value).toBeGreaterThan(of(1200).value);
    expect(of(1000).outside).toMatch(/^heavier growing cattle than the charts go/);
    expect(of(700, 38).value).toBeGreaterThan(1.15 * of(700, 32).value);
    expect(of(700, 38).outside).toMatch(/^hotter than the charts go/);
    expect(of(700).outside).toBeUndefined();
  });

  it('gives milk cows what nursing cows drink at least, and says that they may drink twice their equation', () => {
    const { water } = sizing({ classId: 'milk-cow', milkKgPerDay: 8 });
    expect(water.value).toBeGreaterThan(10 * 21.5 * L_PER_US_GAL);
    expect(water.spread!.high).toBeCloseTo(2 * water.spread!.low, 1);
    const high = sizing({ classId: 'milk-cow', milkKgPerDay: 40, weightKg: 650 }).water;
    expect(high.value).toBeCloseTo(high.spread!.low, 3);
  });
});

describe('the tank and the supply that are there', () => {
  const dry = { classId: 'dry-cow' };

  it('are of the smallest tank and its usual refill while nobody has told', () => {
    const { refill, lasts, tank, water } = sizing(dry);
    expect(refill).toBeUndefined();
    expect(tank.value).toBeCloseTo(water.value / 4, 0); // four hours: a quarter of the day
    expect(lasts).toMatchObject({
      label: 'Without supply the smallest tank lasts',
      mark: 'assumed',
    });
    expect(lasts.value).toBeCloseTo(6, 2);
  });

  it('say for how long the tank lasts, and in how many hours the supply brings the day', () => {
    const { refill, lasts, water } = sizing(dry, { tankL: 1000, supplyLPerH: 100 });
    expect(refill!.value).toBeCloseTo(water.value / 100, 4);
    expect(lasts.value).toBeCloseTo((24 * 1000) / water.value, 3);
    expect(lasts.label).toBe('Without supply your tank lasts');
  });

  it('ask for a larger tank only where it is too small for the supply', () => {
    // 666 L a day: at 200 L an hour it refills in 3.3 hours, and a quarter of the day does.
    expect(codes(dry, { tankL: 200, supplyLPerH: 200 })).not.toContain('water-tank-small');
    expect(codes(dry, { tankL: 150, supplyLPerH: 200 })).toContain('water-tank-small');
    // At 60 L an hour it takes eleven hours, and the tank has to hold the day.
    expect(codes(dry, { tankL: 200, supplyLPerH: 60 })).toContain('water-tank-small');
  });

  it('say what is short where the supply does not bring a hot day’s water', () => {
    const plan = planOf(dry, { tankL: 5000, supplyLPerH: 20 });
    const short = plan.issues.find(({ code }) => code === 'water-supply-short')!;
    expect(short).toMatchObject({ level: 'act' });
    expect(short.text).toMatch(
      /^Cows: 66\d L .* the supply brings 480 L\. 18\d L are to be carried/,
    );
  });

  it('stand still for a herd that is not there', () => {
    const { water, lasts } = sizing({ ...dry, arrivesOn: '2027-10-01' });
    expect([water.value, lasts.value]).toEqual([0, 0]);
  });
});
