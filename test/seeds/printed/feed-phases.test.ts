import { describe, expect, it } from '@jest/globals';
import { rowById } from '../../../shared/tables/tables.js';
import { tables } from '../../support/factories.js';

const phase = (program: string, id: string) =>
  rowById(rowById(tables.feedPrograms, program).phases, id);

describe('feed program', () => {
  it('starts a meat bird at 23 %, then 20 % from 3 and 18 % from 6 weeks (veterinary manual, after 1994)', () => {
    for (const [id, fromDay, percent] of [
      ['starter', 0, 23],
      ['grower', 21, 20],
      ['finisher', 42, 18],
    ] as const) {
      const got = phase('broiler', id);
      expect(got.fromDay).toBe(fromDay);
      expect(got.proteinPercentLow).toBeLessThanOrEqual(percent);
      expect(got.proteinPercentHigh).toBeGreaterThanOrEqual(percent);
      expect(got.energyKcalPerKg).toBe(3200);
    }
  });

  it('rears a pullet on 18 % to 6 and 15 % to 14 weeks (1984 edition, table of pullets)', () => {
    expect(phase('pullet', 'starter').proteinPercentLow).toBe(18);
    expect(phase('pullet', 'grower').fromDay).toBe(42);
    expect(phase('pullet', 'grower').proteinPercentLow).toBe(15);
    expect(phase('pullet', 'developer').fromDay).toBe(98);
  });

  it('gives a pullet 17 % protein and 2 % calcium from 18 weeks to the first egg (from memory)', () => {
    const preLay = phase('pullet', 'pre-lay');
    expect(preLay).toMatchObject({ fromDay: 126, proteinPercentLow: 17, calciumPercent: 2 });
  });

  it('gives no feed of 3 % calcium or more before the first egg', () => {
    const early = rowById(tables.feedPrograms, 'pullet').phases.filter(
      (p) => p.fromDay !== 'first-egg',
    );
    expect(early).toHaveLength(4);
    for (const each of early) expect(each.calciumPercent ?? 1).toBeLessThan(3);
  });
});
