import { seenFromOtherEnd, type DirectedPlan } from './directed-plan.js';
import { drawIndex, type Random } from './random.js';

/** A plan from the start and one from the end, each the other justified. */
export interface PlanPair {
  /** The plan from the end as it is seen from the start, so that its list packs it to the start. */
  readonly fromStart: DirectedPlan;
  /** The plan from the start as it is seen from the end. */
  readonly fromEnd: DirectedPlan;
  readonly makespan: number;
  /** The makespan, and below a period how late activities end: the lower the better. */
  readonly fitness: number;
}

export function planPair(one: DirectedPlan, other: DirectedPlan, durations: Int32Array): PlanPair {
  const [forward, backward] = one.isFromEnd ? [other, one] : [one, other];
  const makespan = Math.min(one.length, other.length);
  return {
    fromStart: seenFromOtherEnd(backward, durations),
    fromEnd: seenFromOtherEnd(forward, durations),
    makespan,
    fitness: makespan + (one.meanEnd + other.meanEnd) / 2,
  };
}

/** The best plans so far, no two alike, and a memory of all that came up. */
export class PlanPool {
  readonly pairs: PlanPair[] = [];
  private readonly seen = new Set<number>();

  /** @param size  pairs that are kept, 1 or more */
  constructor(readonly size: number) {}

  /** Whether a plan comes up for the first time. Two plans in 2^32 are taken for the same. */
  isNew({ isFromEnd, starts }: DirectedPlan): boolean {
    let hash = isFromEnd ? 1 : 0;
    for (let i = 0; i < starts.length; i++) hash = Math.imul(hash, FNV_PRIME) ^ starts[i]!;
    if (MOST_SEEN <= this.seen.size) this.seen.clear();
    const before = this.seen.size;
    return before < this.seen.add(hash).size;
  }

  /** Makespan of the worst that is kept; infinite while there is room. */
  worstMakespan(): number {
    return this.pairs.length < this.size ? Infinity : this.pairs[this.worst()]!.makespan;
  }

  /** Keeps a pair when there is room or a worse one to give way. */
  add(pair: PlanPair): void {
    if (this.pairs.some(({ fitness }) => fitness === pair.fitness)) return;
    if (this.pairs.length < this.size) {
      this.pairs.push(pair);
      return;
    }
    const worst = this.worst();
    if (pair.fitness < this.pairs[worst]!.fitness) this.pairs[worst] = pair;
  }

  /** Two pairs, each the better of two drawn; they may be the same when the pool is small. */
  drawTwo(random: Random): [PlanPair, PlanPair] {
    const one = this.draw(random);
    let other = this.draw(random);
    for (let again = 0; again < DRAWS_AGAIN && other === one; again++) other = this.draw(random);
    return [one, other];
  }

  private draw(random: Random): PlanPair {
    const one = this.pairs[drawIndex(random, this.pairs.length)]!;
    const other = this.pairs[drawIndex(random, this.pairs.length)]!;
    return other.fitness < one.fitness ? other : one;
  }

  private worst(): number {
    let worst = 0;
    for (let k = 1; k < this.pairs.length; k++)
      if (this.pairs[worst]!.fitness < this.pairs[k]!.fitness) worst = k;
    return worst;
  }
}

const DRAWS_AGAIN = 5;
/** Long searches forget what came up long ago rather than fill the memory. */
const MOST_SEEN = 1_000_000;
/** Multiplier of the Fowler–Noll–Vo hash of 32 bits. */
const FNV_PRIME = 0x01000193;
