import type { Formula } from '../explain/formula.js';
import type { BroodingSchedule } from '../tables/bird-tables.js';
import type { HeatTable } from '../tables/heat-tables.js';

export const broodingFormulas = {
  underHeater: {
    id: 'brooder-under-heater',
    title: 'Temperature at chick height under the heat',
    words:
      'Read from the chosen schedule for the age of the birds. A band is read at its middle; a schedule of single days is read evenly between them.',
    symbols: 'T_h = schedule(age)',
    sources: [],
    mark: 'published',
  },
  floor: {
    id: 'brooder-floor',
    title: 'Floor under the heat',
    words:
      'A thermometer laid on dry bedding under a radiant heat source reads what it reads at chick height. Under radiant brooders floors were measured from 31 to 39 °C (87 to 102 °F) with the air at 33 °C (92 °F).',
    symbols: 'T_floor ≈ T_h',
    sources: ['UGA_RADIANT'],
    mark: 'estimate',
  },
  coolEnd: {
    id: 'brooder-cool-end',
    title: 'Air at the cool end of the brooder',
    words:
      'With a lamp or plate only part of the floor is warm: the far end may be 11 °C (20 °F) cooler, but not below 18 °C (65 °F), so that birds can choose. In a house that is warm all over there is none.',
    symbols: 'T_c = max(18.3 °C, T_h − 11.1 °C)',
    sources: ['STUDENT_TEXT_BROODING'],
    mark: 'estimate',
  },
  room: {
    id: 'brooder-room',
    title: 'Air 30 cm above the floor when the whole room is heated',
    words: 'A radiant heater holds the floor about 1.7 °C (3 °F) above the air over it.',
    symbols: 'T_room = T_h − 1.7 °C',
    sources: ['UGA_RADIANT'],
    mark: 'estimate',
  },
} satisfies Record<string, Formula>;

/**
 * Chick-height temperature of a schedule at an age, °C.
 *
 * @returns undefined past the schedule's last day: no heat is asked for then
 */
export function underHeaterC(schedule: BroodingSchedule, ageDays: number): number | undefined {
  const { steps } = schedule;
  const last = steps.at(-1)!;
  if (last.toDay < ageDays) return undefined;
  const step = steps.find((s) => s.fromDay <= ageDays && ageDays <= s.toDay);
  if (!schedule.interpolate || step) return step && middleC(step);
  const next = steps.findIndex((s) => ageDays <= s.fromDay);
  const b = steps[next]!;
  const a = steps[Math.max(0, next - 1)]!;
  if (a === b) return middleC(b);
  return middleC(a) + ((middleC(b) - middleC(a)) * (ageDays - a.toDay)) / (b.fromDay - a.toDay);
}

const middleC = ({ lowC, highC }: { lowC: number; highC: number }): number => (lowC + highC) / 2;

/**
 * Lowest and highest of some schedules' temperatures at an age.
 *
 * @param measures only of schedules measured like this: air of a whole house is another thing than
 *   the temperature under a lamp; left out, of all of them
 */
export function scheduleSpreadC(
  schedules: readonly BroodingSchedule[],
  ageDays: number,
  measures?: BroodingSchedule['measures'],
): { low: number; high: number } | undefined {
  const all = schedules
    .filter((s) => measures === undefined || s.measures === measures)
    .map((s) => underHeaterC(s, ageDays))
    .filter((c) => c !== undefined);
  return all.length === 0 ? undefined : { low: Math.min(...all), high: Math.max(...all) };
}

/** Air at the end of the brooder away from a lamp or plate, °C. */
export function coolEndC(zone: HeatTable['zone'], heaterC: number): number {
  return Math.min(heaterC, Math.max(zone.coolEndMinC, heaterC - zone.coolEndBelowHeaterK));
}
