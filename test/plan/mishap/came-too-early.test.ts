import { describe, expect, it } from '@jest/globals';
import { cameTooEarly } from '../../../shared/plan/mishap/came-too-early.js';

describe('birds that come on another day', () => {
  it('come no earlier than it is still asked whether they came', () => {
    expect(cameTooEarly('2026-11-01', '2026-11-29')).toMatchObject({
      ...{ field: 'arrivalDate', code: 'out-of-bounds' },
      ...{ given: '2026-11-01', min: '2026-11-26' },
    });
    expect(cameTooEarly('2026-11-25', '2026-11-29')).toBeDefined();
  });

  it('may have come some days ago, and come today or later', () => {
    for (const on of ['2026-11-26', '2026-11-29', '2026-12-20', undefined])
      expect(cameTooEarly(on, '2026-11-29')).toBeUndefined();
  });
});
