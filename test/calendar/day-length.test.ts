import { describe, expect, it } from '@jest/globals';
import { dayLengthH } from '../../shared/calendar/day-length.js';

describe('dayLengthH', () => {
  it('is 0 h in the polar night and 24 h on a polar day', () => {
    expect(dayLengthH({ latitudeDeg: 80, dayOfYear: 355 })).toBe(0);
    expect(dayLengthH({ latitudeDeg: 80, dayOfYear: 172 })).toBe(24);
    expect(dayLengthH({ latitudeDeg: -80, dayOfYear: 355 })).toBe(24);
  });
});
