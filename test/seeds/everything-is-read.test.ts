import { describe, expect, it } from '@jest/globals';
import { tables } from '../support/factories.js';
import { fieldOf, leavesIn, recordedTables } from './recorded-tables.js';
import { useEveryTable } from './use-every-table.js';

describe('seeds', () => {
  const recorded = recordedTables(tables);
  useEveryTable(recorded.tables);

  it('hold no value, mark or source that nothing reads', () => {
    const unread = leavesIn(tables).filter((path) => !recorded.read.has(path));
    const counts = new Map<string, string[]>();
    for (const path of unread) counts.set(fieldOf(path), [...(counts.get(fieldOf(path)) ?? []), path]);
    expect([...counts].map(([field, paths]) => `${field} ${paths.length}: ${paths.slice(0, 3).join(' ')}`)).toEqual([]);
  });
});
