import { describe, expect, it } from '@jest/globals';
import { carriedKg, offBackKg } from '../../shared/pasture/carried.js';
import { digestibleEaten, digestibleShare, winterStand } from '../../shared/pasture/sward.js';
import { kindOf } from '../../shared/pasture/grass-kind.js';
import { rowById } from '../../shared/tables/tables.js';
import { tables } from '../support/factories.js';

const kind = kindOf(rowById(tables.forages, 'tall-fescue'), tables.grassGroups);
/** Let go to seed: stem, and dead leaf at its foot. */
const OLD = {
  ...winterStand(0),
  ...{ leafKg: 1200, leafAge: 700, stemKg: 1200, stemAge: 600, deadLeafKg: 1300, deadStemKg: 300 },
};

describe('what cattle eat of a stand', () => {
  it('is better than what stands there, the more so the less of it they eat', () => {
    const all = digestibleShare(kind, OLD, 900);
    const shares = [1, 0.8, 0.7, 0.6].map((share) => digestibleEaten(kind, OLD, 900, share));
    expect(shares[0]).toBeCloseTo(all, 9);
    for (let k = 1; k < shares.length; k++) expect(shares[k]!).toBeGreaterThan(shares[k - 1]!);
  });

  it('carries some of a beef cow’s milk on fescue gone to seed, and the rest is little of her weight', () => {
    // Journal of Animal Science 1979: cows on such fescue ate 58.3 % digestible, on clipped 60.8 %,
    // milked alike, and were 18 kg apart after 152 days. By the equations they are twice that apart.
    const cow = { weightKg: 500, milkKg: 8, weekOfLactation: 10, grainKg: 0, grainSparesKg: 0 };
    const of = rowById(tables.cattle.classes, 'cow-calf');
    const shortKg = (digestible: number): number =>
      cow.milkKg - carriedKg(of, { ...cow, digestibleShare: digestible })!.kg;
    expect(shortKg(0.583)).toBeLessThan(cow.milkKg);
    const apartKg = 152 * (offBackKg(shortKg(0.583)) - offBackKg(shortKg(0.608)));
    expect(apartKg).toBeGreaterThan(18 / 2.2);
    expect(apartKg).toBeLessThan(18 * 2.2);
  });
});
