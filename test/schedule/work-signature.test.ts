import { describe, expect, it } from '@jest/globals';
import { signatureOf } from '../../shared/schedule/work-signature.js';
import type { WorkJob, WorkProblem } from '../../shared/schedule/work.js';
import { newJob, newWorker } from '../support/work-factories.js';

const problemOf = (job: Partial<WorkJob> = {}, minutes = 60): WorkProblem => ({
  days: 10,
  workers: [newWorker(10, minutes), newWorker(10, 30)],
  jobs: [newJob({ id: 'first' }), newJob(job)],
});

describe('signatureOf', () => {
  it('is the same for the same problem, whatever its jobs are called', () => {
    expect(signatureOf(problemOf())).toBe(signatureOf(problemOf()));
    expect(signatureOf(problemOf({ id: 'another' }))).toBe(signatureOf(problemOf()));
    expect(signatureOf(problemOf())).toMatch(/^[0-9a-f]{16}$/);
  });

  it('is another when anything changes that a plan goes by', () => {
    const changes: Partial<WorkJob>[] = [
      ...[{ minutes: 61 }, { peopleNeeded: 2 }, { able: [0, 1] }, { smallestPieceMinutes: 30 }],
      ...[{ fromDay: 1 }, { dueDay: 8 }, { untilDay: 8 }, { needsLight: true }],
      ...[{ lateCostPerDay: 2 }, { lostCost: 101 }],
      { suits: Uint8Array.of(1, 1, 1, 1, 1, 1, 1, 1, 1, 0) },
      { suits: Uint8Array.of(1, 1, 1, 1, 1, 1, 1, 1, 0, 1) },
      { waitsFor: [{ job: 0, days: 0 }] },
      { waitsFor: [{ job: 0, days: 1 }] },
      { pinned: [{ day: 1, minutes: 60, workers: [0] }] },
    ];
    const problems = [
      problemOf(),
      problemOf({}, 61),
      { ...problemOf(), days: 11 },
      ...changes.map((change) => problemOf(change)),
      ...[20, 21].map((minutes) => {
        const { workers, ...rest } = problemOf();
        const together = new Map([[1, new Int32Array(10).fill(minutes)]]);
        return { ...rest, workers: [{ ...workers[0]!, together }, workers[1]!] };
      }),
    ];
    expect(new Set(problems.map(signatureOf)).size).toBe(problems.length);
  });

  it('is another for each of ten thousand problems that differ in a minute', () => {
    const found = new Set<string>();
    for (let minutes = 1; minutes <= 10_000; minutes++)
      found.add(signatureOf({ days: 1, workers: [newWorker(1, minutes)], jobs: [] }));
    expect(found.size).toBe(10_000);
  });
});
