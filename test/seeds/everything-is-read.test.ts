import { describe, expect, it } from '@jest/globals';
import { tables } from '../support/factories.js';
import { leavesIn, recordedTables } from './recorded-tables.js';
import { useEveryTable } from './use-every-table.js';

/** What stands in seeds for plans to come by, or for people who look into the files. */
describe('seeds', () => {
  const recorded = recordedTables(tables);
  useEveryTable(recorded.tables);

  it('hold no value, mark or source that nothing reads', () => {
    const unread = leavesIn(tables).filter(
      (path) => !recorded.read.has(path) && !path.startsWith('sources.'),
    );
    expect(unread).toEqual([]);
  });

  it('list no source that no number opens to and no caution names', () => {
    const ids = Object.keys(tables.sources);
    expect(ids.filter((id) => !recorded.read.has(`sources.${id}.title`))).toEqual([]);
  });
});
