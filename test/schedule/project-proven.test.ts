import { beforeAll, describe, expect, it } from '@jest/globals';
import * as solver from 'highs';
import type { Highs } from 'highs';
import { readyProject, type Project, type ReadyProject } from '../../shared/schedule/project.js';
import { searchProject } from '../../shared/schedule/project-search.js';
import { drawIndex, seededRandom, type Random } from '../../shared/schedule/random.js';

/**
 * The same problem as a mixed-integer programme, solved by a general-purpose solver (HiGHS): one
 * variable for every activity and start, with links disaggregated by period.
 *
 * Source: Christofides, Alvarez-Valdes and Tamarit, "Project scheduling with resource
 * constraints: a branch and bound approach", European Journal of Operational Research 29 (1987).
 *
 * @param periods  a makespan that is known to be possible
 */
function programme(project: ReadyProject, periods: number): string {
  const { durations, demands, successors, capacities } = project;
  const all = (i: number): number[] =>
    Array.from({ length: periods - durations[i]! + 1 }, (_, t) => t);
  const name = (i: number, t: number): string => `x${i}_${t}`;
  const sum = (terms: string[]): string => (0 < terms.length ? terms.join(' + ') : '0 makespan');
  const rows: string[] = [];
  durations.forEach((duration, i) => {
    rows.push(`${sum(all(i).map((t) => name(i, t)))} = 1`);
    const ends = all(i).flatMap((t) => (0 < t + duration ? [`${t + duration} ${name(i, t)}`] : []));
    rows.push(`makespan - ${ends.join(' - ')} >= 0`);
    for (const j of successors[i]!) {
      for (let t = 0; t < periods; t++) {
        const later = all(i).filter((s) => t < s + duration);
        const early = all(j).filter((s) => s <= t);
        if (later.length === 0 || early.length === 0) continue;
        rows.push(
          `${sum([...later.map((s) => name(i, s)), ...early.map((s) => name(j, s))])} <= 1`,
        );
      }
    }
  });
  capacities.forEach((capacity, k) => {
    for (let t = 0; t < periods; t++) {
      const used = durations.flatMap((duration, i) =>
        demands[i]![k]! === 0
          ? []
          : all(i)
              .filter((s) => s <= t && t < s + duration)
              .map((s) => `${demands[i]![k]} ${name(i, s)}`),
      );
      if (0 < used.length) rows.push(`${sum(used)} <= ${capacity}`);
    }
  });
  return [
    'Minimize',
    ' obj: makespan',
    'Subject To',
    ...rows.map((row, k) => ` c${k}: ${row}`),
    'Binary',
    ...durations.flatMap((_, i) => all(i).map((t) => ` ${name(i, t)}`)),
    'End',
  ].join('\n');
}

function randomProject(random: Random): Project {
  const count = 8 + drawIndex(random, 3);
  const capacities = [4 + drawIndex(random, 4), 3 + drawIndex(random, 3)];
  const each = <T>(make: (i: number) => T): T[] => Array.from({ length: count }, (_, i) => make(i));
  return {
    capacities,
    durations: each(() => 1 + drawIndex(random, 4)),
    demands: each(() => capacities.map((capacity) => drawIndex(random, capacity))),
    successors: each((i) =>
      Array.from({ length: count - i - 1 }, (_, k) => i + k + 1).filter(() => random() < 0.15),
    ),
  };
}

describe('searchProject against a proven optimum', () => {
  let highs: Highs;
  beforeAll(async () => {
    // The types call it an ES module; it is a CommonJS one, whose only export is the loader.
    highs = await (solver.default as unknown as () => Promise<Highs>)();
  });

  it('is as short as the solver’s proven best on 24 projects of 8 to 10 activities', () => {
    const random = seededRandom(20270401);
    let proven = 0;
    for (let run = 0; run < 24; run++) {
      const project = readyProject(randomProject(random));
      const found = searchProject(project, { schedules: 2000 }, seededRandom(run));
      const solved = highs.solve(programme(project, found.makespan));
      expect(solved.Status).toBe('Optimal');
      proven++;
      expect(found.makespan).toBe(Math.round(solved.ObjectiveValue));
      expect(found.bound).toBeLessThanOrEqual(found.makespan);
    }
    expect(proven).toBe(24);
  });
});
