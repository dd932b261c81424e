import { turnedRound, type ActivityNetwork } from './activity-network.js';
import { directedPlan, seenFromOtherEnd, type DirectedPlan } from './directed-plan.js';
import { LookaheadGeneration } from './lookahead-generation.js';
import { PackedGeneration } from './packed-generation.js';
import type { ReadyProject } from './project.js';
import { SerialGeneration } from './serial-generation.js';

export interface ProjectLimits {
  /** Passes of a schedule generation scheme over all activities, at most; 1 or more. */
  readonly schedules: number;
  /** Asked before every schedule but the first; the best plan so far is given once it says yes. */
  readonly isTimeUp?: () => boolean;
}

/** Makes plans from lists, counts them against the limits, and keeps the shortest. */
export class PlanMaker {
  readonly durations: Int32Array;
  readonly forwards: ActivityNetwork;
  readonly backwards: ActivityNetwork;
  best: DirectedPlan | undefined;
  private readonly serial: SerialGeneration;
  private readonly lookahead: LookaheadGeneration;
  private readonly packed: PackedGeneration;
  private isTimeUp = false;

  constructor(
    project: ReadyProject,
    private readonly bound: number,
    private readonly limits: ProjectLimits,
  ) {
    this.durations = Int32Array.from(project.durations);
    this.forwards = project.network;
    this.backwards = turnedRound(project.network);
    this.serial = new SerialGeneration(project);
    this.lookahead = new LookaheadGeneration(project);
    this.packed = new PackedGeneration(project);
  }

  get schedules(): number {
    return this.serial.passes + this.lookahead.passes + this.packed.passes;
  }

  /** Whether nothing shorter can be found, or the limits are reached. Asks for the time. */
  isOver(): boolean {
    if (this.best === undefined) return false;
    if (this.best.length <= this.bound || this.limits.schedules <= this.schedules) return true;
    this.isTimeUp ||= this.limits.isTimeUp?.() ?? false;
    return this.isTimeUp;
  }

  network(isFromEnd: boolean): ActivityNetwork {
    return isFromEnd ? this.backwards : this.forwards;
  }

  /** A plan by the serial scheme. */
  fromList(isFromEnd: boolean, list: Int32Array): DirectedPlan {
    const starts = new Int32Array(list.length);
    const length = this.serial.run(this.network(isFromEnd), list, starts);
    return this.kept(directedPlan(isFromEnd, list, starts, length, this.durations));
  }

  /** A plan by the serial scheme with a choice; for `cost` see {@link LookaheadGeneration.run}. */
  lookaheadFromList(isFromEnd: boolean, list: Int32Array, cost: number): DirectedPlan {
    const starts = new Int32Array(list.length);
    const length = this.lookahead.run(this.network(isFromEnd), list, cost, starts);
    return this.kept(directedPlan(isFromEnd, list, starts, length, this.durations));
  }

  /** A plan by the parallel scheme; for `fade` see {@link PackedGeneration.run}. */
  packedFromList(isFromEnd: boolean, list: Int32Array, fade: number): DirectedPlan {
    const starts = new Int32Array(list.length);
    const length = this.packed.run(this.network(isFromEnd), list, fade, starts);
    return this.kept(directedPlan(isFromEnd, list, starts, length, this.durations));
  }

  /**
   * Everything moved as far as it goes towards the other end, what stands nearest to it first.
   * Never longer than the plan.
   *
   * Source: Tormos and Lova, "A competitive heuristic solution technique for
   * resource-constrained project scheduling", Annals of Operations Research 102 (2001); Valls,
   * Ballestín and Quintanilla, "Justification and RCPSP: a technique that pays", European
   * Journal of Operational Research 165 (2005).
   */
  justified(plan: DirectedPlan): DirectedPlan {
    const { isFromEnd, list } = seenFromOtherEnd(plan, this.durations);
    return this.fromList(isFromEnd, list);
  }

  /** The same with a choice of what is moved next: often shorter, and sometimes longer. */
  lookaheadJustified(plan: DirectedPlan, cost: number): DirectedPlan {
    const { isFromEnd, list } = seenFromOtherEnd(plan, this.durations);
    return this.lookaheadFromList(isFromEnd, list, cost);
  }

  private kept(plan: DirectedPlan): DirectedPlan {
    if (this.best === undefined || plan.length < this.best.length) this.best = plan;
    return plan;
  }
}
