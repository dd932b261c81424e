import { describe, expect, it } from '@jest/globals';
import { quantityOfDay } from '../../shared/explain/daily-series.js';
import { weakestMark } from '../../shared/explain/formula.js';
import { FORMULAS } from '../../shared/formulas/formulas.js';
import { loadChecks } from '../../src/reference/load-checks.js';
import { tables } from '../support/factories.js';
import { leavesIn, recordedTables } from './recorded-tables.js';
import { useEveryTable } from './use-every-table.js';

/** Sources of comparisons that are made only where the folder of data files is. */
const OF_FILE_CHECKS = ['COLORADO_DAILY', 'CLIGEN_WORLD', 'GROWTH_PLACES'];

/** What stands in seeds for plans to come by, or for people who look into the files. */
describe('seeds', () => {
  const recorded = recordedTables(tables);
  const { quantities, batches } = useEveryTable(recorded.tables);

  it('hold no value, mark or source that nothing reads', () => {
    const unread = leavesIn(tables).filter(
      (path) => !recorded.read.has(path) && !path.startsWith('sources.'),
    );
    expect(unread).toEqual([]);
  });

  it('list no source that no number opens to and no caution or check names', () => {
    const ofChecks = Object.values(loadChecks(tables)).flatMap((rows) => rows.map((r) => r.source));
    const known = [...ofChecks, ...OF_FILE_CHECKS];
    const ids = Object.keys(tables.sources).filter((id) => !known.includes(id));
    expect(ids.filter((id) => !recorded.read.has(`sources.${id}.title`))).toEqual([]);
  });

  it('never let a number claim more than its formula and its inputs', () => {
    expect(quantities.length).toBeGreaterThan(5000);
    const wrong = quantities.filter(({ mark, formula, inputs }) => {
      const marks = inputs.flatMap((each) => each.mark ?? []);
      return weakestMark(mark, FORMULAS.get(formula)!.mark, ...marks) !== mark;
    });
    expect(wrong).toEqual([]);
  });

  it('never let a day of a series claim more than the series it is fed with', () => {
    for (const { plan } of batches) {
      const marks = new Map(
        plan.daily.map(({ id }) => [id, quantityOfDay(plan.daily, id, 0)?.mark]),
      );
      for (const { id, inputs } of plan.daily) {
        const fed = inputs.flatMap((each) =>
          'series' in each ? (marks.get(each.series) ?? []) : [],
        );
        const own = marks.get(id);
        if (own) expect(weakestMark(own, ...fed)).toBe(own);
      }
    }
  });
});
