import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  activityNetwork,
  RingError,
  tailLengths,
  turnedRound,
} from '../../shared/schedule/activity-network.js';
import { FreeCapacity } from '../../shared/schedule/free-capacity.js';
import { LookaheadGeneration } from '../../shared/schedule/lookahead-generation.js';
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
        const backwards = turnedRound(ready.network);
        const starts = new Int32Array(order.length);
        const makespan = scheme.run(ready.network, order, starts);
        expect(broken(project, starts)).toEqual([]);
        expect(makespan).toBeGreaterThanOrEqual(ready.criticalPath);
        const fromEnd = new Int32Array(order.length);
        const back = scheme.run(backwards, backwards.order, fromEnd);
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
    expect(new SerialGeneration(project).run(project.network, Int32Array.of(0, 1, 2), starts)).toBe(
      5,
    );
    expect([...starts]).toEqual([0, 3, 0]); // 1 needs both units; 2 fits beside 0
  });
});

describe('LookaheadGeneration', () => {
  it('waits for what comes first and never uses more than there is, from either end', () => {
    fc.assert(
      fc.property(anyProject, fc.double({ min: 0, max: 5, noNaN: true }), (project, cost) => {
        const ready = readyProject(project);
        const scheme = new LookaheadGeneration(ready);
        const starts = new Int32Array(project.durations.length);
        const end = scheme.run(ready.network, ready.network.order, cost, starts);
        expect(broken(project, starts)).toEqual([]);
        expect(end).toBe(Math.max(...project.durations.map((d, i) => starts[i]! + d)));
        const backwards = turnedRound(ready.network);
        const back = scheme.run(backwards, backwards.order, cost, starts);
        const turned = starts.map((t, i) => back - t - project.durations[i]!);
        expect(broken(project, turned)).toEqual([]);
        expect(scheme.passes).toBe(2);
      }),
    );
  });

  it('is the serial scheme when a place down the list costs more than any wait', () => {
    fc.assert(
      fc.property(anyProject, (project) => {
        const ready = readyProject(project);
        const { network } = ready;
        const [serial, ahead] = [new Int32Array(network.count), new Int32Array(network.count)];
        new SerialGeneration(ready).run(network, network.order, serial);
        new LookaheadGeneration(ready).run(network, network.order, 1000, ahead);
        expect(ahead).toEqual(serial);
      }),
    );
  });

  it('places what can start first before what would have to wait, when places cost little', () => {
    const project = readyProject({
      capacities: [2],
      durations: [3, 2, 4],
      demands: [[1], [2], [1]],
      successors: [[], [], []],
    });
    const starts = new Int32Array(3);
    const list = Int32Array.of(0, 1, 2);
    const scheme = new LookaheadGeneration(project);
    expect(scheme.run(project.network, list, 0, starts)).toBe(6);
    expect([...starts]).toEqual([0, 4, 0]); // 2 starts beside 0, and 1 waits for both
    expect(scheme.run(project.network, list, 4 / 3, starts)).toBe(9);
    expect([...starts]).toEqual([0, 3, 5]); // a wait of 3 is less than a place of 4 periods
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
