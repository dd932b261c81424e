import { describe, expect, it } from '@jest/globals';
import { assumedAfter, withoutSaid } from '../../shared/farm/assumed.js';

const BEFORE = {
  name: 'Brooder',
  lengthM: 3,
  heat: { kind: 'lamp', count: 2 },
  assumed: ['lengthM', 'heat.kind', 'heat.count'],
};

describe('what nobody said of a row', () => {
  it('is no longer that once it is changed, in a part of the row too', () => {
    const after = { ...BEFORE, heat: { kind: 'lamp', count: 3 } };
    expect(withoutSaid(BEFORE, after).assumed).toEqual(['lengthM', 'heat.kind']);
    expect(withoutSaid(BEFORE, { ...BEFORE, lengthM: undefined }).assumed).toEqual([
      'heat.kind',
      'heat.count',
    ]);
  });

  it('stays while it is as it was, whatever else is changed', () => {
    expect(withoutSaid(BEFORE, { ...BEFORE, name: 'Box' })).toEqual({ ...BEFORE, name: 'Box' });
    expect(
      withoutSaid({ lows: [1, 2], estimated: ['lows'] }, { lows: [1, 2], estimated: ['lows'] }),
    ).toEqual({ lows: [1, 2], estimated: ['lows'] });
  });

  it('is not that any more once somebody has typed it, be it what it held before', () => {
    expect(assumedAfter(BEFORE, ['lengthM', 'name'])).toEqual({
      assumed: ['heat.kind', 'heat.count'],
    });
    expect(assumedAfter(BEFORE, ['name'])).toEqual({});
  });

  it('is left alone in a row that was never seen before, and in one without a list', () => {
    expect(withoutSaid(undefined, BEFORE)).toBe(BEFORE);
    expect(withoutSaid({ name: 'a' }, { name: 'b' })).toEqual({ name: 'b' });
  });
});
