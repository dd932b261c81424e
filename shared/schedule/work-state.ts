import type { ActivityNetwork } from './activity-network.js';
import { drawIndex } from './random.js';
import { mayWait } from './work-margin.js';
import { WorkDays, type Variation } from './work-days.js';
import {
  allLoose,
  drawEarlier,
  loosen,
  movedShare,
  type EarlierWork,
  type Loose,
  type Settling,
} from './work-settling.js';
import { followersOf, putWithBefore, spanOf, type Followers, type Span } from './work-span.js';
import {
  costOf,
  placedMinutes,
  type WorkJob,
  type WorkPiece,
  type WorkPlacing,
  type WorkProblem,
} from './work.js';

/** A plan that is changed in place: a few jobs are taken out and put in again. */
export class WorkState implements Settling {
  readonly pieces: (readonly WorkPiece[])[];
  /** Of each job, with what it costs that it moved. */
  readonly costs: Float64Array;
  readonly followers: readonly Followers[];
  readonly days: WorkDays;
  total = 0;
  private readonly loose: Loose;

  constructor(
    readonly problem: WorkProblem,
    readonly network: ActivityNetwork,
    plan: WorkPlacing,
    readonly earlier: EarlierWork | undefined,
  ) {
    this.days = new WorkDays(problem);
    this.followers = followersOf(problem);
    this.pieces = [...plan];
    this.costs = new Float64Array(problem.jobs.length);
    this.loose = allLoose(problem);
    this.take(plan);
  }

  /** Goes back to a plan that was settled. */
  goTo(plan: WorkPlacing): void {
    this.take(plan);
    this.loose.jobs.fill(0);
    this.loose.days.fill(0);
  }

  private take(plan: WorkPlacing): void {
    this.days.reset();
    plan.forEach((pieces, i) => {
      this.pieces[i] = pieces;
      const job = this.problem.jobs[i]!;
      if (!job.pinned) for (const piece of pieces) this.days.take(job, piece);
    });
    this.addUp();
  }

  /** Draws jobs to the first days they fit on, which costs no more; looks where hours were freed. */
  settle(): void {
    drawEarlier(this, this.loose);
    this.addUp();
  }

  /**
   * Splits work anew that has a piece too small to be useful, or that several are at on one day
   * though one would do, where that costs nothing; what this frees goes to who can begin earlier by it.
   */
  tidy(): void {
    this.problem.jobs.forEach((job, i) => {
      const was = this.pieces[i]!;
      if (job.pinned || !(hasCrumb(job, was) || isByMore(was))) return;
      this.takeOut(i);
      const { from, until } = this.spanOf(i);
      const pieces = this.days.putInUsefulPieces(job, from, until);
      const isBetter =
        placedMinutes(pieces) === placedMinutes(was) &&
        !hasCrumb(job, pieces) &&
        (hasCrumb(job, was) || !isByMore(pieces)) &&
        this.costWith(i, pieces) <= this.costs[i]!;
      if (isBetter) {
        this.pieces[i] = pieces;
        loosen(this, this.loose, i, was);
        return;
      }
      this.days.giveBack(job, pieces);
      this.pieces[i] = was;
      for (const piece of was) this.days.take(job, piece);
    });
    drawEarlier(this, this.loose, 'in-useful-pieces');
    this.addUp();
  }

  /**
   * Leaves hours of full days free: work that has time enough goes to later days, the last due first.
   * What stands where an earlier plan had it stays.
   */
  leaveMargin(): void {
    if (!this.problem.margin) return;
    const { jobs } = this.problem;
    const may = mayWait(this.problem);
    this.days.leavesMargin = true;
    const inTurn = jobs.map((_, i) => i).sort((a, b) => jobs[b]!.dueDay - jobs[a]!.dueDay || b - a);
    for (const i of inTurn) {
      const was = this.pieces[i]!;
      if (!may.has(jobs[i]!) || was.length === 0 || !this.days.lacksMargin(was)) continue;
      const cost = this.costs[i]!;
      const before = this.earlier?.plan[i] ?? [];
      if (before.length > 0 && movedShare(jobs[i]!, was, before) === 0) continue;
      this.takeOut(i);
      const { from, until } = this.spanOf(i);
      const now = this.days.putInUsefulPieces(jobs[i]!, from, until);
      const isWhole = placedMinutes(now) === placedMinutes(was);
      if (isWhole && !this.days.lacksMargin(now) && this.costWith(i, now) <= cost) {
        this.pieces[i] = now;
        loosen(this, this.loose, i, was);
        continue;
      }
      this.days.giveBack(jobs[i]!, now);
      this.pieces[i] = was;
      for (const piece of was) this.days.take(jobs[i]!, piece);
    }
    drawEarlier(this, this.loose, 'in-useful-pieces');
    this.days.leavesMargin = false;
    this.addUp();
  }

  /**
   * Puts jobs where they were in the earlier plan, as far as they can be.
   *
   * @returns whether all of it stands as it did
   */
  stayWhere(list: Int32Array): boolean {
    let isAll = true;
    for (const i of list) {
      const job = this.problem.jobs[i]!;
      const was = this.earlier?.plan[i] ?? [];
      if (job.pinned || was.length === 0) continue;
      const { from, until } = this.spanOf(i);
      if (0 <= from && this.days.putWhereItWas(job, from, was, until)) this.pieces[i] = was;
      else isAll = false;
    }
    this.addUp();
    return isAll;
  }

  /** Puts in what has no place yet. */
  fillUp(list: Int32Array): void {
    for (const i of list)
      if (!this.problem.jobs[i]!.pinned && this.pieces[i]!.length === 0)
        this.pieces[i] = this.placed(i, undefined, () => true);
    this.addUp();
  }

  /** What the plan costs, whatever moved. */
  costWithoutMoves(): number {
    return this.problem.jobs.reduce((sum, job, i) => sum + costOf(job, this.pieces[i]!), 0);
  }

  private addUp(): void {
    this.total = 0;
    this.pieces.forEach((pieces, i) => {
      this.costs[i] = this.costWith(i, pieces);
      this.total += this.costs[i]!;
    });
  }

  /**
   * Takes jobs out and puts them in again one by one in the order given, what they wait for first.
   *
   * @returns what they cost now less what they did; undefined when what waits for one of them could
   * not stay where it is, and nothing has changed
   */
  putAgain(jobs: readonly number[], vary: Variation | undefined): Change | undefined {
    const before = jobs.map((i) => this.pieces[i]!);
    for (const i of jobs) this.takeOut(i);
    const open = new Set(jobs);
    const isIn = (i: number): boolean => jobs.includes(i);
    let isKept = true;
    const putIn = (i: number): void => {
      if (!open.delete(i)) return;
      for (const { job } of this.problem.jobs[i]!.waitsFor) putIn(job);
      this.pieces[i] = isKept ? this.placed(i, vary, isIn) : [];
      if (this.pieces[i].length === 0 && this.holdsUpAny(i)) isKept = false;
    };
    for (const i of jobs) putIn(i);
    let cost = 0;
    for (const i of jobs) cost += this.costWith(i, this.pieces[i]!) - this.costs[i]!;
    const change = { jobs, before, cost };
    if (isKept) return change;
    this.undo(change);
    return undefined;
  }

  undo({ jobs, before }: Change): void {
    for (const i of jobs) this.takeOut(i);
    jobs.forEach((i, k) => {
      this.pieces[i] = before[k]!;
      for (const piece of before[k]!) this.days.take(this.problem.jobs[i]!, piece);
    });
  }

  /** Keeps what was put in again. */
  keep({ jobs, before, cost }: Change): void {
    jobs.forEach((i, k) => {
      this.costs[i] = this.costWith(i, this.pieces[i]!);
      loosen(this, this.loose, i, before[k]!);
    });
    this.total += cost;
  }

  private takeOut(i: number): void {
    this.days.giveBack(this.problem.jobs[i]!, this.pieces[i]!);
    this.pieces[i] = [];
  }

  private spanOf(i: number): Span {
    return spanOf(this.problem.jobs[i]!, this.followers[i]!, this.pieces);
  }

  /** @param mayMove whether what it follows within some days may be put again */
  private placed(
    i: number,
    vary: Variation | undefined,
    mayMove: (i: number) => boolean,
  ): readonly WorkPiece[] {
    const job = this.problem.jobs[i]!;
    const span = this.spanOf(i);
    const { from } = span;
    if (from < 0) return [];
    if (vary?.isBrief && this.mayBeCut(i)) return this.days.begin(job, from, span.until);
    const until = this.lastDayOf(i, span, vary);
    const was = this.earlier?.plan[i];
    const stays =
      was !== undefined &&
      0 < was.length &&
      (!vary || vary.random() < STAYS_SHARE) &&
      this.days.putWhereItWas(job, from, was, until);
    if (stays) return was;
    const pieces = this.days.put(job, from, until, vary);
    return 0 < pieces.length ? pieces : putWithBefore(this, i, mayMove);
  }

  /** Of what may be done in part sometimes less is put in, so that what waits for it fits. */
  private lastDayOf(i: number, { from, until }: Span, vary: Variation | undefined): number {
    const { untilDay } = this.problem.jobs[i]!;
    if (!vary || !this.mayBeCut(i) || CUT_SHARE < vary.random()) return until;
    const last = Math.min(until, untilDay, this.problem.days - 1);
    return last <= from ? last : from + drawIndex(vary.random, last - from + 1);
  }

  private mayBeCut(i: number): boolean {
    const isSpread = this.problem.jobs[i]!.smallestPieceMinutes !== undefined;
    return isSpread && 0 < this.followers[i]!.length;
  }

  private holdsUpAny(i: number): boolean {
    return this.followers[i]!.some(({ job }) => 0 < this.pieces[job]!.length);
  }

  private costWith(i: number, pieces: readonly WorkPiece[]): number {
    const job = this.problem.jobs[i]!;
    const cost = costOf(job, pieces);
    if (!this.earlier) return cost;
    return cost + this.earlier.costPerMove * movedShare(job, pieces, this.earlier.plan[i]!);
  }
}

const hasCrumb = ({ smallestPieceMinutes }: WorkJob, pieces: readonly WorkPiece[]): boolean =>
  1 < pieces.length && pieces.some(({ minutes }) => minutes < (smallestPieceMinutes ?? 0));

/** Whether several people are at it on one day, each with a piece. */
const isByMore = (pieces: readonly WorkPiece[]): boolean =>
  pieces.some(({ day }, k) => day === pieces[k - 1]?.day);

/** How often a job that others wait for is cut short. */
const CUT_SHARE = 0.3;

/** How often a job that is put in again is first tried where it was in an earlier plan. */
const STAYS_SHARE = 0.7;

/** Jobs that were put in again, where they were before, and the cost of it. */
export interface Change {
  readonly jobs: readonly number[];
  readonly before: readonly (readonly WorkPiece[])[];
  readonly cost: number;
}
