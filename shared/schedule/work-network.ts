import { activityNetwork, type ActivityNetwork } from './activity-network.js';
import type { WorkJob } from './work.js';

/**
 * Who waits for whom among jobs.
 *
 * @throws RingError when jobs wait for each other in a circle
 */
export function workNetwork(jobs: readonly Pick<WorkJob, 'waitsFor'>[]): ActivityNetwork {
  const successors: number[][] = jobs.map(() => []);
  jobs.forEach(({ waitsFor }, i) => waitsFor.forEach(({ job }) => successors[job]!.push(i)));
  return activityNetwork(successors);
}
