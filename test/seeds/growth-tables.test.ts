import { describe, expect, it } from '@jest/globals';
import type { GrowthPoint, GrowthTable } from '../../shared/tables/bird-tables.js';
import { tables } from '../support/factories.js';

/** Era that a source belongs to: the birds of its year. */
const ERAS: Readonly<Record<string, string>> = {
  NRC1984: '1980s',
  NRC1994: '1994',
  PS2020_GROWTH: '2020',
  PS2020_FEED: '2020',
  KJPS48: '2020',
  PS2003_1957: '1957', // printed in 2003, on birds kept since 1957
  HERITAGE_LINE: '2010s',
  PS2020_WHITE_HEN: '2020',
  PS2020_BROWN_HEN: '2020',
};
const isPulletTable = (table: GrowthTable): boolean => table.id.includes('pullet');
const lines = (table: GrowthTable): (readonly GrowthPoint[])[] =>
  [table.asHatched, table.male, table.female].filter((points) => points !== undefined);

describe('growth tables', () => {
  it('never mix eras: every source of a meat table is of its one era', () => {
    const meat = tables.growthTables.filter((t) => !isPulletTable(t));
    expect(meat).toHaveLength(7);
    for (const table of meat) {
      const eras = new Set(table.sources.map((source) => ERAS[source]));
      expect(eras.size).toBe(1);
      expect([...eras][0]).toBeDefined();
    }
  });

  it('say in the name of a pullet table that grown hens of a later trial carry it on', () => {
    // Pullets to 20 weeks are of 1994 (from memory); grown hens after that are of 2020. Eggs, not meat:
    // pullets did not change as meat birds did, but it is two sources and the name must say so.
    const pullets = tables.growthTables.filter(isPulletTable);
    expect(pullets).toHaveLength(2);
    for (const table of pullets) {
      expect(table.name).toContain('1994, then a 2020 trial');
      const joint = table.female!.findLastIndex((p) => p.cumulativeFeedKg !== undefined);
      expect(table.female![joint]!.ageDays).toBe(140); // feed is printed for pullets only
    }
  });

  it('start at hatch and rise in age, weight and feed', () => {
    for (const table of tables.growthTables) {
      expect(lines(table).length).toBeGreaterThan(0);
      for (const points of lines(table)) {
        expect(points[0]!.ageDays).toBe(0);
        expect(points[0]!.weightKg).toBeGreaterThanOrEqual(0.03);
        expect(points[0]!.weightKg).toBeLessThanOrEqual(0.045);
        for (let k = 1; k < points.length; k++) {
          const [a, b] = [points[k - 1]!, points[k]!];
          expect(b.ageDays).toBeGreaterThan(a.ageDays);
          expect(b.weightKg).toBeGreaterThan(a.weightKg);
          if (b.cumulativeFeedKg !== undefined) {
            expect(b.cumulativeFeedKg).toBeGreaterThan(a.cumulativeFeedKg!);
          }
        }
      }
    }
  });

  it('give feed, or a model of it that says so', () => {
    for (const table of tables.growthTables) {
      const printed = lines(table).every(
        (points) => 2 <= points.filter((p) => p.cumulativeFeedKg !== undefined).length,
      );
      expect(printed || table.feedModel !== undefined).toBe(true);
    }
  });

  it('give both sexes, whether printed, split or by a curve', () => {
    for (const table of tables.growthTables) {
      const both =
        table.asHatched !== undefined ||
        (table.female && (table.male || table.maleGompertz)) ||
        (table.male && table.sexRatio);
      expect(Boolean(both)).toBe(true);
    }
  });
});
