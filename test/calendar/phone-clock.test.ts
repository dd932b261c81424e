import { describe, expect, it } from '@jest/globals';
import { serviceTimeMs } from '../../shared/calendar/phone-clock.js';

const HOUR = 3_600_000;
const YEAR = 365 * 24 * HOUR;
const service = Date.UTC(2027, 3, 21, 6, 10);

describe('the time on a phone whose clock is off', () => {
  const learned = { serviceMs: service, deviceMs: service + YEAR, countedMs: 5000 };

  it('goes on from what the service said, a year off or not', () => {
    const now = { deviceMs: learned.deviceMs + 3 * HOUR, countedMs: 5000 + 3 * HOUR };
    expect(serviceTimeMs(learned, now)).toBe(service + 3 * HOUR);
  });

  it('counts the hours that a phone slept, in which its counter stood still', () => {
    const now = { deviceMs: learned.deviceMs + 50 * HOUR, countedMs: 5000 + HOUR };
    expect(serviceTimeMs(learned, now)).toBe(service + 50 * HOUR);
  });

  it('is not moved by a clock that was set meanwhile, back or a year ahead', () => {
    for (const by of [-YEAR, -HOUR, YEAR]) {
      const now = { deviceMs: learned.deviceMs + HOUR + by, countedMs: 5000 + HOUR };
      expect(serviceTimeMs(learned, now)).toBe(service + HOUR);
    }
  });

  it('never goes back behind what was learned, as after a restart of the phone', () => {
    const written = { serviceMs: service, deviceMs: service + YEAR };
    expect(serviceTimeMs(written, { deviceMs: service, countedMs: 10 })).toBe(service);
    expect(serviceTimeMs(written, { deviceMs: service + YEAR + HOUR })).toBe(service + HOUR);
  });
});
