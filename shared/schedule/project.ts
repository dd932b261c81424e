import { activityNetwork, tailLengths, type ActivityNetwork } from './activity-network.js';

/**
 * The resource-constrained project scheduling problem: activities of fixed length that hold
 * units of renewable resources while they run, and wait for others to finish.
 *
 * Source: Kolisch and Sprecher, "PSPLIB – A project scheduling problem library",
 * European Journal of Operational Research 96 (1996).
 */
export interface Project {
  /** Whole periods, 0 or more. */
  readonly durations: readonly number[];
  /** Units of each resource held by each activity. */
  readonly demands: readonly (readonly number[])[];
  readonly successors: readonly (readonly number[])[];
  /** Units of each resource in every period. */
  readonly capacities: readonly number[];
}

/** A project with its network, checked. */
export interface ReadyProject extends Project {
  readonly network: ActivityNetwork;
  readonly criticalPath: number;
}

/**
 * Checks a project and prepares it for planning.
 *
 * @throws RangeError naming the activity, what it was given and what is allowed
 * @throws RingError when activities wait for each other in a circle
 */
export function readyProject(project: Project): ReadyProject {
  const { durations, demands, capacities, successors } = project;
  if (demands.length !== durations.length || successors.length !== durations.length)
    throw new RangeError('Give each activity one duration, one list of demands and of successors.');
  durations.forEach((duration, i) => {
    if (!Number.isInteger(duration) || duration < 0)
      throw new RangeError(`Activity ${i} lasts ${duration}; give whole periods, 0 or more.`);
    capacities.forEach((capacity, k) => {
      const demand = demands[i]![k] ?? NaN;
      if (!Number.isInteger(demand) || demand < 0 || capacity < demand)
        throw new RangeError(
          `Activity ${i} needs ${demand} of resource ${k}; give a whole number from 0 to ${capacity}.`,
        );
    });
  });
  const network = activityNetwork(successors);
  const criticalPath = tailLengths(network, durations).reduce((a, b) => Math.max(a, b), 0);
  return { ...project, network, criticalPath };
}
