import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { isSame, keepMine, mergeRow } from '../../shared/farm/merge-row.js';

const LOADED = {
  name: 'Adult A',
  away: [{ from: '2027-05-10', to: '2027-05-14' }],
  hoursByWeekday: [1, 1, 1, 1, 1, 4, 4],
  startH: { weekday: 17, weekend: 8 },
};
const SUMMER = { from: '2027-07-01', to: '2027-07-09' };
const FALL = { from: '2027-10-01', to: '2027-10-03' };

describe('two changes of one row', () => {
  it('are both kept when they are of different fields, parts, places and entries', () => {
    const { row, clashes } = mergeRow(
      LOADED,
      {
        ...LOADED,
        name: 'Ann',
        away: [...LOADED.away, SUMMER],
        hoursByWeekday: [2, 1, 1, 1, 1, 4, 4],
        startH: { weekday: 16, weekend: 8 },
      },
      {
        ...LOADED,
        away: [FALL],
        hoursByWeekday: [1, 1, 1, 1, 1, 4, 6],
        startH: { weekday: 17, weekend: 9 },
      },
    );
    expect(clashes).toEqual([]);
    expect(row).toEqual({
      name: 'Ann',
      away: [FALL, SUMMER],
      hoursByWeekday: [2, 1, 1, 1, 1, 4, 6],
      startH: { weekday: 16, weekend: 9 },
    });
  });

  it('clash where both changed the same to different values, by the path of the field', () => {
    const merged = mergeRow(
      LOADED,
      { ...LOADED, name: 'Mine', startH: { weekday: 16, weekend: 8 } },
      { ...LOADED, name: 'Theirs', startH: { weekday: 15, weekend: 8 } },
    );
    expect(merged.clashes).toEqual([
      { field: 'name', mine: 'Mine', theirs: 'Theirs' },
      { field: 'startH.weekday', mine: 16, theirs: 15 },
    ]);
    expect(merged.row).toMatchObject({ name: 'Theirs', startH: { weekday: 15 } });
    expect(keepMine(merged, [merged.clashes[1]!])).toMatchObject({
      name: 'Theirs',
      startH: { weekday: 16, weekend: 8 },
    });
  });

  it.each([
    ['one changed and the other took away the same entry', [SUMMER], []],
    ['both put the same entries in another order', [FALL, SUMMER], [SUMMER, FALL, SUMMER]],
  ])('clash when %s', (_what, mine, theirs) => {
    const loaded = { away: [{ from: '2027-01-01', to: '2027-01-02' }] };
    const { clashes } = mergeRow(loaded, { away: mine }, { away: theirs });
    expect(clashes.map(({ field }) => field)).toEqual(['away']);
  });

  it('clash when one walks the stops in another order and the other adds one', () => {
    const { clashes } = mergeRow(
      { stops: ['a', 'b'] },
      { stops: ['b', 'a'] },
      { stops: ['a', 'b', 'c'] },
    );
    expect(clashes).toHaveLength(1);
  });

  it('clash wherever they differ when nobody knows what both began from', () => {
    const { row, clashes } = mergeRow(undefined, { a: 1, b: 2 }, { a: 1, b: 3, c: 4 });
    expect(clashes.map(({ field }) => field)).toEqual(['b', 'c']);
    expect(row).toEqual({ a: 1, b: 3, c: 4 });
  });
});

const value = fc.oneof(
  fc.constantFrom(undefined, null, true, 'x', 1, 2),
  fc.array(fc.integer({ min: 0, max: 3 }), { maxLength: 3 }),
  fc.array(fc.record({ from: fc.constantFrom('a', 'b', 'c') }), { maxLength: 3 }),
  fc.dictionary(fc.constantFrom('p', 'q'), fc.integer({ min: 0, max: 2 })),
);
const row = fc.dictionary(fc.constantFrom('a', 'b', 'c', 'd'), value);

describe('any two changes of any row', () => {
  it('one change alone is kept whole, whichever side made it', () => {
    fc.assert(
      fc.property(row, row, (loaded, changed) => {
        for (const merged of [
          mergeRow(loaded, changed, loaded),
          mergeRow(loaded, loaded, changed),
        ]) {
          expect(merged.clashes).toEqual([]);
          expect(isSame(merged.row, changed)).toBe(true);
        }
      }),
    );
  });

  it('the same change twice is that change', () => {
    fc.assert(
      fc.property(row, row, (loaded, changed) => {
        const merged = mergeRow(loaded, changed, changed);
        expect(merged.clashes).toEqual([]);
        expect(isSame(merged.row, changed)).toBe(true);
      }),
    );
  });

  it('a field that neither changed stays, and one that a single side changed is as that side has it', () => {
    fc.assert(
      fc.property(row, row, row, (loaded, mine, theirs) => {
        const merged = mergeRow(loaded, mine, theirs);
        for (const name of ['a', 'b', 'c', 'd']) {
          const isMine = !isSame(mine[name], loaded[name]);
          const isTheirs = !isSame(theirs[name], loaded[name]);
          if (isMine && isTheirs) continue;
          expect(isSame(merged.row[name], isMine ? mine[name] : theirs[name])).toBe(true);
        }
      }),
    );
  });

  it('clash in the same fields whoever saves first', () => {
    fc.assert(
      fc.property(row, row, row, (loaded, mine, theirs) => {
        const fields = (merged: ReturnType<typeof mergeRow>) =>
          merged.clashes.map(({ field }) => field).sort();
        expect(fields(mergeRow(loaded, mine, theirs))).toEqual(
          fields(mergeRow(loaded, theirs, mine)),
        );
      }),
    );
  });

  it('keeping mine in every clash leaves nothing of mine undone', () => {
    fc.assert(
      fc.property(row, row, row, (loaded, mine, theirs) => {
        const merged = mergeRow(loaded, mine, theirs);
        const kept = keepMine(merged, merged.clashes);
        for (const clash of merged.clashes) {
          const at = clash.field
            .split('.')
            .reduce<unknown>(
              (of, name) => (of as Record<string, unknown> | undefined)?.[name],
              kept,
            );
          expect(isSame(at, clash.mine)).toBe(true);
        }
      }),
    );
  });
});
