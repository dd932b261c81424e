import { describe, expect, it } from '@jest/globals';
import { onceHayIsIn } from '../../../shared/plan/pasture/herd-tasks.js';
import type { Task } from '../../../shared/plan/tasks/task.js';
import { withAnimalsFirst } from '../../../shared/plan/work/animals-first.js';
import type { WholeWork } from '../../../shared/plan/work/whole-work.js';
import type { WorkPiece } from '../../../shared/schedule/work.js';
import { newJob } from '../../support/work-factories.js';
import { tables } from '../../support/factories.js';

const task = (go: number, templateId: string, of = 'paddock'): Task =>
  ({ id: `h.m${go}.${templateId}`, templateId, belongsToId: of, waits: [] }) as unknown as Task;

describe('mowing for hay', () => {
  it('waits for the hay of the last go of the same herd, where that has a place', () => {
    const tasks = [0, 1, 2].flatMap((go) => [task(go, 'hay.mow'), task(go, 'hay.bale')]);
    const waits = tasks.map(onceHayIsIn(tasks)).map(({ waits }) => waits);
    const after = (go: number) => [
      { id: `h.m${go}.hay.bale`, days: 1, onlyIfPlaced: true as const },
    ];
    expect(waits).toEqual([[], [], after(0), [], after(1), []]);
  });

  it('waits for nothing of other herds', () => {
    const tasks = [task(0, 'hay.bale', 'other'), task(1, 'hay.mow'), task(1, 'hay.bale')];
    expect(tasks.map(onceHayIsIn(tasks)).flatMap(({ waits }) => waits)).toEqual([]);
  });

  const workWith = (baled: WorkPiece[]): WholeWork => {
    const wait = { key: 'bale', days: 1, onlyIfPlaced: true as const };
    return {
      needs: [
        { key: 'bale', name: 'Bale', waitsFor: [], hours: 1 },
        { key: 'mow', name: 'Mow', waitsFor: [wait], hours: 1 },
      ],
      problem: { jobs: [newJob(), newJob({ waitsFor: [{ job: 0, days: 1 }] })] },
      fitted: { plan: [baled, []] },
      request: { tables },
    } as unknown as WholeWork;
  };

  it('is done without the baling that no day was found for, or whose days are past', () => {
    const next = withAnimalsFirst(workWith([]))!;
    expect(next[1]).toMatchObject({ waitsFor: [], doneWithout: ['Bale'] });
  });

  it('goes on waiting for baling that has its day', () => {
    const next = withAnimalsFirst(workWith([{ day: 3, minutes: 600, workers: [0] }]));
    expect(next).toBeUndefined();
  });
});
