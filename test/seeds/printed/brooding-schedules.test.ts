import { describe, expect, it } from '@jest/globals';
import { coolEndC, scheduleSpreadC, underHeaterC } from '../../../shared/poultry/brooding.js';
import { rowById } from '../../../shared/tables/tables.js';
import { fToC } from '../../../shared/units/convert.js';
import { tables } from '../../support/factories.js';

const schedule = (id: string) => rowById(tables.broodingSchedules, id);
const WITHIN_C = 0.06; // Fahrenheit is printed; the table keeps tenths of a degree Celsius

describe('underHeaterC', () => {
  // 95 °F in week 1, 5 °F lower each week (Florida extension, as quoted by a third party).
  it.each([
    [0, 6, 95],
    [7, 13, 90],
    [14, 20, 85],
    [21, 27, 80],
    [28, 34, 75],
    [35, 41, 70],
  ])('asks for the same from day %d to %d, %d °F (extension, second-hand)', (from, to, f) => {
    for (let day = from; day <= to; day++) {
      expect(Math.abs(underHeaterC(schedule('step-5f'), day)! - fToC(f))).toBeLessThan(WITHIN_C);
    }
  });

  // Small-flock table of a cooperative extension (Virginia): maximum at chick level, as bands.
  it.each([
    [0, 6, 92, 95],
    [7, 20, 85, 90],
    [21, 34, 80, 85],
    [35, 55, 70, 80],
  ])('reads day %d to %d at the middle of %d to %d °F (extension bands)', (from, to, low, high) => {
    const middle = (fToC(low) + fToC(high)) / 2;
    for (let day = from; day <= to; day++) {
      expect(Math.abs(underHeaterC(schedule('extension-bands'), day)! - middle)).toBeLessThan(
        WITHIN_C,
      );
    }
  });

  // New South Wales, Primefact 600 (2007), Table 1: chick height, about 50 mm above the litter.
  it.each([
    [1, 33],
    [2, 33],
    [3, 33],
    [4, 32],
    [7, 30],
    [14, 26],
    [21, 22],
    [28, 20],
  ])('asks on day %d for %d °C (Primefact 600)', (day, c) => {
    expect(underHeaterC(schedule('nsw-fast-drop'), day)).toBeCloseTo(c, 9);
  });

  it('falls evenly between the printed days of Primefact 600, never by more than 1 °C a day', () => {
    for (let day = 1; day <= 28; day++) {
      const fall =
        underHeaterC(schedule('nsw-fast-drop'), day - 1)! -
        underHeaterC(schedule('nsw-fast-drop'), day)!;
      expect(fall).toBeGreaterThanOrEqual(-1e-9);
      expect(fall).toBeLessThanOrEqual(1 + 1e-9);
    }
  });

  // FAO Poultry Development Review (2013): 30-32 °C, 2-3 °C lower each week, never below 18 °C.
  it.each([
    [0, 31],
    [7, 28.5],
    [14, 26],
    [21, 23.5],
    [28, 21],
  ])('asks the whole house on day %d for %d °C (FAO 2013, middle of its band)', (day, c) => {
    expect(underHeaterC(schedule('whole-house'), day)).toBeCloseTo(c, 9);
  });

  it('keeps the whole house at 18 °C or more to its last day (FAO 2013)', () => {
    for (let day = 0; day <= 41; day++) {
      expect(underHeaterC(schedule('whole-house'), day)).toBeGreaterThanOrEqual(18);
    }
  });

  it('holds every printed step of the four schedules', () => {
    const steps = tables.broodingSchedules.map((s) => [s.id, s.steps.length]);
    expect(steps).toEqual([
      ['step-5f', 6],
      ['extension-bands', 4],
      ['nsw-fast-drop', 7], // days 1 to 3 are one temperature
      ['whole-house', 6],
    ]);
  });
});

describe('scheduleSpreadC', () => {
  it('shows 31 to 35 °C on the first day: the sources differ by where the probe hangs', () => {
    expect(scheduleSpreadC(tables, 0)).toEqual({ low: 31, high: 35 });
  });

  it('finds Primefact 600 3 to 6 °C under the 5 °F steps from day 14 to 28', () => {
    for (const day of [14, 21, 28]) {
      const gap =
        underHeaterC(schedule('step-5f'), day)! - underHeaterC(schedule('nsw-fast-drop'), day)!;
      expect(gap).toBeGreaterThanOrEqual(3);
      expect(gap).toBeLessThanOrEqual(6);
    }
  });
});

describe('coolEndC', () => {
  it('lies 20 °F under the heat, but not under 65 °F (extension student text)', () => {
    expect(Math.abs(coolEndC(tables.heat.zone, fToC(95)) - fToC(75))).toBeLessThan(WITHIN_C);
    expect(Math.abs(coolEndC(tables.heat.zone, fToC(70)) - fToC(65))).toBeLessThan(WITHIN_C);
  });
});
