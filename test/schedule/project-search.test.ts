import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { PackedGeneration } from '../../shared/schedule/packed-generation.js';
import { readyProject, type Project } from '../../shared/schedule/project.js';
import { searchProject } from '../../shared/schedule/project-search.js';
import { seededRandom } from '../../shared/schedule/random.js';
import { anyProject, broken } from '../support/project-factories.js';

const search = (project: Project, schedules: number, seed = 1) =>
  searchProject(readyProject(project), { schedules }, seededRandom(seed));

const nothing: Project = { capacities: [2], durations: [], demands: [], successors: [] };

describe('searchProject', () => {
  it('waits for what comes first, never uses more than there is, and keeps to the schedules', () => {
    fc.assert(
      fc.property(anyProject, fc.integer({ min: 1, max: 300 }), (project, schedules) => {
        const plan = search(project, schedules);
        expect(broken(project, plan.starts)).toEqual([]);
        const ends = project.durations.map((duration, i) => plan.starts[i]! + duration);
        expect(plan.makespan).toBe(Math.max(...ends));
        expect(plan.makespan).toBeGreaterThanOrEqual(plan.bound);
        expect(plan.schedules).toBeGreaterThanOrEqual(1);
        expect(plan.schedules).toBeLessThanOrEqual(schedules);
      }),
    );
  });

  it('gives the same plan for the same seed', () => {
    fc.assert(
      fc.property(anyProject, fc.nat(1000), (project, seed) => {
        expect(search(project, 200, seed)).toEqual(search(project, 200, seed));
      }),
      { numRuns: 30 },
    );
  });

  it('gives a plan after one schedule when the time is up at once', () => {
    fc.assert(
      fc.property(anyProject, (project) => {
        const limits = { schedules: 1000, isTimeUp: () => true };
        const plan = searchProject(readyProject(project), limits, seededRandom(1));
        expect(plan.schedules).toBe(1);
        expect(broken(project, plan.starts)).toEqual([]);
      }),
    );
  });

  it('stops when the plan is proven best', () => {
    // Two of the three fit side by side: 3 × 2 units of work over a capacity of 2 are 4 periods.
    const project = {
      capacities: [2],
      durations: [2, 2, 2],
      demands: [[1], [1], [1]],
      successors: [[], [], []],
    };
    expect(search(project, 1000)).toMatchObject({ makespan: 4, bound: 3 });
    const chain = { ...project, successors: [[1], [2], []] };
    expect(search(chain, 1000)).toMatchObject({ makespan: 6, bound: 6, schedules: 1 });
  });

  it('plans nothing, and activities that take no time', () => {
    expect(search(nothing, 10)).toMatchObject({ makespan: 0, bound: 0 });
    const milestones = {
      capacities: [1],
      durations: [0, 0, 0],
      demands: [[1], [1], [0]],
      successors: [[1], [2], []],
    };
    expect(search(milestones, 10)).toEqual({
      starts: Int32Array.of(0, 0, 0),
      makespan: 0,
      bound: 0,
      schedules: 1,
    });
  });

  it('refuses to make less than one schedule', () => {
    expect(() => search(nothing, 0)).toThrow(/1 or more/);
    expect(() => search(nothing, 1.5)).toThrow(/1 or more/);
  });
});

describe('PackedGeneration', () => {
  it('waits for what comes first and never uses more than there is, from either end', () => {
    fc.assert(
      fc.property(anyProject, fc.integer({ min: 1, max: 200 }), (project, fade) => {
        const ready = readyProject(project);
        const starts = new Int32Array(project.durations.length);
        const scheme = new PackedGeneration(ready);
        const end = scheme.run(ready.network, ready.network.order, fade, starts);
        expect(broken(project, starts)).toEqual([]);
        expect(end).toBe(Math.max(...project.durations.map((d, i) => starts[i]! + d)));
      }),
    );
  });

  it('lets what fills the resource, or what comes first in the list, go before', () => {
    const project = readyProject({
      capacities: [4],
      durations: [1, 1, 1],
      demands: [[1], [2], [4]],
      successors: [[], [], []],
    });
    const starts = new Int32Array(3);
    const scheme = new PackedGeneration(project);
    const list = Int32Array.of(0, 1, 2);
    expect(scheme.run(project.network, list, 100, starts)).toBe(2);
    expect([...starts]).toEqual([1, 1, 0]); // shares: 4/4 is more than 1/4 + 2/4
    scheme.run(project.network, list, 0.5, starts);
    expect([...starts]).toEqual([0, 0, 1]);
    expect(scheme.passes).toBe(2);
  });

  it('lets activities of no length start one after another in the same period', () => {
    const project = readyProject({
      capacities: [1],
      durations: [0, 0, 2, 0],
      demands: [[1], [0], [1], [1]],
      successors: [[], [0], [1], [2]],
    });
    const starts = new Int32Array(4);
    const scheme = new PackedGeneration(project);
    expect(scheme.run(project.network, Int32Array.of(3, 2, 1, 0), 10, starts)).toBe(2);
    expect([...starts]).toEqual([2, 2, 0, 0]);
  });
});
