import { expect, it } from '@jest/globals';
import type { WorkJob, Worker } from '../../../shared/schedule/work.js';
import type { WorkNeed } from '../../../shared/plan/work/work-need.js';
import { withHoursForSpells } from '../../../shared/plan/work/spell-hours.js';

const DAYS = 14;
const job = (id: string, minutes: number, more: Partial<WorkJob> = {}): WorkJob => ({
  ...{ id, minutes, peopleNeeded: 1, able: [0], fromDay: 0, dueDay: 9, untilDay: DAYS - 1 },
  ...{ waitsFor: [], lateCostPerDay: 60, lostCost: 1000, ...more },
});
const hay = [
  job('mow', 60),
  job('bale', 60, { waitsFor: [{ job: 0, days: 1 }] }),
  job('stack', 60, { ...{ peopleNeeded: 2, able: [0, 1] }, waitsFor: [{ job: 1, days: 0 }] }),
];
const needs = hay.map(({ id }) => ({
  key: id,
  conditions: id === 'mow' ? { dryDaysInRow: 2 } : {},
})) as unknown as WorkNeed[];

const worker = (minutesOn: (day: number) => number): Worker => {
  const minutes = Int32Array.from({ length: DAYS }, (_, day) => minutesOn(day));
  return { minutes, lightMinutes: minutes };
};

it('lets hay be mown where a few minutes are wanting to bring it in, and not where many are', () => {
  // The second pair of hands has 55 of the 60 minutes on day 2, half of them on day 5, all on day 9.
  const workers = [worker(() => 480), worker((day) => ({ 2: 55, 5: 30, 9: 60 })[day] ?? 0)];
  const daysToMow = (hurriedShare: number): number[] => {
    const { suits } = withHoursForSpells(hay, needs, workers, hurriedShare)[0]!;
    return [...suits!].flatMap((is, day) => (is === 1 ? [day] : []));
  };
  expect(daysToMow(0.1)).toEqual([0, 1, 7, 8]);
  expect(daysToMow(0)).toEqual([7, 8]);
});

it('plans hay in less time sooner than a week later, and not sooner than a few days later', () => {
  const minutesWith = (wholeOn: number): number[] => {
    const workers = [
      worker(() => 480),
      worker((day) => (day === 2 ? 55 : day === wholeOn ? 60 : 0)),
    ];
    return withHoursForSpells(hay, needs, workers, 0.1).map(({ minutes }) => minutes);
  };
  expect(minutesWith(9)).toEqual([54, 54, 54]);
  expect(minutesWith(5)).toEqual([60, 60, 60]);
});
