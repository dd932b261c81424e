import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { Places } from '../../shared/buying/places.js';

/** Keeps the least of the ways to each place, as the search for purchases does. */
function leastOf(places: Places, reached: readonly (readonly [place: number, way: number])[]) {
  places.begin();
  for (const [place, way] of reached) {
    const at = places.slotOf(place);
    const known = places.wayAt(at);
    if (known === -1) places.take(at, way);
    else if (way < known) places.put(at, way);
  }
  return places.all();
}

function leastByMap(reached: readonly (readonly [place: number, way: number])[]): number[] {
  const byPlace = new Map<number, number>();
  for (const [place, way] of reached)
    if (way < (byPlace.get(place) ?? Infinity)) byPlace.set(place, way);
  return [...byPlace.values()];
}

describe('ways by place', () => {
  it('lie far apart where all places are whole bags apart', () => {
    for (const bagKg of [20, 25, 32]) {
      const slots = new Places();
      slots.begin();
      const places = Array.from({ length: 500 }, (_, bags) => bags * bagKg * 1e5);
      // 500 that fall by chance on 1,024 lie on 395 of them; by the low bits they lie on 32 at most.
      expect(new Set(places.map((place) => slots.slotOf(place))).size).toBeGreaterThan(200);
    }
  });

  it('are those of a map, in its order, also of many places and when begun anew', () => {
    // Tons of feed in hundred-thousandths of a kilogram are more than 32 bits hold.
    const place = fc.oneof(fc.nat(300), fc.maxSafeNat());
    const reached = fc.array(fc.tuple(place, fc.nat(1e6)), { maxLength: 3000, size: 'max' });
    fc.assert(
      fc.property(fc.array(reached, { minLength: 1, maxLength: 4 }), (rounds) => {
        const places = new Places();
        for (const round of rounds) expect(leastOf(places, round)).toEqual(leastByMap(round));
      }),
      { numRuns: 20 },
    );
  });
});
