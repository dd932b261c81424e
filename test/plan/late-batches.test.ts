import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import { planBatch } from '../../shared/plan/batch-plan.js';
import { newBrooder, newRequest, tables } from '../support/factories.js';
import { newPicture, plannedBatch } from '../support/pictures.js';

describe('planBatch of a late batch', () => {
  it('moves August pullets out once they are feathered, not in the spring after', () => {
    const { outdoors } = plannedBatch(
      newRequest({
        batch: {
          purpose: 'layers',
          strainId: 'brown-layer',
          sex: 'pullets',
          arrivalDate: '2027-08-11',
        },
      }),
    );
    expect(outdoors.ageAtMove!.value).toBeLessThanOrEqual(112);
  });

  it('prints a table of another era without the factors of the first', () => {
    const at = (growthTableId: string): number =>
      plannedBatch(newRequest({ batch: { growthTableId, leaveAgeDays: 42 } })).leaving!.liveEach
        .value;
    // NRC 1984, six weeks: 1.69 kg cockerels and 1.43 kg pullets.
    expect(Math.abs(at('fast-1984') - 1.56)).toBeLessThan(0.005);
  });

  it('sizes plates by their chicks, and never stops a plan for them', () => {
    const brooder = newBrooder({
      heat: { kind: 'plate', wattsEach: 25, count: 2, thermostat: true },
    });
    const plan = plannedBatch(
      newRequest({ facilities: [brooder], batch: { brooderId: 'brooder', orderedBirds: 100 } }),
    );
    expect(plan.heat!.heatersNeeded.value).toBe(4); // 100 chicks × 1 W ÷ 25 W (from memory)
    expect(plan.issues.filter((i) => i.level === 'stop')).toEqual([]);
  });

  it('loses less heat in a building than in the wind', () => {
    const need = (standsIn: 'outdoors' | 'unheated-building'): number =>
      plannedBatch(
        newRequest({ facilities: [newBrooder({ standsIn })], batch: { brooderId: 'brooder' } }),
      ).heat!.conduction.value;
    expect(need('unheated-building')).toBeLessThan(need('outdoors'));
  });

  it('is planned alike beside batches that were gone before it came', () => {
    const asked = newRequest({ facilities: [newBrooder()], batch: { brooderId: 'brooder' } });
    const { arrivalDate } = asked.batch;
    const before = (days: number) => ({
      ...asked.batch,
      ...{ id: `before-${days}`, name: `Before ${days}`, arrivalDate: addDays(arrivalDate, -days) },
    });
    // The first was sold when it had hardly come: its days in the brooder, as planned, were not.
    const gone = [20, 400, 1000].map(before);
    const headChanges = gone.flatMap(({ id: batchId, arrivalDate: came }) => [
      { batchId, date: came, change: 'arrived' as const, birds: 20 },
      { batchId, date: addDays(came, 9), change: 'gone' as const, birds: 20 },
    ]);
    const beside = (more: Partial<FarmPicture>) => {
      const { farm, climate, today, facilities } = asked;
      const picture = newPicture({ farm, climate, today, facilities, ...more });
      const batch = { ...asked.batch, id: 'new' };
      return planBatch({ ...picture, batches: [...picture.batches, batch] }, tables, 'new');
    };
    expect(beside({ batches: gone, headChanges })).toEqual(beside({}));
    const there = beside({ batches: gone });
    expect(there.issues.map(({ code }) => code)).toContain('place-taken');
  });
});
