import fc from 'fast-check';
import type { Project } from '../../shared/schedule/project.js';

/** Projects whose activities wait only for earlier ones, of few or many and large resources. */
export const anyProject: fc.Arbitrary<Project> = fc
  .record({
    capacities: fc.array(fc.constantFrom(1, 5, 63, 64, 4000), { minLength: 1, maxLength: 6 }),
    count: fc.integer({ min: 1, max: 15 }),
    seed: fc.infiniteStream(fc.nat(1_000_000)),
  })
  .map(({ capacities, count, seed }) => {
    const draw = (below: number): number => seed.next().value! % below;
    return {
      capacities,
      durations: Array.from({ length: count }, () => draw(6)),
      demands: Array.from({ length: count }, () => capacities.map((c) => draw(c + 1))),
      successors: Array.from({ length: count }, (_, i) =>
        Array.from({ length: count - i - 1 }, (_each, k) => i + k + 1).filter(() => draw(4) === 0),
      ),
    };
  });

/** What a plan breaks, each period and each link looked at by itself. */
export function broken(
  { durations, demands, successors, capacities }: Project,
  starts: Int32Array,
): string[] {
  const wrong: string[] = [];
  const end = (i: number): number => starts[i]! + durations[i]!;
  starts.forEach((start, i) => start < 0 && wrong.push(`${i} starts at ${start}`));
  successors.forEach((list, i) =>
    list.forEach((j) => starts[j]! < end(i) && wrong.push(`${j} does not wait for ${i}`)),
  );
  const last = Math.max(...durations.map((_, i) => end(i)));
  for (let t = 0; t < last; t++) {
    capacities.forEach((capacity, k) => {
      const used = durations.reduce(
        (sum, _, i) => sum + (starts[i]! <= t && t < end(i) ? demands[i]![k]! : 0),
        0,
      );
      if (capacity < used) wrong.push(`resource ${k} in period ${t}: ${used} of ${capacity}`);
    });
  }
  return wrong;
}
