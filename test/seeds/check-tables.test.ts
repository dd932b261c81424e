import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { FieldError } from '../../shared/problems/field-problem.js';
import { problemsOfTables } from '../../shared/tables/check-tables.js';
import { TABLE_FIELDS } from '../../shared/tables/table-descriptions.js';
import { TABLE_FILES, type Tables } from '../../shared/tables/tables.js';
import { loadTables, readSeed } from '../../src/reference/load-tables.js';
import { changed } from '../support/bad-values.js';
import { spoiled, spoilings } from '../support/described-rows.js';
import { tables } from '../support/factories.js';

/** What is found when one value of the tables is another. */
const foundWith = (path: string, value: unknown) =>
  problemsOfTables(changed(tables, path, value) as unknown as Record<string, unknown>);

const names = Object.keys(TABLE_FIELDS) as (keyof Tables)[];

describe('tables as they are loaded', () => {
  it('are all described, and all in order', () => {
    expect([...names].sort()).toEqual(Object.keys(TABLE_FILES).sort());
    expect(problemsOfTables(tables as unknown as Record<string, unknown>)).toEqual([]);
  });

  it.each(names)('are refused when one value of %s is spoiled, by the name of its file', (name) => {
    const own = { [name]: tables[name] };
    const ways = spoilings(TABLE_FIELDS[name], tables[name], name).filter(
      ({ path }) => path !== name,
    );
    fc.assert(
      fc.property(fc.constantFrom(...ways), (spoiling) => {
        const found = problemsOfTables({ ...tables, ...spoiled(own, spoiling) });
        expect(found).not.toEqual([]);
        for (const { field, fix } of found) {
          expect(field.startsWith(`seeds/${TABLE_FILES[name]}: `)).toBe(true);
          expect(fix).toMatch(/^[A-Z].*\.$/);
        }
      }),
      { numRuns: 30, seed: 20261126 },
    );
  });

  it.each([
    [
      'a figure that is out of its bounds',
      'strains.0.leave.ageDays',
      900,
      { field: 'seeds/strains.json: fast-meat.leave.ageDays', min: 0, max: 400, unit: 'day' },
    ],
    [
      'a source that is not listed',
      'strains.0.waste.sources.0',
      'HEARSAY',
      { field: 'seeds/strains.json: fast-meat.waste.sources.0', given: 'HEARSAY' },
    ],
    [
      'a mark that is not of the scale',
      'materials.0.mark',
      'certain',
      { code: 'not-allowed', allowed: expect.arrayContaining(['published', 'estimate']) },
    ],
    [
      'a row of another table that is not there',
      'strains.0.losses',
      'none',
      { field: 'seeds/strains.json: fast-meat.losses', allowed: expect.arrayContaining(['layer']) },
    ],
    [
      'two rows of one id',
      'soils.1.id',
      tables.soils[0]!.id,
      { field: 'seeds/soils.json: sand.id', code: 'conflict' },
    ],
    [
      'a low above its high',
      'processing.dressing.0.low',
      0.77,
      { field: 'seeds/processing.json: dressing.fast-meat.low', max: 0.76 },
    ],
    [
      'points out of order',
      'water.layers.points.1.ageDays',
      0,
      { field: 'seeds/water.json: layers.points.1.ageDays', min: 0 },
    ],
    [
      'feeds of a program out of order',
      'feedPrograms.0.phases.1.fromDay',
      0,
      { field: 'seeds/feed-programs.json: broiler.phases.grower.fromDay', min: 0 },
    ],
    [
      'work that neither has a length nor goes on until anything',
      'herdTaskTemplates.0.lengthDays',
      undefined,
      { field: expect.stringMatching(/herd-task-templates.*\.lengthDays$/), code: 'missing' },
    ],
    [
      'a field that is not described',
      'light.lamps',
      3,
      { field: 'seeds/light.json: lamps', code: 'not-allowed' },
    ],
  ])('are refused with %s', (_what, path, value, problem) => {
    const [first, ...others] = foundWith(path, value);
    expect(first).toMatchObject(problem);
    expect(others.length).toBeLessThan(2);
  });

  it('are refused when a file cannot be read, by its name', () => {
    const read = (file: string) => (file === 'light.json' ? '{ "targetH": ' : readSeed(file));
    expect(() => loadTables(read)).toThrow(FieldError);
    expect(() => loadTables(read)).toThrow(/seeds\/light\.json cannot be read: .+ Check for a/);
  });
});
