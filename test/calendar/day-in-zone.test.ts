import { expect, it } from '@jest/globals';
import fc from 'fast-check';
import { dayInZone } from '../../shared/calendar/day-in-zone.js';
import { addDays } from '../../shared/calendar/plain-date.js';

/** The day that the language's own calendar (ECMA-402) writes for an instant. */
const written = (ms: number, timeZone: string): string =>
  new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short' }).format(ms);

it('ends and begins where the calendar of the language turns the page, also as clocks are set', () => {
  const zones = fc.constantFrom(...Intl.supportedValuesOf('timeZone'));
  const days = fc.integer({ min: 0, max: 3650 }).map((n) => addDays('2020-01-01', n));
  // Clocks are set at midnight in Havana, and Lord Howe sets them by half an hour.
  const set = fc.constantFrom(
    ['America/Havana', '2026-03-08'],
    ['America/Havana', '2026-11-01'],
    ['Australia/Lord_Howe', '2026-04-05'],
    ['America/Denver', '2026-03-08'],
  );
  fc.assert(
    fc.property(fc.oneof(fc.tuple(zones, days), set), ([timeZone, date]) => {
      const { fromMs, untilMs } = dayInZone(date!, timeZone!);
      // Samoa's 30 December 2011 and the like lie before these years.
      expect(written(fromMs, timeZone!)).toBe(date);
      expect(written(fromMs - 1, timeZone!)).toBe(addDays(date!, -1));
      expect(written(untilMs - 1, timeZone!)).toBe(date);
      expect(written(untilMs, timeZone!)).toBe(addDays(date!, 1));
    }),
  );
});
