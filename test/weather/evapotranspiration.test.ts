import { describe, expect, it } from '@jest/globals';
import { extraterrestrialRadiationMJPerM2Day } from '../../shared/calendar/day-length.js';
import {
  hargreavesMm,
  referenceEvapotranspirationMm,
} from '../../shared/weather/evapotranspiration.js';

// Allen, Pereira, Raes and Smith, "Crop evapotranspiration", FAO Irrigation and Drainage Paper 56, 1998,
// chapters 2 to 4. The examples are second-hand, as quoted in public test code; what is from memory says so.
// The book rounds on the way; each tolerance is half of the last printed digit unless a reason is given.

describe('hargreavesMm', () => {
  it('is never below nothing, in frost or where the night is no colder than the day', () => {
    expect(hargreavesMm({ minC: -40, maxC: -30, extraterrestrialMJ: 3 })).toBe(0);
    expect(hargreavesMm({ minC: 12, maxC: 12, extraterrestrialMJ: 30 })).toBe(0);
    expect(hargreavesMm({ minC: 12, maxC: 11, extraterrestrialMJ: 30 })).toBe(0);
  });

  it('goes through a run of days with the sun of each', () => {
    const days = { dayOfYear: Int16Array.of(80, 172, 355), minC: [10, 10, 10], maxC: [20, 20, 20] };
    const mm = referenceEvapotranspirationMm(45, days);
    expect(mm[2]!).toBeLessThan(mm[0]!);
    expect(mm[0]!).toBeLessThan(mm[1]!);
    expect(mm[1]!).toBe(
      hargreavesMm({
        minC: 10,
        maxC: 20,
        extraterrestrialMJ: extraterrestrialRadiationMJPerM2Day({
          latitudeDeg: 45,
          dayOfYear: 172,
        }),
      }),
    );
  });
});
