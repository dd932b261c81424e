import { addDays, dayOfYear, daysBetween } from '../../shared/calendar/plain-date.js';

export interface SyntheticDay {
  readonly date: string;
  readonly minC: number;
  readonly maxC: number;
}

/** Invented days: a yearly swing from −8 °C to 22 °C, with a wobble that differs from day to day. */
export function syntheticDays(from: string, to: string): SyntheticDay[] {
  return Array.from({ length: daysBetween(from, to) + 1 }, (_, i) => {
    const date = addDays(from, i);
    const meanC = 7 - 15 * Math.cos((2 * Math.PI * (dayOfYear(date) - 15)) / 365);
    const wobbleC = ((i * 37) % 11) - 5;
    return { date, minC: tenth(meanC + wobbleC - 6), maxC: tenth(meanC + wobbleC + 6) };
  });
}

/** Days as a CSV file, in °C or °F. */
export function dailyCsv(days: readonly SyntheticDay[], unit: 'c' | 'f' = 'c'): string {
  const show = (c: number): string => String(unit === 'c' ? c : tenth(c * 1.8 + 32));
  const lines = days.map(({ date, minC, maxC }) => `${date},${show(minC)},${show(maxC)}`);
  return [`date,tmin_${unit},tmax_${unit}`, ...lines].join('\n');
}

/** To a tenth, without the −0 that no database keeps. */
const tenth = (value: number): number => Math.round(value * 10) / 10 + 0;
