import { describe, expect, it } from '@jest/globals';
import { compare } from '../../shared/checks/compare.js';
import { checksText } from '../../src/cli/print-checks.js';
import { tables } from '../support/factories.js';

const row = {
  id: 'w',
  what: 'Weight of a bird',
  source: 'PS2003_1957',
  where: 'abstract',
  mark: 'published',
  theirs: 1.43,
  unit: 'kg',
  by: 'x',
  allowedShare: 0.1,
  why: 'sexes together',
} as const;

describe('checksText', () => {
  it('prints a table a topic, explains what disagrees, and counts in its last line', () => {
    const text = checksText(
      [
        compare('Growth', row, 1.5),
        compare('Growth', { ...row, what: 'Another bird', disagreement: 'Fed otherwise.' }, 2),
        compare('Eggs', { ...row, what: 'A third' }, 9),
      ],
      tables,
    );
    expect(text).toMatch(/Growth[^]*Weight of a bird[^]*1\.43 kg[^]*1\.5 kg[^]*\+4\.9 %[^]*agrees/);
    expect(text).toMatch(/Another bird: Fed otherwise\./);
    expect(text).toMatch(/Eggs[^]*too far off/);
    expect(text.trimEnd().split('\n').at(-1)).toBe(
      '3 checks: 1 agree, 1 too far off, 1 disagree as explained.',
    );
  });
});
