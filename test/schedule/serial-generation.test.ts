import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { activityNetwork, RingError, tailLengths } from '../../shared/schedule/activity-network.js';
import { FreeCapacity } from '../../shared/schedule/free-capacity.js';
import { readyProject } from '../../shared/schedule/project.js';
import { SerialGeneration } from '../../shared/schedule/serial-generation.js';
import { anyProject, broken } from '../support/project-factories.js';

describe('SerialGeneration', () => {
  it('waits for what comes first and never uses more than there is, forward and backward', () => {
    fc.assert(
      fc.property(anyProject, (project) => {
        const ready = readyProject(project);
        const scheme = new SerialGeneration(ready);
        const { order } = ready.network;
        const starts = new Int32Array(order.length);
        const makespan = scheme.forward(order, starts);
        expect(broken(project, starts)).toEqual([]);
        expect(makespan).toBeGreaterThanOrEqual(ready.criticalPath);
        const fromEnd = new Int32Array(order.length);
        const back = scheme.backward(Int32Array.from(order).reverse(), fromEnd);
        const turned = fromEnd.map((t, i) => back - t - project.durations[i]!);
        expect(broken(project, turned)).toEqual([]);
        expect(scheme.passes).toBe(2);
      }),
    );
  });

  it('starts each activity of a list as early as what stands before it allows', () => {
    const project = readyProject({
      capacities: [2],
      durations: [3, 2, 2],
      demands: [[1], [2], [1]],
      successors: [[], [], []],
    });
    const starts = new Int32Array(3);
    expect(new SerialGeneration(project).forward(Int32Array.of(0, 1, 2), starts)).toBe(5);
    expect([...starts]).toEqual([0, 3, 0]); // 1 needs both units; 2 fits beside 0
  });
});

describe('activityNetwork', () => {
  it('names a ring', () => {
    expect(() => activityNetwork([[1], [2], [0], []])).toThrow(RingError);
    expect(() => activityNetwork([[1], [2], [0], []])).toThrow(/0.*1.*2|1.*2.*0|2.*0.*1/);
  });

  it('refuses a successor that is not there', () => {
    expect(() => activityNetwork([[3]])).toThrow(/successor 3/);
  });

  it('gives the longest chain from each activity', () => {
    const network = activityNetwork([[1, 2], [3], [3], []]);
    expect([...tailLengths(network, [1, 5, 2, 4])]).toEqual([10, 9, 6, 4]); // 1 + 5 + 4, 5 + 4, …
  });
});

describe('FreeCapacity', () => {
  it('finds the first fit that a search period by period finds', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(1, 7, 63, 4000), { minLength: 1, maxLength: 5 }),
        fc.array(
          fc.record({
            share: fc.double({ min: 0, max: 1, noNaN: true }),
            length: fc.integer({ min: 1, max: 5 }),
          }),
          {
            minLength: 1,
            maxLength: 12,
          },
        ),
        (capacities, takes) => {
          const periods = 80;
          const free = new FreeCapacity(capacities, periods);
          const left = Array.from({ length: periods }, () => [...capacities]);
          for (const { share, length } of takes) {
            const demand = capacities.map((c) => Math.floor(share * c));
            let naive = 0;
            const fits = (t: number) => demand.every((d, k) => d <= left[t]![k]!);
            while (!Array.from({ length }, (_, i) => naive + i).every(fits)) naive++;
            const packed = free.packed(demand);
            expect(free.firstFit(packed, 0, 0, length)).toBe(naive);
            free.take(packed, 0, naive, length);
            for (let t = naive; t < naive + length; t++)
              demand.forEach((d, k) => (left[t]![k]! -= d));
          }
        },
      ),
    );
  });
});

describe('readyProject', () => {
  it('names the activity, what it needs and what there is', () => {
    const project = { capacities: [3], durations: [1], demands: [[4]], successors: [[]] };
    expect(() => readyProject(project)).toThrow(
      'Activity 0 needs 4 of resource 0; give a whole number from 0 to 3.',
    );
    expect(() => readyProject({ ...project, durations: [-1] })).toThrow(/Activity 0 lasts -1/);
  });
});
