import { tailLengths } from './activity-network.js';
import { sampledList } from './biased-sampling.js';
import { seenFromOtherEnd, type DirectedPlan } from './directed-plan.js';
import { ListMixer } from './list-mixer.js';
import { PlanMaker, type ProjectLimits } from './plan-maker.js';
import { planPair, PlanPool } from './plan-pool.js';
import { projectBound } from './project-bound.js';
import type { ReadyProject } from './project.js';
import type { Random } from './random.js';

export interface ProjectPlan {
  /** First period of each activity, from 0. */
  readonly starts: Int32Array;
  /** Periods from the first start to the last end. */
  readonly makespan: number;
  /** No plan is shorter; equal to the makespan, the plan is proven best. */
  readonly bound: number;
  /** Passes of a schedule generation scheme over all activities that were made. */
  readonly schedules: number;
}

/** Pairs that are kept: more when there is time for more, because a small pool soon grows alike. */
const POOL = { least: 20, at5000: 60, most: 200 };
/** Plans to begin with, of which the shorter are kept. */
const SAMPLED_PER_KEPT = 2;
/** Of the sampled lists: places over which their weight fades, see PackedGeneration. */
const FADE = { least: 20, most: 150 };
/** Of mixed lists: how many are packed instead of looked ahead in. */
const MIXED_PACKED = { share: 0.1, fade: 30 };
/** Mean durations that a place down the list counts as, see LookaheadGeneration. */
const COST = { least: 0.1, most: 0.4 };
/** Plans this many periods longer than any in the pool are dropped: new, and justified once. */
const HOPELESS = { new: 5, justified: 3 };

/**
 * A short plan of a project whose activities share resources.
 *
 * A genetic algorithm on lists. It begins with randomly biased lists packed by the parallel
 * scheme from either end. Each further list is mixed from two plans that are packed to the one end
 * but seen from the other, so that crossing justifies them too; a serial scheme that looks ahead
 * makes it a plan and justifies it, and a plain one justifies it back. A plan that was there before
 * is dropped as soon as it comes up again. Every pass, forward or backward, is a schedule. It stops
 * when the plan is proven best, so that schedules may be left.
 *
 * Sources: Debels and Vanhoucke, "A decomposition-based genetic algorithm for the
 * resource-constrained project-scheduling problem", Operations Research 55 (2007), for plans of
 * one end made from those of the other; the parts name theirs.
 *
 * @param random  the same numbers give the same plan
 * @throws RangeError when `schedules` is not a whole number of 1 or more
 */
export function searchProject(
  project: ReadyProject,
  limits: ProjectLimits,
  random: Random,
): ProjectPlan {
  const { schedules } = limits;
  if (!Number.isInteger(schedules) || schedules < 1)
    throw new RangeError(`Make ${schedules} schedules? Give a whole number of 1 or more.`);
  const bound = projectBound(project);
  const maker = new PlanMaker(project, bound, limits);
  const pool = new PlanPool(poolSize(schedules));
  fill(pool, maker, random);
  evolve(pool, maker, new ListMixer(project, random), random);
  const best = maker.best!;
  return {
    starts: (best.isFromEnd ? seenFromOtherEnd(best, maker.durations) : best).starts,
    makespan: best.length,
    bound,
    schedules: maker.schedules,
  };
}

function poolSize(schedules: number): number {
  const size = Math.round(POOL.at5000 * Math.sqrt(schedules / 5000));
  return Math.min(POOL.most, Math.max(POOL.least, size));
}

/** The shorter of plans packed from either end in turn. */
function fill(pool: PlanPool, maker: PlanMaker, random: Random): void {
  const ways = [maker.forwards, maker.backwards].map((each) => tailLengths(each, maker.durations));
  const sampled: DirectedPlan[] = [];
  while (sampled.length < SAMPLED_PER_KEPT * pool.size && !maker.isOver()) {
    const isFromEnd = sampled.length % 2 === 1;
    const list = sampledList(maker.network(isFromEnd), ways[isFromEnd ? 1 : 0]!, random);
    sampled.push(maker.packedFromList(isFromEnd, list, drawBetween(FADE, random)));
  }
  sampled.sort((one, other) => one.length - other.length);
  for (const plan of sampled) {
    if (pool.size <= pool.pairs.length || maker.isOver()) break;
    complete(pool, maker, plan, random);
  }
}

/** Evenly over the factors between the least and the most. */
const drawBetween = ({ least, most }: { least: number; most: number }, random: Random): number =>
  least * (most / least) ** random();

function evolve(pool: PlanPool, maker: PlanMaker, mixer: ListMixer, random: Random): void {
  const list = new Int32Array(maker.durations.length);
  while (!maker.isOver()) {
    const [one, other] = pool.drawTwo(random);
    const isFromEnd = random() < 0.5;
    const end = isFromEnd ? 'fromEnd' : 'fromStart';
    mixer.mix(maker.network(isFromEnd), one[end], other[end], list);
    const plan =
      random() < MIXED_PACKED.share
        ? maker.packedFromList(isFromEnd, list, MIXED_PACKED.fade)
        : maker.lookaheadFromList(isFromEnd, list, drawBetween(COST, random));
    complete(pool, maker, plan, random);
  }
}

/** Justifies a new plan to the other end, and back when that made it shorter; keeps the pair. */
function complete(pool: PlanPool, maker: PlanMaker, plan: DirectedPlan, random: Random): void {
  const worst = pool.worstMakespan();
  if (worst + HOPELESS.new <= plan.length || !pool.isNew(plan) || maker.isOver()) return;
  const turned = maker.lookaheadJustified(plan, drawBetween(COST, random));
  if (worst + HOPELESS.justified <= turned.length || !pool.isNew(turned)) return;
  if (plan.length <= turned.length) {
    pool.add(planPair(plan, turned, maker.durations));
  } else if (!maker.isOver()) {
    const back = maker.justified(turned);
    if (pool.isNew(back)) pool.add(planPair(back, turned, maker.durations));
  }
}
