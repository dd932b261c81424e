import { describe, expect, it } from '@jest/globals';
import { problemsOfChecks } from '../../shared/checks/problems-of-checks.js';
import { readSeed } from '../../src/reference/load-tables.js';
import { loadChecks } from '../../src/reference/load-checks.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { tables } from '../support/factories.js';

const TOPICS = { eggs: { title: 'Eggs', by: { laid: () => 1 } } };
const good = {
  id: 'eggs-1',
  what: 'Eggs of a year',
  source: 'ARITHMETIC',
  where: 'page 1',
  mark: 'computed',
  theirs: 250,
  unit: 'eggs',
  by: 'laid',
  given: { weeks: 52, strain: 'brown-layer' },
  allowedAmount: 10,
  why: 'rounding',
};
const fieldsOf = (...rows: unknown[]): string[] =>
  problemsOfChecks({ eggs: rows }, TOPICS, tables).map(({ field }) => field);

describe('problemsOfChecks', () => {
  it('finds nothing in a row that is as described', () => {
    expect(fieldsOf(good)).toEqual([]);
  });

  it.each([
    ['a source that is not listed', { source: 'NOWHERE' }, 'eggs-1.source'],
    ['a mark better than that of its source', { mark: 'published' }, 'eggs-1.mark'],
    ['a computation that the topic does not have', { by: 'hatched' }, 'eggs-1.by'],
    ['a field that is not described', { tolerance: 3 }, '0.tolerance'],
    ['a unit that is not known', { unit: 'dozen' }, '0.unit'],
    ['both allowances', { allowedShare: 0.1 }, '0.allowedShare'],
    ['no allowance', { allowedAmount: undefined }, '0.allowedShare'],
    ['no reason for what is allowed', { why: undefined }, '0.why'],
    [
      'something given that is neither number nor word',
      { given: { weeks: [52] } },
      '0.given.weeks',
    ],
  ])('names %s', (_, change, field) => {
    expect(fieldsOf({ ...good, ...change })).toContain(`seeds/checks/eggs.json: ${field}`);
  });

  it('names an id that comes twice, and a computation that no row names', () => {
    expect(fieldsOf(good, good)).toEqual(['seeds/checks/eggs.json: eggs-1.id']);
    expect(fieldsOf()).toEqual(['seeds/checks/eggs.json: laid']);
  });
});

describe('loadChecks', () => {
  it('names the file that cannot be read', () => {
    const broken = (file: string): string =>
      file === 'checks/growth.json' ? '[{]' : readSeed(file);
    expect(() => loadChecks(tables, broken)).toThrow(FieldError);
    expect(() => loadChecks(tables, broken)).toThrow(/growth\.json/);
  });
});
