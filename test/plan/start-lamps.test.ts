import { describe, expect, it } from '@jest/globals';
import { facilityOf } from '../../shared/farm/facility.js';
import type { BirdsToCome } from '../../shared/farm/start.js';
import { fewestByRule } from '../../shared/plan/heat-heaters.js';
import { planBatch } from '../../shared/plan/batch-plan.js';
import { tables } from '../support/factories.js';
import { pictureOf, start } from '../support/starts.js';

const OHIO = { latitudeDeg: 40.62, longitudeDeg: -82.51, elevationM: 400 };
const PENNSYLVANIA = { latitudeDeg: 40.9, longitudeDeg: -77.5, elevationM: 400 };

const on = (birds: number, day: string): BirdsToCome => ({ birds, from: day, to: day });

function lampsOf(more: Parameters<typeof start>[0]) {
  const rows = start({ ...more });
  const [batch] = rows.batches;
  const brooder = facilityOf(rows.facilities, 'brooder', batch!.brooderId)!;
  const { heat, birds, issues } = planBatch(pictureOf(rows), tables, batch!.id);
  expect(issues.map(({ code }) => code)).not.toEqual(
    expect.arrayContaining([expect.stringMatching(/heat-too-weak|heat-check|lamp-too-strong/)]),
  );
  expect([heat!.enough, brooder.heat.kind]).toEqual([true, 'lamp']);
  return {
    ...{ brooder, count: brooder.heat.count },
    watts: brooder.heat.count * brooder.heat.wattsEach,
    bound: Math.max(2, fewestByRule(heat!.rules)! + 1),
    chicks: birds.chicksPlaced.value,
  };
}

describe('lamps that are assumed at a start', () => {
  it('are no more over twenty pullets in March than the common rule hangs, and one to spare', () => {
    const { brooder, count } = lampsOf({ ...OHIO, layers: on(20, '2027-03-10') });
    expect(count).toBe(2);
    // A board does it: the box stays where it is.
    expect(brooder).toMatchObject({ closesOff: true, standsIn: 'unheated-building' });
  });

  it('are as few over fifty meat birds, in a place that is warm enough, which is assumed', () => {
    const { brooder, count, bound } = lampsOf({ ...PENNSYLVANIA, meat: on(50, '2027-04-07') });
    expect(count).toBeLessThanOrEqual(bound);
    expect(brooder).toMatchObject({ closesOff: true, standsIn: 'heated-room', roomC: 10 });
    expect(brooder.assumed).toEqual(expect.arrayContaining(['standsIn', 'roomC', 'closesOff']));
  });

  it('do not get fewer as birds get more', () => {
    for (const [kind, day] of [
      ['meat', '2027-03-31'],
      ['layers', '2027-03-10'],
    ] as const) {
      const all = [8, 20, 50, 75, 100].map((n) => lampsOf({ ...OHIO, [kind]: on(n, day) }));
      const watts = all.map((each) => each.watts);
      expect(watts).toEqual([...watts].sort((a, b) => a - b));
      for (const { count, bound } of all) expect(count).toBeLessThanOrEqual(bound);
    }
  });

  it('hang in one place for two batches that share a box, the warmer one', () => {
    const rows = start({
      ...OHIO,
      meat: on(75, '2027-03-31'),
      moreMeat: [on(50, '2027-07-14')],
    });
    const brooder = rows.facilities.find(({ kind }) => kind === 'brooder');
    expect(brooder).toMatchObject({ standsIn: 'heated-room', roomC: 10 });
    for (const { id } of rows.batches)
      expect(planBatch(pictureOf(rows), tables, id).heat!.enough).toBe(true);
  });
});
