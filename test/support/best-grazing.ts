import { graze, Season } from '../../shared/pasture/grazier.js';
import type { GrazingProblem } from '../../shared/pasture/grazing-problem.js';
import type { Way } from '../../shared/pasture/grazing-rules.js';
import type { SeasonBooks } from '../../shared/pasture/season-books.js';

/** Thrown where an order cannot become better than the best so far. */
class NoBetter extends Error {}

/** A season walked by the grazier's own rules, with the ways of its first moves given. */
class Tried extends Season {
  /** How many ways there were at each move, staying or hay among them. */
  readonly asked: number[] = [];
  private fedKg = 0;
  private fedUntil: number;

  constructor(
    private readonly of: GrazingProblem,
    private readonly script: readonly number[],
    private readonly mostKg: number,
  ) {
    super(of);
    this.fedUntil = of.from;
  }

  /** When to begin is tried as well: waiting is one of the ways. */
  protected override mayBegin(): boolean {
    return true;
  }

  protected override pick(ways: readonly Way[], day: number): Way | undefined {
    if (ways.length === 0 || day < this.of.from) return ways[0];
    // Of a day that is not over nothing is known yet.
    for (; this.fedUntil < day; this.fedUntil++)
      for (const kg of this.hayKg) this.fedKg += kg[this.fedUntil]!;
    if (this.mostKg <= this.fedKg) throw new NoBetter();
    const chosen = this.script[this.asked.length] ?? 0;
    this.asked.push(ways.length + 1);
    return ways[chosen];
  }
}

const hayOf = ({ hayKg }: SeasonBooks, { from, to }: GrazingProblem): number =>
  hayKg.reduce((sum, kg) => sum + kg.subarray(from, to).reduce((a, b) => a + b, 0), 0);

/** What the grazier's walk feeds beside grass, and the least that any order of moves does, kg. */
export interface Compared {
  readonly walkKg: number;
  readonly bestKg: number;
  readonly needKg: number;
  readonly orders: number;
}

/**
 * The proven best of a small case: every order of paddocks and every wait that the grazier's rules
 * leave open, in at the ready height and after the rest, out at the residual. Costs as many walks as
 * there are orders, less those that cannot become better.
 */
export function bestGrazing(problem: GrazingProblem): Compared {
  const walkKg = hayOf(graze(problem, 'never'), problem);
  let bestKg = walkKg;
  let orders = 0;
  let script: number[] | undefined = [];
  // Better than no hay is nothing.
  while (script && 0.5 < bestKg) {
    const tried: Tried = new Tried(problem, script, bestKg);
    orders++;
    try {
      tried.walk('never');
      bestKg = Math.min(bestKg, hayOf(tried.books(), problem));
    } catch (error) {
      if (!(error instanceof NoBetter)) throw error;
    }
    script = nextScript(script, tried.asked);
  }
  const needKg = problem.herds.reduce(
    (sum, { demandKg }) =>
      sum + demandKg.subarray(problem.from, problem.to).reduce((a, b) => a + b, 0),
    0,
  );
  return { walkKg, bestKg, needKg, orders };
}

/** The next order in turn: the last move of which a way is left takes it. */
function nextScript(script: readonly number[], asked: readonly number[]): number[] | undefined {
  for (let k = asked.length - 1; 0 <= k; k--) {
    const chosen = script[k] ?? 0;
    if (chosen + 1 < asked[k]!)
      return [...Array.from({ length: k }, (_, i) => script[i] ?? 0), chosen + 1];
  }
  return undefined;
}
