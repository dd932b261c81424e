import { describe, expect, it } from '@jest/globals';
import type { Facility } from '../../shared/farm/facility.js';
import type { Product } from '../../shared/farm/product.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { addDays } from '../../shared/calendar/plain-date.js';
import { defaultRow } from '../../shared/tables/tables.js';
import { newBrooder, newFarm, newRequest, tables } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const FEED: Product = {
  ...{ id: 'f', kind: 'feed', name: 'Grower', phaseIds: ['starter', 'grower'] },
  ...{ bagKg: 20, price: '20.00' },
};
const planOf = (more: Parameters<typeof newRequest>[0] = {}) => plannedBatch(newRequest(more));
const pen = (sides?: 'open' | 'closed'): Facility => ({
  ...{ kind: 'field-pen', id: 'pen', name: 'Pen', floorM2: 12, count: 1 },
  ...(sides ? { sides } : {}),
});

describe('one cold night', () => {
  it('is colder than the birds stand, and costs more feed the more birds there are', () => {
    const { oneColdNight } = planOf({ products: [FEED] }).outdoors;
    const stands = oneColdNight!.low.inputs.find(({ symbol }) => symbol === 'T_rule')!;
    expect(oneColdNight!.low.value).toBeLessThan(Number(stands.value));
    const twice = planOf({ batch: { wantedBirds: 200 } }).outdoors.oneColdNight!;
    const ratio = twice.feed.value / oneColdNight!.feed.value;
    expect(ratio).toBeGreaterThan(1.9);
    expect(ratio).toBeLessThan(2.1);
  });

  it('costs the feed at the price of a kilogram, and no money where there is no price', () => {
    const { oneColdNight } = planOf({ products: [FEED] }).outdoors;
    // 20.00 for 20 kg is a dollar a kilogram: 100 cents.
    expect(Math.abs(oneColdNight!.money!.value - oneColdNight!.feed.value * 100)).toBeLessThan(0.6);
    expect(planOf().outdoors.oneColdNight!.money).toBeUndefined();
  });

  it('says what the brooder’s own heat costs for a night, unless it burns gas', () => {
    const batch = { brooderId: 'brooder', moveOutDate: '2027-06-21' };
    const { heat } = planOf({ batch }).outdoors.oneColdNight!;
    // Four lamps of 250 W from sunset to sunrise at midsummer, 8 h 45 min, at 20 cents.
    expect(Math.abs(heat!.value - 4 * 0.25 * 8.75 * 20)).toBeLessThan(3);
    const gas = newBrooder({
      heat: { kind: 'gas', wattsEach: 2000, count: 1, thermostat: true },
    });
    expect(planOf({ batch, facilities: [gas] }).outdoors.oneColdNight!.heat).toBeUndefined();
  });
});

describe('wind and rain after the move', () => {
  const rain = (mm: number) => {
    const farm = newFarm();
    const months = Array.from({ length: 12 }, () => mm);
    return climateFromMonthlyMeans(farm.monthlyMinC, farm.monthlyMaxC, 6, months);
  };
  const at = (sides: 'open' | 'closed' | undefined, more: object = {}) =>
    planOf({ batch: { penId: 'pen' }, facilities: [pen(sides)], climate: rain(90), ...more });

  it('are said where the pen is open, with the chance of a wet day', () => {
    const { outdoors, issues } = at('open');
    expect(outdoors.shelter).toBe('open');
    expect(outdoors.wetDay!.value).toBeGreaterThan(0.8);
    expect(issues.find(({ code }) => code === 'open-shelter')!.text).toMatch(/windward side/);
    for (const sides of ['closed', undefined] as const)
      expect(at(sides).issues.map(({ code }) => code)).not.toContain('open-shelter');
    expect(at(undefined).outdoors.shelter).toBe('not known');
  });

  it('have no chance where the rain is not known, and a smaller one where less falls', () => {
    expect(
      planOf({ batch: { penId: 'pen' }, facilities: [pen()] }).outdoors.wetDay,
    ).toBeUndefined();
    const dry = at('open', { climate: rain(15) }).outdoors.wetDay!.value;
    expect(dry).toBeLessThan(at('open').outdoors.wetDay!.value);
  });

  it('go by the forecast where there is one', () => {
    const week = (rainMm: number) =>
      Array.from({ length: 7 }, (_, k) => ({
        ...{ date: `2027-06-${String(10 + k)}`, minC: 14, maxC: 24, rainMm },
      }));
    const known = (rainMm: number) =>
      at('open', {
        today: '2027-06-10',
        batch: { penId: 'pen', moveOutDate: '2027-06-10' },
        climate: { ...rain(90), forecast: week(rainMm) },
      }).outdoors.wetDay!.value;
    expect(known(0)).toBe(0);
    expect(known(5)).toBe(1);
  });
});

describe('days to spare in the brooder', () => {
  // The usual standard asks for more floor from one age to the next, in steps.
  const steps = defaultRow(tables.space.brooder).rows;
  const step = steps.find(
    ({ fromDay, floorM2 }, k) => 21 < fromDay && steps[k - 1]!.floorM2 < floorM2,
  )!;
  const spareOf = (daysBefore: number, lengthM: number) =>
    planOf({
      batch: {
        brooderId: 'brooder',
        // The birds come a day old.
        moveOutDate: addDays('2027-05-05', step.fromDay - 1 - daysBefore),
      },
      facilities: [newBrooder({ lengthM, widthM: 10 })],
    });
  const SNUG_M = (100 * step.floorM2) / 10;

  it('end when they outgrow it, and few are said', () => {
    for (const days of [1, 4]) {
      const { space, issues } = spareOf(days, SNUG_M);
      expect(space.spare!.value).toBe(days);
      expect(issues.map(({ code }) => code)).toContain('brooder-few-to-spare');
    }
    const large = spareOf(1, 10 * SNUG_M);
    expect(large.space.spare!.value).toBeGreaterThan(7);
    expect(large.issues.map(({ code }) => code)).not.toContain('brooder-few-to-spare');
  });
});
