import { describe, expect, it } from '@jest/globals';
import {
  dayLengthH,
  extraterrestrialRadiationMJPerM2Day,
} from '../../shared/calendar/day-length.js';

// Worked by hand from the printed equations of NOAA, General solar position calculations, and of
// FAO-56; not printed themselves.
const ROWS: readonly (readonly [number, number, number, number])[] = [
  // latitude, day of the year, NOAA h, FAO-56 eq. 34 h
  [40, 80, 12.138, 11.966],
  [40, 105, 13.223, 13.076],
  [40, 172, 15.017, 14.844],
  [40, 266, 12.173, 11.876],
  [40, 355, 9.327, 9.156],
  [52, 172, 16.736, 16.493],
  [52, 355, 7.745, 7.507],
  [-35, 355, 14.51, 14.356],
];

describe('dayLengthH', () => {
  it.each(ROWS)(
    'gives at latitude %d° on day %d %d h (NOAA equations, by hand)',
    (latitudeDeg, dayOfYear, h) => {
      expect(Math.abs(dayLengthH({ latitudeDeg, dayOfYear }) - h)).toBeLessThanOrEqual(0.0006); // 3 decimals
    },
  );

  it('is longer than FAO-56 by 9 to 25 minutes in every row', () => {
    for (const [latitudeDeg, dayOfYear, , fao56H] of ROWS) {
      const minutes = 60 * (dayLengthH({ latitudeDeg, dayOfYear }) - fao56H);
      expect(minutes).toBeGreaterThanOrEqual(8.5);
      expect(minutes).toBeLessThanOrEqual(25);
    }
  });

  it('is 0 h in the polar night and 24 h on a polar day', () => {
    expect(dayLengthH({ latitudeDeg: 80, dayOfYear: 355 })).toBe(0);
    expect(dayLengthH({ latitudeDeg: 80, dayOfYear: 172 })).toBe(24);
    expect(dayLengthH({ latitudeDeg: -80, dayOfYear: 355 })).toBe(24);
  });
});

describe('extraterrestrialRadiationMJPerM2Day', () => {
  it('gives 32.2 MJ/m² a day at 20° S on 3 September (FAO-56, example 8)', () => {
    const ra = extraterrestrialRadiationMJPerM2Day({ latitudeDeg: -20, dayOfYear: 246 });
    expect(Math.abs(ra - 32.2)).toBeLessThanOrEqual(0.05); // the book prints one decimal
  });

  it.each([
    ['10', -22.9, 135, 25.1, 0.05],
    ['15', 45.717, 196, 40.6, 0.06],
    ['17', 13.733, 105, 38.06, 0.01],
  ])(
    'gives in example %s of FAO-56, at %d° on day %d, %d MJ/m² (latitude or date from memory)',
    (_, latitudeDeg, dayOfYear, ra, tolerance) => {
      // The book rounds on the way: up to 0.06 where one decimal is printed.
      const got = extraterrestrialRadiationMJPerM2Day({ latitudeDeg, dayOfYear });
      expect(Math.abs(got - ra)).toBeLessThanOrEqual(tolerance);
    },
  );
});
