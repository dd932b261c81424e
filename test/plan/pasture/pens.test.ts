import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { NamedBatch } from '../../../shared/farm/picture.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import { newBatch, tables } from '../../support/factories.js';
import { newHerd, newPaddocks, newPastureRequest } from '../../support/pasture-factories.js';
import { plannedPasture, type PastureCase } from '../../support/pictures.js';

const BIRDS: NamedBatch = {
  ...newBatch({ name: 'Broilers', arrivalDate: '2027-05-12', moveOutDate: '2027-06-02' }),
  ...{ id: 'broilers', grassPaddockId: 'p2' },
};
const { birdsOff } = tables.pasture;

const planOf = (more: Partial<NamedBatch> = {}, land: Partial<PastureCase> = {}): PasturePlan =>
  plannedPasture({
    ...newPastureRequest({ choices: { to: '2027-11-30' }, paddocks: newPaddocks(8) }),
    ...land,
    batches: [{ ...BIRDS, ...more }],
  });

const textOf = ({ issues }: PasturePlan, asked: string) =>
  issues.find(({ code }) => code === asked)?.text;

/** Days on which cattle are in a paddock. */
const cattleDays = ({ moves }: PasturePlan, id: string): string[] =>
  moves
    .filter(({ paddockId }) => paddockId === id)
    .flatMap(({ from, days }) => Array.from({ length: days }, (_, k) => addDays(from, k)));

describe('birds that stand in a paddock', () => {
  it('keep cattle off it while they are there and for 21 days after', () => {
    const plan = planOf();
    const [pens] = plan.pens;
    expect(pens).toMatchObject({ batchId: 'broilers', paddockId: 'p2', from: '2027-06-02' });
    const { leaveOn, cattleFrom } = pens!;
    expect(cattleFrom.value).toBe(addDays(leaveOn, 21));
    const isShut = (day: string) => pens!.from <= day && day < String(cattleFrom.value);
    // Without them the round goes there in those days.
    expect(cattleDays(planOf({ grassPaddockId: 'gone' }), 'p2').some(isShut)).toBe(true);
    expect(cattleDays(plan, 'p2').filter(isShut)).toEqual([]);
    expect(cattleDays(plan, 'p2').some((day) => cattleFrom.value <= day)).toBe(true);
    expect(textOf(plan, 'birds-in-paddock')).toMatch(
      /^Broilers stand in Paddock 2 from .*2 Jun.* to .*\. Keep cattle off it then and for 21 days after: it can be grazed again from /,
    );
  });

  it('leave their manure in it', () => {
    const [few, many] = [100, 200].map((wantedBirds) =>
      planOf({ wantedBirds }).paddocks.map(({ nitrogen }) => nitrogen.value),
    );
    expect(many![1]! - few![1]!).toBeGreaterThan(5);
    expect(many!.toSpliced(1, 1)).toEqual(few!.toSpliced(1, 1));
  });

  it('change nothing of a farm that names no paddock', () => {
    const { grassPaddockId: _named, ...unnamed } = BIRDS;
    const base = newPastureRequest({ choices: { to: '2027-11-30' }, paddocks: newPaddocks(8) });
    const none = plannedPasture(base);
    expect(plannedPasture({ ...base, batches: [unnamed] })).toEqual(none);
    expect(planOf({ grassPaddockId: 'gone' })).toEqual(none);
    expect(none.pens).toEqual([]);
  });

  it('are kept off a bed that is harvested', () => {
    const bed = (more: object) => ({
      paddocks: newPaddocks(8).map((each) => (each.id === 'p2' ? { ...each, ...more } : each)),
    });
    // 120 days before 1 September: 4 May, before they come.
    expect(textOf(planOf({}, bed({ harvestOn: '2027-09-01' })), 'birds-before-harvest')).toMatch(
      /^Broilers are to stand in Paddock 2 .* harvested from .*1 Sep.*: the last day there for birds is .*4 May/,
    );
    // They come while it is harvested.
    const inHarvest = { harvestOn: '2027-05-20', lastHarvestOn: '2027-07-01' };
    expect(textOf(planOf({}, bed(inHarvest)), 'birds-before-harvest')).toContain('after');
    // Long before the harvest, and after it, they may be there.
    expect(textOf(planOf({}, bed({ harvestOn: '2028-05-01' })), 'birds-before-harvest')).toBe(
      undefined,
    );
    const over = { harvestOn: '2027-05-01', lastHarvestOn: '2027-06-01' };
    expect(textOf(planOf({}, bed(over)), 'birds-before-harvest')).toBe(undefined);
  });

  it('follow no herd as well', () => {
    const plan = planOf({}, { herds: [newHerd({ followedByBatchId: 'broilers' })] });
    expect(plan.birds).toEqual([]);
    expect(textOf(plan, 'birds-in-two-places')).toMatch(/stand in Paddock 2 and to follow Cows/);
  });

  it('leave no plan without the herd that is there when they come', () => {
    const herds = [newHerd({ inPaddockId: 'p2', inSince: '2027-05-30' })];
    const plan = planOf({}, { herds, today: '2027-06-02' });
    expect(
      cattleDays(plan, 'p2').filter((day) => day < String(plan.pens[0]!.cattleFrom.value)),
    ).toEqual([]);
    expect(plan.moves.length).toBeGreaterThan(3);
  });

  it('share no day with cattle, whatever the land and the dates', () => {
    const order = fc.record({
      count: fc.integer({ min: 1, max: 9 }),
      areaM2: fc.integer({ min: 1500, max: 12_000 }),
      at: fc.nat(8),
      out: fc.integer({ min: 0, max: 150 }),
      head: fc.integer({ min: 1, max: 12 }),
    });
    fc.assert(
      fc.property(order, ({ count, areaM2, at, out, head }) => {
        const id = `p${(at % count) + 1}`;
        const moveOutDate = addDays('2027-05-01', out);
        const plan = planOf(
          { grassPaddockId: id, arrivalDate: addDays(moveOutDate, -21), moveOutDate },
          {
            paddocks: newPaddocks(count, { areaM2 }),
            herds: [newHerd({ groups: [{ classId: 'cow-calf', head }] })],
          },
        );
        const [pens] = plan.pens;
        const freeFrom = addDays(pens!.leaveOn, birdsOff.value);
        const shared = cattleDays(plan, id).filter((day) => pens!.from <= day && day < freeFrom);
        expect(shared).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });
});
