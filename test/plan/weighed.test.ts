import { describe, expect, it } from '@jest/globals';
import type { Batch } from '../../shared/farm/batch.js';
import type { Weighing } from '../../shared/farm/weighing.js';
import { addDays, daysBetween } from '../../shared/calendar/plain-date.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { newRequest, tables } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const ARRIVAL = '2027-05-05';
const planned = (weighings: readonly Weighing[] = [], batch: Partial<Batch> = {}): BatchPlan =>
  plannedBatch(newRequest({ batch, weighings }));
const weighed = (day: number, averageKg: number, birds = 10): Weighing => ({
  id: `w${day}`,
  batchId: 'any',
  date: addDays(ARRIVAL, day),
  birds,
  averageKg,
});
const day = (plan: BatchPlan, id: string, i: number): number =>
  plan.daily.find((series) => series.id === id)!.values[i]!;
const plain = planned();
const PLANNED_KG = day(plain, 'weight-mean', 27);

describe('a plan with weighings', () => {
  it('agrees with itself: birds logged as heavy as planned change no number', () => {
    const { birds, ...rest } = planned([weighed(27, PLANNED_KG)]);
    expect(birds.weighed?.speed?.value).toBe(1);
    expect(rest.feed.total.value).toBe(plain.feed.total.value);
    expect(rest.leaving!.liveEach.value).toBe(plain.leaving!.liveEach.value);
    expect(rest.bill.total.value).toBe(plain.bill.total.value);
    expect(rest.tasks).toEqual(plain.tasks);
  });

  it('comes near one weighing, and lies lighter from there on', () => {
    const light = planned([weighed(27, 0.85 * PLANNED_KG)]);
    // Ten birds at four weeks count for most of it, and the usual pace for the rest.
    expect(day(light, 'weight-mean', 27)).toBeGreaterThan(0.85 * PLANNED_KG);
    expect(day(light, 'weight-mean', 27)).toBeLessThan(0.89 * PLANNED_KG);
    for (let i = 28; i < plain.leaving!.age.value - 1; i++) {
      expect(day(light, 'weight-mean', i)).toBeLessThan(day(plain, 'weight-mean', i));
    }
  });

  it('hands the correction on to feed, the bill and the day of a target weight', () => {
    const aim = { targetLiveKg: 2.5 };
    const [usual, light] = [planned([], aim), planned([weighed(27, 0.85 * PLANNED_KG)], aim)];
    expect(light.leaving!.age.value).toBeGreaterThan(usual.leaving!.age.value);
    expect(String(light.leaving!.on.value) > String(usual.leaving!.on.value)).toBe(true);
    // More days to the same weight: more feed for each kilogram of it.
    expect(light.leaving!.conversion.value).toBeGreaterThan(usual.leaving!.conversion.value);
    const heavy = planned([weighed(27, 1.1 * PLANNED_KG)]);
    expect(heavy.feed.total.value).toBeGreaterThan(plain.feed.total.value);
  });

  it('says how sure it is: the average to a few percent, the end as the weighing leaves it open', () => {
    const { birds, leaving } = planned([weighed(27, 0.9 * PLANNED_KG)]);
    const [row] = birds.weighed!.rows;
    const about = row!.average.spread!.high / row!.average.value - 1;
    // Ten birds that differ by 10 %: 6.2 %, and the scale.
    expect(about).toBeGreaterThan(0.055);
    expect(about).toBeLessThan(0.07);
    expect(row!.average.mark).toBe('own-record');
    expect(birds.weighed!.speed!.mark).toBe('own-record');
    expect(leaving!.liveEach.spread!.low).toBeLessThan(leaving!.liveEach.value);
    expect(leaving!.liveEach.spread!.high).toBeGreaterThan(leaving!.liveEach.value);
    const many = planned([weighed(27, 0.9 * PLANNED_KG, 80)]).leaving!.liveEach.spread!;
    expect(many.high - many.low).toBeLessThan(
      leaving!.liveEach.spread!.high - leaving!.liveEach.spread!.low,
    );
  });

  it('names the weighing among what the live weight is made of', () => {
    const { leaving } = planned([weighed(27, 0.9 * PLANNED_KG)]);
    expect(leaving!.liveEach.inputs).toContainEqual(
      expect.objectContaining({ label: 'Growth by your weighings', mark: 'own-record' }),
    );
  });

  it.each([
    ['younger than a week', weighed(3, 0.08), 'weighing-not-used'],
    ['before they came', weighed(-9, 0.04), 'weighing-not-used'],
    ['in another unit', weighed(27, 2.2 * PLANNED_KG), 'weighing-far-off'],
    ['of nothing like them', weighed(27, 0.2 * PLANNED_KG), 'weighing-far-off'],
  ])('leaves a weighing %s out and says so', (_, each, code) => {
    const plan = planned([each]);
    expect(plan.issues.map((issue) => issue.code)).toContain(code);
    expect(plan.birds.weighed!.speed).toBeUndefined();
    expect(plan.feed.total.value).toBe(plain.feed.total.value);
  });
});

describe('a target weight', () => {
  const aim = { targetLiveKg: 2.5 };
  const daysOpen = (weighings: readonly Weighing[]): number => {
    const [soonest, latest] = planned(weighings, aim).leaving!.ready!;
    return daysBetween(String(soonest.value), String(latest.value));
  };

  it('has a range of days only once some were weighed, around the day of the plan', () => {
    expect(planned([], aim).leaving!.ready).toBeUndefined();
    const { ready, on } = planned([weighed(27, 0.9 * PLANNED_KG)], aim).leaving!;
    expect(String(ready![0].value) < String(on.value)).toBe(true);
    expect(String(on.value) < String(ready![1].value)).toBe(true);
  });

  it('is known to fewer days with every weighing', () => {
    const [first, second, third] = [
      weighed(13, 0.9 * day(plain, 'weight-mean', 13)),
      weighed(27, 0.9 * PLANNED_KG, 20),
      weighed(34, 0.9 * day(plain, 'weight-mean', 34), 40),
    ];
    const open = [[first], [first, second], [first, second, third]].map(daysOpen);
    expect(open[1]).toBeLessThan(open[0]!);
    expect(open[2]).toBeLessThan(open[1]!);
  });
});

describe('single weights', () => {
  /** Ounces of ten birds each, as printed (KEEPERS_WEIGHINGS_2010). */
  const CORNISH = [11.25, 9.25, 11, 12.25, 9.75, 8.5, 9.25, 12.5, 11.25, 10.25];
  const KG_PER_OUNCE = 0.028349523125;
  const each = (ounces: readonly number[], to = 1): Weighing => {
    const eachKg = ounces.map((oz) => oz * KG_PER_OUNCE * to);
    const averageKg = eachKg.reduce((sum, kg) => sum + kg, 0) / eachKg.length;
    return { ...weighed(13, averageKg, eachKg.length), eachKg };
  };

  it('say how even birds are, and what to do about it', () => {
    const { even } = planned([each(CORNISH)], { sex: 'straight-run' }).birds.weighed!;
    expect(even).toMatchObject({ is: 'uneven', birds: 10, near: { value: 5 } });
    expect(even!.differ.value).toBeCloseTo(0.127, 3);
    expect(even!.advice).toMatch(/feeders/);
    expect(even!.more!.value).toBeGreaterThan(0);
  });

  it('of birds that are nearly alike call for nothing', () => {
    const alike = CORNISH.map((ounces) => 10.5 + (ounces - 10.5) / 4);
    const { even } = planned([each(alike)]).birds.weighed!;
    expect(even!.is).toBe('even');
    expect(even!.advice).toBeUndefined();
    expect(even!.near.value).toBe(10);
  });

  it('that are few, or not told, say nothing of it', () => {
    expect(planned([each(CORNISH.slice(0, 4))]).birds.weighed!.even).toBeUndefined();
    expect(planned([weighed(13, 0.3)]).birds.weighed!.even).toBeUndefined();
  });

  it('leave an average of uneven birds more open than of even ones', () => {
    const open = ({ birds }: BatchPlan): number => {
      const { spread, value } = birds.weighed!.rows[0]!.average;
      return (spread!.high - spread!.low) / value;
    };
    const alike = CORNISH.map((ounces) => 10.525 + (ounces - 10.525) / 4);
    expect(open(planned([each(alike)]))).toBeLessThan(open(planned([each(CORNISH)])));
  });
});

describe('a plan past its growth table', () => {
  it('says so once, and leaves every number its range', () => {
    const plan = planned([], { leaveAgeDays: 70 });
    expect(plan.issues.filter(({ code }) => code === 'outside-table')).toHaveLength(1);
    for (const each of [plan.leaving!.liveEach, plan.feed.total, plan.leaving!.dressedAll]) {
      expect(each.outside).toBeUndefined();
    }
    expect(plan.daily.find(({ id }) => id === 'weight-mean')!.outside?.fromDay).toBe(55);
  });

  it.each(
    tables.strains.filter((s) => s.purposes.includes('meat')).map(({ id, name }) => [name, id]),
  )('is not where %s is usually taken', (_, strainId) => {
    const plan = planned([], { strainId });
    expect(plan.issues.map(({ code }) => code)).not.toContain('outside-table');
  });
});

describe('how birds are kept', () => {
  it('gives trial birds the table’s own weight and feed', () => {
    const plan = planned([], { keptAs: 'trial-house' });
    expect(plan.leaving!.liveEach.value).toBeCloseTo(4.043, 3); // 2020 trial at 55 days
  });

  it('takes the feed along with a weight that is typed: never a better conversion', () => {
    const [usual, heavy] = [planned(), planned([], { weightFactor: 0.9 })];
    expect(heavy.leaving!.liveEach.value).toBeGreaterThan(1.15 * usual.leaving!.liveEach.value);
    expect(heavy.feed.total.value / usual.feed.total.value).toBeCloseTo(0.9 / 0.75, 3);
  });

  it('lets heat take weight from birds outdoors, and cold take feed', () => {
    const around = (celsius: number) => {
      const months = Array.from({ length: 12 }, () => celsius);
      return plannedBatch(
        newRequest({
          farm: { monthlyMinC: months, monthlyMaxC: months },
          batch: { moveOutDate: '2027-05-26' },
        }),
      );
    };
    const [cold, mild, hot] = [around(8), around(20), around(30)];
    expect(hot.leaving!.liveEach.value).toBeLessThan(0.9 * mild.leaving!.liveEach.value);
    expect(hot.feed.total.value).toBeLessThan(mild.feed.total.value);
    expect(hot.leaving!.liveEach.mark).toBe('estimate');
    expect(cold.feed.total.value).toBeGreaterThan(1.04 * mild.feed.total.value);
    expect(hot.feed.peakWater.value).toBeGreaterThan(mild.feed.peakWater.value);
  });
});
