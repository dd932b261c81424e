import { describe, expect, it } from '@jest/globals';
import type { Outline, Paddock } from '../../../shared/farm/paddock.js';
import { planeAt } from '../../../shared/maths/plane.js';
import type { SizingPart } from '../../../shared/plan/pasture/sizing-part.js';
import { newPaddocks, newPastureRequest } from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const sizingOf = (paddocks: Paddock[]): SizingPart =>
  plannedPasture(newPastureRequest({ paddocks, choices: { to: '2027-05-01' } })).stocking;

/** A square hectare, so many hundred meters east. */
function hectare(east: number): Outline {
  const plane = planeAt([-75.3, 42.9]);
  const at = (x: number, y: number) => plane.toCorner([100 * (east + x), 100 * y]);
  return [at(0, 0), at(1, 0), at(1, 1), at(0, 1)];
}

describe('the fence of all paddocks', () => {
  it('is measured where outlines are drawn, the shared side once', () => {
    const { allFence, energizer } = sizingOf(
      newPaddocks(3, { areaM2: 10_000 }).map((each, k) => ({ ...each, outline: hectare(k) })),
    );
    expect(allFence.value).toBeCloseTo(1000, 0);
    expect(allFence.spread).toBeUndefined();
    expect(allFence.mark).toBe('computed');
    // A joule for a mile, whatever the strands.
    expect(energizer.value).toBeCloseTo(1000 / 1609.344, 3);
  });

  it('is taken as a block of equal ones where only sizes are known, and says how much more it may be', () => {
    const { allFence } = sizingOf(newPaddocks(12, { areaM2: 5000 }));
    // Each of 50 by 100 m: 300 m around; six columns in two rows, counted by hand.
    expect(allFence.value).toBeCloseTo(46 * 50, 3);
    expect(allFence.spread!.high).toBeCloseTo(12 * 300, 3);
    expect(allFence.mark).toBe('assumed');
  });

  it('adds what is drawn and what is not', () => {
    const [one, two] = newPaddocks(2, { areaM2: 5000 });
    const { allFence } = sizingOf([{ ...one!, areaM2: 10_000, outline: hectare(0) }, two!]);
    expect(allFence.value).toBeCloseTo(400 + 300, 0);
  });
});
