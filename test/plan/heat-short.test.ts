import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { HeatOut } from '../../shared/farm/heat-out.js';
import { planBatch, type BatchPlan } from '../../shared/plan/batch-plan.js';
import { newBatch, newBrooder, newRequest, tables } from '../support/factories.js';
import { newPicture } from '../support/pictures.js';

const ARRIVED = '2027-01-06';
const { farm, climate } = newRequest({});

/** 80 chicks of January in a brooder with so many lamps, told to have come. */
function plannedWith(
  count: number,
  today = addDays(ARRIVED, 1),
  heatOuts: readonly HeatOut[] = [],
): BatchPlan {
  const heat = { kind: 'lamp', wattsEach: 250, count, thermostat: false } as const;
  const picture = newPicture({
    ...{ farm, climate, today, heatOuts, facilities: [newBrooder({ heat })] },
    batches: [
      { ...newBatch({ brooderId: 'brooder', orderedBirds: 80 }), id: 'c', arrivalDate: ARRIVED },
    ],
    headChanges: [{ id: 'came', batchId: 'c', date: ARRIVED, change: 'arrived', birds: 80 }],
  });
  return planBatch(picture, tables, 'c');
}
const toBuy = (plan: BatchPlan) =>
  plan.tasks.tasks.find(({ templateId }) => templateId === 'meat.buy-heaters');

describe('lamps of birds that are there', () => {
  const needed = plannedWith(0).heat!.heatersNeeded.value;

  it('are to be bought by what the coldest night asks for, not by the common rule', () => {
    // The rule has two lamps for 80 chicks; the brooder loses more than two give.
    expect(plannedWith(0).heat!.rules.lampRule!.value).toBeLessThan(needed);
    for (const count of [0, 1, 2, needed - 1]) {
      const plan = plannedWith(count);
      expect(plan.heat!.toAdd).toBe(needed - count);
      expect(toBuy(plan)!.name).toContain(`${needed - count} more lamp`);
      const said = plan.issues.find(({ code }) => /^heat-(too-weak|check)$/.test(code))!.text;
      expect(said).toMatch(new RegExp(`[Aa]dd ${needed - count} more,`));
    }
    expect(toBuy(plannedWith(needed))).toBeUndefined();
  });

  it('are asked for today where tonight is too cold, on every day until they are there', () => {
    for (const day of [1, 4, 9]) {
      const today = addDays(ARRIVED, day);
      const buy = toBuy(plannedWith(0, today))!;
      expect([buy.start, buy.alreadyLate]).toEqual([today, false]);
      expect(buy.name).toContain('warm room');
    }
  });

  it('are asked for on the eve of the first night that is too cold for those there are', () => {
    const plan = plannedWith(needed - 1, ARRIVED);
    const { firstShort } = plan.heat!;
    expect(toBuy(plan)!.start).toBe(
      firstShort!.on === ARRIVED ? ARRIVED : addDays(firstShort!.on, -1),
    );
  });

  it('are as few as were told to work until they are told to be mended, and no fewer', () => {
    const today = addDays(ARRIVED, 1);
    const out = (working?: number): HeatOut => ({
      ...{ id: `out-${working}`, batchId: 'c', date: today },
      ...(working === undefined ? {} : { working }),
    });
    const numbers = (plan: BatchPlan) => [plan.heat!.installed.value, plan.heat!.toAdd];
    expect(numbers(plannedWith(needed, today, [out(2)]))).toEqual([2 * 250, needed - 2]);
    expect(numbers(plannedWith(needed, today, [out(2), out()]))).toEqual([needed * 250, 0]);
    expect(numbers(plannedWith(1, today, [out(2)]))).toEqual(numbers(plannedWith(1)));
    const other = { ...out(0), batchId: 'another' };
    expect(numbers(plannedWith(needed, today, [other]))).toEqual([needed * 250, 0]);
  });
});
