import { describe, expect, it } from '@jest/globals';
import { rowById } from '../../shared/tables/tables.js';
import { tables } from '../support/factories.js';

describe('strains', () => {
  it('point only at rows that exist', () => {
    for (const strain of tables.strains) {
      for (const id of strain.growthTables) expect(rowById(tables.growthTables, id).id).toBe(id);
      for (const purpose of strain.purposes) {
        expect(rowById(tables.feedPrograms, strain.feedProgram[purpose]!)).toBeDefined();
      }
      expect(rowById(tables.losses, strain.losses)).toBeDefined();
      if (strain.purposes.includes('meat'))
        expect(rowById(tables.processing.dressing, strain.dressing!)).toBeDefined();
      expect(rowById(tables.moveOut, strain.moveOut)).toBeDefined();
      if (strain.purposes.includes('layers')) {
        expect(rowById(tables.layCurves, strain.layCurve!)).toBeDefined();
        expect(
          rowById(tables.losses, strain.layLosses ?? strain.losses).layYearPercent,
        ).toBeGreaterThan(0);
      }
    }
  });

  it('have a default schedule, standard and move-out rule to fall back on, exactly one of each', () => {
    const defaults = (rows: readonly { readonly default?: boolean }[]): number =>
      rows.filter((r) => r.default).length;
    expect(defaults(tables.broodingSchedules)).toBe(1);
    expect(defaults(tables.space.brooder)).toBe(1);
    for (const { rules } of tables.moveOut) expect(defaults(rules)).toBe(1);
  });

  it('feed every day from hatch on, and phases follow each other', () => {
    for (const { phases } of tables.feedPrograms) {
      expect(phases[0]!.fromDay).toBe(0);
      for (let k = 1; k < phases.length; k++) {
        const [before, after] = [phases[k - 1]!.fromDay, phases[k]!.fromDay];
        if (typeof after === 'number') expect(before).toBeLessThan(after);
      }
      for (const phase of phases)
        expect(phase.proteinPercentLow).toBeLessThanOrEqual(phase.proteinPercentHigh);
    }
  });
});
