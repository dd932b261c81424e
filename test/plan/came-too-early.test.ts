import { describe, expect, it } from '@jest/globals';
import { cameTooEarly } from '../../shared/plan/came-too-early.js';

const today = '2026-11-29';
const from = '2026-12-04';

describe('birds that come on another day', () => {
  it('come no earlier than it is still asked whether they came', () => {
    expect(cameTooEarly({ to: '2026-11-01', from, today })).toMatchObject({
      ...{ field: 'arrivalDate', code: 'out-of-bounds' },
      ...{ given: '2026-11-01', min: '2026-11-26' },
    });
    expect(cameTooEarly({ to: '2026-11-25', from, today })).toBeDefined();
  });

  it('may have come some days ago, and come today or later', () => {
    for (const to of ['2026-11-26', '2026-11-29', '2026-12-20', undefined])
      expect(cameTooEarly({ to, from, today })).toBeUndefined();
  });

  it('came on any day where they were to come before anyway', () => {
    const asBefore = { to: '2026-10-01', from: '2026-10-01', today };
    expect(cameTooEarly(asBefore)).toBeUndefined();
    expect(cameTooEarly({ ...asBefore, to: '2026-09-01' })).toBeUndefined();
  });
});
