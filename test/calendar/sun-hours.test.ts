import { describe, expect, it } from '@jest/globals';
import { sunHours, utcOffsetH } from '../../shared/calendar/clock-offset.js';

describe('sunHours', () => {
  it('follows the clock through summer time', () => {
    expect(utcOffsetH('2027-03-13', 'America/New_York')).toBe(-5);
    expect(utcOffsetH('2027-03-14', 'America/New_York')).toBe(-4);
  });

  it('has its noon where the sun is highest at the middle of the zone', () => {
    const place = { latitudeDeg: 43, longitudeDeg: -75, timeZone: 'America/New_York' };
    const { riseH, setH } = sunHours('2027-01-15', place); // 75° west is five hours behind
    expect((riseH + setH) / 2).toBeCloseTo(12, 9);
    expect(setH - riseH).toBeGreaterThan(9);
    expect(setH - riseH).toBeLessThan(9.7);
  });
});
