import type { Random } from './random.js';
import type { WorkProblem } from './work.js';

/** Tries of the first round; each is twice as long as the one before. */
const FIRST_ROUND = 250;
/** Cost that is often accepted at the start and the end of a round, of what a usual job costs. */
const WARM_SHARE = 0.08;
const COLD_SHARE = 0.0005;

/**
 * How much worse a plan may become before it gets better: less from try to try, in rounds that
 * begin warm again. It goes by the tries made and not by those to come, so that more of them never
 * find less.
 *
 * Source: simulated annealing, Kirkpatrick et al. (1983).
 */
export class Heat {
  private readonly usual: number;
  private round = FIRST_ROUND;
  private at = 0;

  constructor({ jobs }: WorkProblem) {
    const sum = jobs.reduce((all, { lostCost }) => all + lostCost, 0);
    this.usual = sum / Math.max(1, jobs.length);
  }

  /** One try more; tells whether a round is over. */
  cool(): boolean {
    if (++this.at < this.round) return false;
    this.at = 0;
    this.round *= 2;
    return true;
  }

  /** Whether a plan that costs so much more is gone on from. */
  allows(cost: number, random: Random): boolean {
    if (cost <= 0) return true;
    const share = WARM_SHARE * (COLD_SHARE / WARM_SHARE) ** (this.at / this.round);
    return random() < Math.exp(-cost / (share * this.usual));
  }
}
