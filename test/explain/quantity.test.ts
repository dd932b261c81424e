import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { weakestMark } from '../../shared/explain/formula.js';
import { ALL_FORMULAS, FORMULAS } from '../../shared/formulas/formulas.js';
import { quantitiesIn } from '../../shared/explain/quantities-in.js';
import {
  from,
  input,
  quantity,
  round6,
  fromTable,
  givenOrTable,
} from '../../shared/explain/quantity.js';
import { tables } from '../support/factories.js';

describe('round6', () => {
  it.each([
    [1234567, 1234570],
    [0.00012345678, 0.000123457],
    [-2.7182818, -2.71828],
    [0, 0],
    [100, 100],
    [999999.6, 1000000],
    [22.68, 22.68],
  ])('rounds %d to %d', (value, rounded) => {
    expect(round6(value)).toBe(rounded);
  });

  it('stays within half a unit of the sixth digit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-9, max: 1e12, noNaN: true }),
        fc.constantFrom(1, -1),
        (size, sign) => {
          const value = sign * size;
          expect(Math.abs(round6(value) / value - 1)).toBeLessThan(5.1e-6);
          expect(round6(round6(value))).toBe(round6(value));
        },
      ),
    );
  });

  it('makes no finite number infinite or NaN, however small or large', () => {
    for (const value of [1e-300, 1e-305, 1e-310, Number.MIN_VALUE, 1e300, Number.MAX_VALUE / 2]) {
      expect(Number.isFinite(round6(value))).toBe(true);
      expect(Number.isFinite(round6(-value))).toBe(true);
    }
  });
});

const formula = FORMULAS.get('birds-alive')!;

describe('quantity', () => {
  it('takes sources and mark of its formula unless it is given others, or weaker ones', () => {
    const plain = quantity('Birds', 10.1234567, 'count', formula, [
      input('Placed', 12, 'count', 'N'),
    ]);
    expect(plain).toEqual({
      label: 'Birds',
      value: 10.1235,
      unit: 'count',
      formula: 'birds-alive',
      inputs: [{ label: 'Placed', unit: 'count', value: 12, symbol: 'N' }],
      sources: [],
      mark: 'computed',
    });
    const other = quantity('Birds', 1, 'count', formula, [], {
      sources: ['NRC1994'],
      mark: 'from-memory',
    });
    expect(other).toMatchObject({ sources: ['NRC1994'], mark: 'from-memory' });
    const better = quantity('Birds', 1, 'count', formula, [], { mark: 'published' });
    expect(better.mark).toBe('computed'); // a formula that is worked out makes no published number
  });

  it('rests on rows of tables and on inputs read from them, whatever else is said', () => {
    const row = { sources: ['NRC1984'], mark: 'second-hand' as const };
    const worse = { sources: ['PLANNING_GUESS'], mark: 'estimate' as const };
    const made = quantity('Birds', 1, 'count', formula, [fromTable(row, 'Loss', 0.02, 'share')], {
      sources: ['NRC1994'],
      rows: [worse, row],
    });
    expect(made.sources).toEqual(['NRC1994', 'PLANNING_GUESS', 'NRC1984']);
    expect(made.mark).toBe('estimate');
    expect(made.inputs[0]).toMatchObject({ label: 'Loss', mark: 'second-hand' });
    expect(JSON.stringify(made.inputs)).not.toContain('NRC1984');
  });

  it('takes what the user gave for the farm’s own, and the table’s for the table’s', () => {
    const row = { sources: ['NRC1984'], mark: 'second-hand' as const };
    expect(givenOrTable(true, row, 'Loss', 0.02, 'share').mark).toBe('own-record');
    expect(givenOrTable(false, row, 'Loss', 0.02, 'share').mark).toBe('second-hand');
  });
});

describe('weakestMark', () => {
  it('lets the weakest link decide', () => {
    expect(weakestMark('published', 'computed')).toBe('computed');
    expect(weakestMark('estimate', 'from-memory', 'published')).toBe('estimate');
    expect(weakestMark('from-memory', 'second-hand')).toBe('from-memory');
    expect(weakestMark('own-record', 'published')).toBe('published');
    expect(weakestMark('assumed', 'estimate')).toBe('assumed');
    expect(weakestMark()).toBe('own-record');
  });
});

describe('FORMULAS', () => {
  it('say what they do in words and in symbols, and name known sources', () => {
    expect(FORMULAS.size).toBeGreaterThan(40);
    for (const [id, formula] of FORMULAS) {
      expect(formula.id).toBe(id);
      expect(formula.title.length).toBeGreaterThan(3);
      expect(formula.words).toMatch(/\.$/);
      expect(formula.symbols.length).toBeGreaterThan(2);
      for (const source of formula.sources) expect(Object.keys(tables.sources)).toContain(source);
    }
  });
});

describe('quantitiesIn', () => {
  it('finds quantities however deep they lie, in order', () => {
    const q = (label: string) => quantity(label, 1, 'count', FORMULAS.get('birds-alive')!, []);
    const found = quantitiesIn({
      a: q('one'),
      b: [{ c: q('two') }, null, 3, 'text'],
      d: undefined,
    });
    expect(found.map((each) => each.label)).toEqual(['one', 'two']);
  });

  it('is no better supported than an input that was itself computed, and hands on its range', () => {
    const guess = quantity('Birds', 10, 'count', formula, [], {
      mark: 'estimate',
      outside: 'The table ends at 56 days.',
    });
    const result = quantity('All', 20, 'count', formula, [from(guess, 'N')]);
    expect(result.mark).toBe('estimate');
    expect(result.outside).toBe('The table ends at 56 days.');
    expect(result.inputs[0]).toMatchObject({ label: 'Birds', symbol: 'N', mark: 'estimate' });
  });
});

describe('FORMULAS', () => {
  it('give every formula an id of its own', () => {
    const ids = ALL_FORMULAS.map((each) => each.id);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
  });
});
