import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { Batch } from '../../shared/farm/batch.js';
import type { Facility } from '../../shared/farm/facility.js';
import type { Stocking } from '../../shared/plan/stocking.js';
import { M2_PER_FT2 } from '../../shared/units/convert.js';
import { newBrooder, newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const PLACES: readonly Facility[] = [
  newBrooder({ lengthM: 3.048, widthM: 1.8288 }), // 10 by 6 ft
  // Pens of 10 by 12 ft, two of them.
  { kind: 'field-pen', id: 'pen', name: 'Pens', floorM2: 120 * M2_PER_FT2, count: 2 },
  {
    ...{ kind: 'coop', id: 'coop', name: 'Coop', floorM2: 100 * M2_PER_FT2 },
    ...{ roostM: 20, nestBoxes: 10, runM2: 0 },
  },
];
const IDS = { brooderId: 'brooder', penId: 'pen', coopId: 'coop' } as const;
const planOf = (batch: Partial<Batch>) =>
  plannedBatch(newRequest({ batch: { ...IDS, ...batch }, facilities: PLACES }));
const byDay = (rows: readonly Stocking[]): Record<string, number | undefined> =>
  Object.fromEntries(rows.map(({ when, fits }) => [when, fits?.value]));

describe('birds that fit', () => {
  it('are those of the extension table and of 1.5 square feet in a pen', () => {
    const { stocking } = planOf({ wantedBirds: 100, moveOutDate: '2027-06-02' }).space;
    // 60 ft² by a quarter of a square foot, then three quarters; 240 ft² by 1.5.
    expect(byDay(stocking)).toEqual({
      'At arrival': 240,
      'Last day in the brooder': 80,
      'At the move': 160,
      'On the last day': 160,
    });
    expect(stocking[2]!.fits!.sources).toContain('PASTURED_PEN');
    expect(stocking[0]!.fits!.sources).toContain('EXT_SPACE');
  });

  it('of a brooder they never leave are those still there on its last day', () => {
    const evenings = { away: [], hoursByWeekday: [2, 2, 2, 2, 2, 5, 3] };
    const { space, leaving } = plannedBatch(
      newRequest({
        batch: { ...IDS, wantedBirds: 66, leaveAgeDays: 54, moveOutDate: '2027-08-30' },
        facilities: PLACES,
        people: [
          { id: 'a', name: 'A', ...evenings },
          { id: 'b', name: 'B', ...evenings },
        ],
      }),
    );
    const [first, ...others] = leaving!.processingDays;
    const byWhen = new Map(space.stocking.map((row) => [row.when, row]));
    expect(byWhen.get('Before the first are processed')).toMatchObject({ on: first!.on });
    const last = byWhen.get('Last day in the brooder')!;
    expect(last.on).toBe(others.at(-1)!.on);
    expect(Math.abs(last.birds.value - others.at(-1)!.birds)).toBeLessThanOrEqual(1);
  });

  it('are hens in a coop at the first egg, by two square feet', () => {
    const pullets = { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' } as const;
    const { stocking } = planOf({ ...pullets, wantedBirds: 30 }).space;
    expect(byDay(stocking)['At the first egg']).toBe(50);
    expect(stocking.at(-1)!.birds.value).toBeGreaterThanOrEqual(30);
  });

  it('go by the floor a bird that the household wants, and so do pens and their need', () => {
    const usual = { orderedBirds: 130, wantedBirds: 125 };
    const { space, outdoors, issues } = planOf({ ...usual, homeFloorM2: 2 * M2_PER_FT2 });
    expect(byDay(space.stocking)['At the move']).toBe(120);
    expect(outdoors.floorNeeded!.spread).toBeUndefined();
    expect(outdoors.pensNeeded!.value).toBe(3);
    expect(issues.map(({ code }) => code)).toContain('pens-short');
    expect(planOf(usual).outdoors.pensNeeded!.value).toBe(2);
  });

  it('are enough whenever the floor is, and their weight on it then is within welfare standards', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 600 }),
        fc.integer({ min: 45, max: 90 }),
        (wantedBirds, leaveAgeDays) => {
          const { space, outdoors } = planOf({ wantedBirds, leaveAgeDays });
          const end = space.stocking.find(({ when }) => when === 'On the last day')!;
          const haveM2 = 240 * M2_PER_FT2;
          if (end.needed.value <= haveM2) {
            expect(end.birds.value).toBeLessThanOrEqual(end.fits!.value + 1);
            expect(outdoors.density!.value).toBeLessThanOrEqual(30 + 1e-6);
          } else {
            expect(end.birds.value).toBeGreaterThanOrEqual(end.fits!.value);
          }
        },
      ),
      { numRuns: 10 },
    );
  });

  it('are told of the coop alone where a hen brings them up', () => {
    const { stocking } = planOf({ origin: 'hen', hatchToArrivalDays: 0 }).space;
    expect(stocking.some(({ isBrooder }) => isBrooder)).toBe(false);
  });
});
