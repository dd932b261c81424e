import { workNetwork } from '../schedule/work-network.js';
import { workWindows } from '../schedule/work-windows.js';

/**
 * Work on a stadium, what each piece takes and what it waits for; weeks, which stand as days here.
 *
 * Source: Guéret, Prins and Sevaux, Applications of Optimization with Xpress-MP (2000), chapter 7.
 */
const STADIUM: Readonly<Record<string, readonly [takes: number, ...waitsFor: string[]]>> = {
  T1: [2],
  T2: [16, 'T1'],
  T3: [9, 'T2'],
  T4: [8, 'T2'],
  T5: [10, 'T3'],
  T6: [6, 'T4', 'T5'],
  T7: [2, 'T4'],
  T8: [2, 'T6'],
  T9: [9, 'T4', 'T6'],
  T10: [5, 'T4'],
  T11: [3, 'T6'],
  T12: [2, 'T9'],
  T13: [1, 'T7'],
  T14: [7, 'T2'],
  T15: [4, 'T4', 'T14'],
  T16: [3, 'T8', 'T11', 'T14'],
  T17: [9, 'T12'],
  T18: [1, 'T17'],
};
const LENGTH = 64;

/** The latest start of one of them that leaves the whole its length. */
export function latestStart(of: string): number {
  const names = Object.keys(STADIUM);
  const jobs = Object.values(STADIUM).map(([takes, ...waitsFor]) => ({
    fromDay: 0,
    dueDay: LENGTH - takes,
    waitsFor: waitsFor.map((name) => ({ job: names.indexOf(name), days: STADIUM[name]![0] })),
  }));
  return workWindows(jobs, workNetwork(jobs))[names.indexOf(of)]!.latestDay;
}
