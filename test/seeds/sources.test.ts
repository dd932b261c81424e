import { describe, expect, it } from '@jest/globals';
import { MARK_MEANING, weakestMark, type Mark } from '../../shared/explain/formula.js';
import { TABLE_FILES } from '../../shared/tables/tables.js';
import { tables } from '../support/factories.js';

interface Found {
  readonly path: string;
  readonly row: Record<string, unknown>;
}

/** Every object in the tables, with the path to it. The list of sources itself is left out. */
function objectsIn(part: unknown, path: string): Found[] {
  if (typeof part !== 'object' || part === null) return [];
  const own = Array.isArray(part) ? [] : [{ path, row: part as Record<string, unknown> }];
  return own.concat(
    Object.entries(part).flatMap(([key, value]) => objectsIn(value, `${path}.${key}`)),
  );
}
const { sources, ...rest } = tables;
const objects = Object.entries(rest).flatMap(([name, table]) => objectsIn(table, name));
const sourced = objects.filter(({ row }) => 'sources' in row || 'factorSources' in row);
const MARKS = Object.keys(MARK_MEANING);

describe('sources', () => {
  it('are named by the document, never by the place on the web where it was read', () => {
    const named = Object.entries(sources).filter(([, { publisher, title, note = '' }]) =>
      /weak host|\brepost|web page copy/i.test(`${publisher} ${title} ${note}`),
    );
    expect(named.map(([id]) => id)).toEqual([]);
  });
});

describe('seeds', () => {
  it('hold every table that the core knows', () => {
    expect(Object.keys(tables).sort()).toEqual(Object.keys(TABLE_FILES).sort());
  });

  it('name at least one source in every sourced row, and only sources that are listed', () => {
    expect(sourced.length).toBeGreaterThan(100);
    const wrong = sourced.flatMap(({ path, row }) => {
      const ids = (row['sources'] ?? row['factorSources']) as string[];
      return ids.length === 0
        ? [`${path}: none`]
        : ids.filter((id) => !(id in sources)).map((id) => `${path}: ${id}`);
    });
    expect(wrong).toEqual([]);
  });

  it('carry a known mark beside every source', () => {
    const wrong = sourced.filter(
      ({ row }) => !MARKS.includes(String(row['mark'] ?? row['factorMark'])),
    );
    expect(wrong.map((w) => w.path)).toEqual([]);
    const marks = objects.flatMap(({ path, row }) =>
      Object.entries(row)
        .filter(([key]) => key.toLowerCase().endsWith('mark'))
        .filter(([, value]) => !MARKS.includes(String(value)))
        .map(([key]) => `${path}.${key}`),
    );
    expect(marks).toEqual([]);
  });

  it('claim no more for a row than the weakest source it rests on', () => {
    const wrong = sourced.flatMap(({ path, row }) => {
      const ids = (row['sources'] ?? row['factorSources']) as string[];
      const mark = (row['mark'] ?? row['factorMark']) as Mark;
      const weakest = weakestMark(...ids.map((id) => sources[id]!.mark));
      return weakestMark(mark, weakest) === mark ? [] : [`${path}: ${mark} on ${weakest}`];
    });
    expect(wrong).toEqual([]);
  });

  it('say of every source who published it, what it is and how it was read', () => {
    for (const [id, source] of Object.entries(sources)) {
      expect(id).toMatch(/^[A-Z0-9_]+$/);
      expect(MARKS).toContain(source.mark);
      expect(source.publisher.length).toBeGreaterThan(2);
      expect(source.title.length).toBeGreaterThan(5);
      expect(source.url).toMatch(/^(https?:\/\/\S+)?$/);
    }
  });

  it('never mark a row better than the best of its sources', () => {
    // A row may be worse: computed, or an estimate. It cannot be published when no source of it was.
    const wrong = sourced.filter(({ row }) => {
      const ids = (row['sources'] ?? row['factorSources']) as string[];
      const mark = row['mark'] ?? row['factorMark'];
      return mark === 'published' && !ids.some((id) => sources[id]?.mark === 'published');
    });
    expect(wrong.map((w) => w.path)).toEqual([]);
  });

  it('give every row of a list an id of its own', () => {
    const lists = [
      tables.strains,
      tables.growthTables,
      tables.feedPrograms,
      tables.broodingSchedules,
      tables.space.brooder,
      tables.losses,
      tables.processing.dressing,
      tables.layCurves,
      tables.materials,
      tables.moveOut,
      tables.taskTemplates,
      ...tables.moveOut.map((m) => m.rules),
      ...tables.feedPrograms.map((p) => p.phases),
    ];
    for (const list of lists) {
      const ids = list.map((row) => row.id);
      expect(new Set(ids).size).toBe(ids.length);
    }
  });

  it('keep low under high wherever both stand', () => {
    const wrong = objects.filter(({ row }) => Number(row['low']) > Number(row['high']));
    expect(wrong.map((w) => w.path)).toEqual([]);
    const bands = objects.filter(({ row }) => Number(row['lowC']) > Number(row['highC']));
    expect(bands.map((w) => w.path)).toEqual([]);
  });
});
