import type { FieldProblem } from '../problems/field-problem.js';
import { storedUnit, type Unit } from '../units/unit.js';

/** The values a number may take, and what to do when it does not. */
export interface Bounds {
  /** Lowest and highest stored value, SI. */
  readonly min: number;
  readonly max: number;
  /** How people are shown it; it is stored in the SI unit below that. */
  readonly unit: Unit;
  readonly integer?: boolean;
  /** What may be typed besides a number and a unit: a compass point, or a percent sign. */
  readonly typedAs?: 'latitude' | 'longitude' | 'percent';
  readonly fix: string;
}

/**
 * Bounds say what this program plans for, not what is wise; warnings in the plan say that.
 *
 * @param fix what to do, as an instruction
 */
export const within = (min: number, max: number, unit: Unit, fix: string): Bounds => ({
  min,
  max,
  unit,
  fix,
});

/** The same for numbers that are counted. */
export const whole = (min: number, max: number, unit: Unit, fix: string): Bounds => ({
  ...within(min, max, unit, fix),
  integer: true,
});

/** Bounds that rows of several kinds have in common. */
export const AIR_C = within(-60, 60, 'degC', 'Give the air temperature; check °C against °F.');
export const RAIN_MM = within(0, 1500, 'rainMm', 'Give the rain of the month, snow melted.');
export const DAY_HOURS = within(0, 24, 'h', 'Give the hours for the farm on that day of the week.');
export const CLOCK_H = within(0, 23.99, 'h', 'Give the hour of the clock: 7.5 is half past seven.');
export const FOLLOW_DAYS = whole(1, 30, 'day', 'Give the days the birds follow behind the herd.');

/** What is wrong with a number; nothing when it is within its bounds. */
export function problemsOfNumber(field: string, given: unknown, bounds: Bounds): FieldProblem[] {
  const { min, max, unit, fix, integer } = bounds;
  if (typeof given !== 'number' || !Number.isFinite(given)) {
    return [{ field, code: 'not-a-number', given, fix }];
  }
  const isWhole = !integer || Number.isInteger(given);
  return min <= given && given <= max && isWhole
    ? []
    : [
        {
          field,
          code: 'out-of-bounds',
          given,
          min,
          max,
          unit: isWhole ? storedUnit(unit) : 'whole',
          fix,
        },
      ];
}

/** Longest span over which the arrival finder looks for weeks, days. */
export const MAX_FINDER_DAYS = 732;
export const MAX_LIST = 200;
