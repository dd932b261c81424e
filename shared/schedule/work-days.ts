import { HoursTogether } from './hours-together.js';
import { marginOf, mayWait } from './work-margin.js';
import { drawIndex, type Random } from './random.js';
import { isBetter, isInTime, leastOf, mayBeShared, withoutCrumb } from './job-pieces.js';
import type { WorkJob, WorkPiece, WorkProblem } from './work.js';

/** How a job may be put otherwise than on the first days by those with most time. */
export interface Variation {
  readonly random: Random;
  /** How often a day is left out, and how often another of those with time does a piece. */
  readonly share: number;
  /** What others wait for is begun and no more, so that they come to their turn early. */
  readonly isBrief: boolean;
  /** Pieces are made shorter instead, so that two jobs share a day that either could fill. */
  readonly isShared: boolean;
  /** Whoever has time for a useful piece is at it, on every day, where one at a time would do. */
  readonly byAll: boolean;
}

/** Hours that are still free, person by person and day by day, while jobs are put in. */
export class WorkDays {
  private readonly days: number;
  private readonly free: Int32Array;
  private readonly light: Int32Array;
  /** Each worker alone: pieces share these lists. */
  private readonly alone: readonly (readonly number[])[];
  private readonly helpsFirst: readonly boolean[];
  private readonly crews: HoursTogether | undefined;
  /** How many of the jobs each worker can do. */
  private readonly canDo: Int32Array;
  /** People looked at on days so far: what looking for a plan takes, whatever the machine. */
  looks = 0;
  /** Whether work that has time enough leaves hours of its days free from now on. */
  leavesMargin = false;

  constructor(readonly problem: WorkProblem) {
    this.days = problem.days;
    this.free = new Int32Array(problem.workers.length * this.days);
    this.light = new Int32Array(this.free.length);
    this.alone = problem.workers.map((_, w) => [w]);
    this.helpsFirst = problem.workers.map(({ helpsFirst = false }) => helpsFirst);
    this.crews = HoursTogether.of(problem.workers);
    this.canDo = new Int32Array(problem.workers.length);
    for (const { able } of problem.jobs) for (const w of able) this.canDo[w]!++;
    this.reset();
  }

  reset(): void {
    this.problem.workers.forEach(({ minutes, lightMinutes }, w) => {
      this.free.set(minutes, w * this.days);
      this.light.set(lightMinutes, w * this.days);
    });
    this.crews?.reset();
  }

  /** Minutes that a worker can still give to a job on a day. */
  left(job: WorkJob, worker: number, day: number): number {
    const at = worker * this.days + day;
    const free = this.free[at]!;
    return job.needsLight && this.light[at]! < free ? this.light[at]! : free;
  }

  /** As `together`, less what work that has time enough leaves free. */
  togetherWithMargin(job: WorkJob, day: number): number {
    this.holdMargin(job, day, day, 1);
    const minutes = this.together(job, day);
    this.holdMargin(job, day, day, -1);
    return minutes;
  }

  /** Whether somebody has less left on one of the days of a job’s pieces than is to be left free. */
  lacksMargin(pieces: readonly WorkPiece[]): boolean {
    return pieces.some(({ day, workers }) =>
      workers.some((w) => this.free[w * this.days + day]! < marginOf(this.problem, w, day)),
    );
  }

  /** Takes what is to be left free of those who can do a job, or with -1 gives it back. */
  private holdMargin({ able }: WorkJob, from: number, until: number, sign: 1 | -1): void {
    for (const w of able)
      for (let day = from; day <= until; day++)
        this.free[w * this.days + day]! -= sign * marginOf(this.problem, w, day);
  }

  /** Minutes on a day that as many people as a job takes still have together. */
  together(job: WorkJob, day: number): number {
    if (job.peopleNeeded === 1) {
      let most = 0;
      for (const w of job.able) most = Math.max(most, this.left(job, w, day));
      return most;
    }
    if (this.crews) return this.crewOn(job, day).minutes;
    const left = job.able.map((w) => this.left(job, w, day)).sort((a, b) => b - a);
    return Math.max(0, left[job.peopleNeeded - 1] ?? 0);
  }

  private crewOn(job: WorkJob, day: number): { workers: number[]; minutes: number } {
    return this.crews!.crew(job.able, job.peopleNeeded, day, (w) => this.left(job, w, day));
  }

  /**
   * Puts a job on the earliest days it fits on, from a day on; takes the hours. Of a job that may
   * be spread it puts what fits: by one a day, and by all who have the time for a useful piece where
   * it would be late else.
   *
   * @param until last day it may take, when that is before its own
   * @returns its pieces, none when it does not fit before its last day
   */
  put(job: WorkJob, from: number, until = job.untilDay, vary?: Variation): WorkPiece[] {
    const span = { from, until };
    const pieceOf =
      (by: WorkJob): PieceOf =>
      (day, open, least) =>
        this.pieceOn(by, day, { open, least }, vary?.byAll ? undefined : vary);
    return vary
      ? this.walk(job, span, pieceOf(job), vary.byAll && mayBeShared(job))
      : this.withMargin(job, span, pieceOf);
  }

  /** As `put`, but rather a shorter piece than a rest that is too small to be useful. */
  putInUsefulPieces(job: WorkJob, from: number, until: number): WorkPiece[] {
    return this.withMargin(job, { from, until }, (by) => (day, open, least) => {
      const piece = this.pieceOn(by, day, { open, least }, undefined);
      return piece && { ...piece, minutes: withoutCrumb(job, open, piece.minutes) };
    });
  }

  /** With hours left free on its days where it is in time by far all the same. */
  private withMargin(job: WorkJob, span: DaySpan, pieceOf: (job: WorkJob) => PieceOf): WorkPiece[] {
    const { margin } = this.problem;
    if (!margin || !this.leavesMargin || !mayWait(this.problem).has(job))
      return this.inTime(job, span, pieceOf);
    const from = Math.max(0, span.from);
    const until = Math.min(span.until, job.dueDay - margin.spareDays, this.days - 1);
    this.holdMargin(job, from, until, 1);
    const pieces = this.inTime(job, { from, until }, pieceOf);
    this.holdMargin(job, from, until, -1);
    if (isInTime(job, pieces)) return pieces;
    this.giveBack(job, pieces);
    return this.inTime(job, span, pieceOf);
  }

  /** By one a day, or by more of those who have the time where that costs less or is sooner. */
  private inTime(job: WorkJob, span: DaySpan, pieceOf: (job: WorkJob) => PieceOf): WorkPiece[] {
    const byOne = this.walk(job, span, pieceOf(job), false);
    const byHelpers = this.byHelpers(job, span, pieceOf, byOne);
    if (byHelpers) return byHelpers;
    if (!mayBeShared(job) || isInTime(job, byOne)) return byOne;
    this.giveBack(job, byOne);
    const byMore = this.walk(job, span, pieceOf(job), true);
    if (isBetter(job, byMore, byOne)) return byMore;
    this.giveBack(job, byMore);
    for (const piece of byOne) this.take(job, piece);
    return byOne;
  }

  /** Instead of the pieces that a job has such of who help first, where it is begun as soon and in time. */
  private byHelpers(
    job: WorkJob,
    span: DaySpan,
    pieceOf: (job: WorkJob) => PieceOf,
    was: readonly WorkPiece[],
  ): WorkPiece[] | undefined {
    const able = mayBeShared(job) ? job.able.filter((w) => this.helpsFirst[w]) : [];
    if (able.length === 0 || able.length === job.able.length || was.length === 0) return undefined;
    if (was.every(({ workers: [w] }) => this.helpsFirst[w!])) return undefined;
    const theirs = { ...job, able };
    this.giveBack(job, was);
    for (const isShared of [false, true]) {
      const pieces = this.walk(theirs, span, pieceOf(theirs), isShared);
      if (isInTime(job, pieces) && pieces[0]!.day <= was[0]!.day) return pieces;
      this.giveBack(job, pieces);
    }
    for (const piece of was) this.take(job, piece);
    return undefined;
  }

  /**
   * Takes a piece of a job on each day that has room for one, until all of it is done.
   *
   * @param isShared a piece by each who has the time for one on a day
   */
  private walk(
    job: WorkJob,
    { from, until }: DaySpan,
    pieceOf: PieceOf,
    isShared: boolean,
  ): WorkPiece[] {
    const last = Math.min(until, job.untilDay, this.days - 1);
    const pieces: WorkPiece[] = [];
    let open = job.minutes;
    let day = Math.max(0, from);
    for (;;) {
      const least = leastOf(job, open);
      day = this.firstDayFor(job, day, last, least);
      if (last < day) return pieces;
      const piece = pieceOf(day, open, least);
      // Who has had a piece has too little left for another: the day is over when nobody has more.
      if (!piece || !isShared) day++;
      if (!piece) continue;
      this.take(job, piece);
      pieces.push(piece);
      open -= piece.minutes;
      if (open <= 0) return pieces;
    }
  }

  /**
   * As early as a job of one could be if all who can do it gave every minute to it, in pieces however
   * small: no plan has more of it done by any day. Takes no hours.
   */
  putByAll(job: WorkJob, from: number): WorkPiece[] {
    const last = Math.min(job.untilDay, this.days - 1);
    const pieces: WorkPiece[] = [];
    let open = job.minutes;
    for (let day = Math.max(0, from); day <= last && 0 < open; day++) {
      if (job.suits && job.suits[day] === 0) continue;
      let sum = 0;
      for (const w of job.able) sum += this.left(job, w, day);
      const minutes = Math.min(open, sum);
      if (minutes <= 0) continue;
      pieces.push({ day, minutes, workers: job.able });
      open -= minutes;
    }
    return pieces;
  }

  /** Puts the smallest useful piece of a job on the first day it fits on; takes its hours. */
  begin(job: WorkJob, from: number, until: number): WorkPiece[] {
    const last = Math.min(until, job.untilDay, this.days - 1);
    const least = leastOf(job, job.minutes);
    const day = this.firstDayFor(job, Math.max(0, from), last, least);
    const piece = day <= last && this.pieceOn(job, day, { open: least, least }, undefined);
    if (!piece) return [];
    this.take(job, piece);
    return [piece];
  }

  /** The first day from one on that suits and on which enough people have the least time; else one after the last. */
  private firstDayFor(job: WorkJob, from: number, last: number, least: number): number {
    const { suits, able, peopleNeeded, needsLight } = job;
    for (let day = from; day <= last; day++) {
      if (suits && suits[day] === 0) continue;
      this.looks += able.length;
      let fit = 0;
      for (const w of able) {
        const at = w * this.days + day;
        if (this.free[at]! < least || (needsLight && this.light[at]! < least)) continue;
        if (++fit < peopleNeeded) continue;
        if (peopleNeeded === 1 || !this.crews || least <= this.crewOn(job, day).minutes) return day;
        break;
      }
    }
    return last + 1;
  }

  /** Puts a job back where it was, when it still fits there; a part only of what may be spread. */
  putWhereItWas(job: WorkJob, from: number, was: readonly WorkPiece[], until = Infinity): boolean {
    const { smallestPieceMinutes: smallest, minutes: all } = job;
    if (smallest === undefined && 1 < was.length) return false;
    const last = Math.min(until, job.untilDay, this.days - 1);
    let total = 0;
    for (const { day, minutes, workers } of was) {
      const fits =
        Math.min(smallest ?? all, all - total) <= minutes &&
        from <= day &&
        day <= last &&
        (!job.suits || job.suits[day] === 1) &&
        workers.length === job.peopleNeeded &&
        workers.every((w) => job.able.includes(w) && minutes <= this.left(job, w, day)) &&
        (!this.crews || minutes <= this.crews.most(workers, day, minutes));
      if (!fits) return false;
      total += minutes;
    }
    if (all < total) return false;
    for (const piece of was) this.take(job, piece);
    return true;
  }

  take(job: WorkJob, piece: WorkPiece): void {
    this.lend(job, piece, -piece.minutes);
    this.crews?.take(piece.workers, piece.day, piece.minutes);
  }

  /** Gives each more time on a day: those who are there at other hours have no more together by it. */
  lend(job: WorkJob, { day, workers }: Omit<WorkPiece, 'minutes'>, minutes: number): void {
    for (const w of workers) {
      const at = w * this.days + day;
      this.free[at]! += minutes;
      if (job.needsLight) this.light[at]! += minutes;
    }
  }

  giveBack(job: WorkJob, pieces: readonly WorkPiece[]): void {
    for (const piece of pieces) {
      this.lend(job, piece, piece.minutes);
      this.crews?.take(piece.workers, piece.day, -piece.minutes);
    }
  }

  /** The most of a job that fits on a day that has the least, by those with most time left. */
  private pieceOn(
    job: WorkJob,
    day: number,
    { open, least }: { open: number; least: number },
    vary: Variation | undefined,
  ): WorkPiece | undefined {
    const { peopleNeeded, able } = job;
    this.looks += PIECE_LOOKS * able.length;
    if (vary && vary.random() < vary.share) return this.otherOn(job, day, { open, least }, vary);
    if (peopleNeeded === 1) {
      const one = this.bestOn(job, day, { open, least });
      return { day, minutes: Math.min(open, this.left(job, one, day)), workers: this.alone[one]! };
    }
    if (this.crews) {
      const { workers, minutes } = this.crewOn(job, day);
      return minutes < least ? undefined : { day, minutes: Math.min(open, minutes), workers };
    }
    const fit = able
      .filter((w) => least <= this.left(job, w, day))
      .sort((a, b) => this.left(job, b, day) - this.left(job, a, day) || a - b);
    return this.pieceBy(job, day, open, fit.slice(0, peopleNeeded));
  }

  /**
   * Who has time for most of what is open; of those who have as much, who can do the fewest jobs, as
   * others have no such choice, and then who has most time left.
   */
  private bestOn(
    job: WorkJob,
    day: number,
    { open, least }: { open: number; least: number },
  ): number {
    const { canDo } = this;
    let best = -1;
    let [mostGiven, mostLeft] = [0, 0];
    for (const w of job.able) {
      const left = this.left(job, w, day);
      if (left < least) continue;
      const given = left < open ? left : open;
      if (best !== -1) {
        if (given < mostGiven) continue;
        const asMuch = given === mostGiven;
        if (asMuch && canDo[best]! < canDo[w]!) continue;
        if (asMuch && canDo[best] === canDo[w] && left <= mostLeft) continue;
      }
      best = w;
      mostGiven = given;
      mostLeft = left;
    }
    return best;
  }

  /** Nothing on this day, or a piece by others of those who have the time, or a smaller one. */
  private otherOn(
    job: WorkJob,
    day: number,
    { open, least }: { open: number; least: number },
    { random, isShared }: Variation,
  ): WorkPiece | undefined {
    if (!isShared && random() < 0.4) return undefined;
    const fit = job.able.filter((w) => least <= this.left(job, w, day));
    while (job.peopleNeeded < fit.length) fit.splice(drawIndex(random, fit.length), 1);
    const piece = this.pieceBy(job, day, open, fit);
    if (piece && piece.minutes < least) return undefined;
    if (!piece || piece.minutes <= least || (!isShared && random() < 0.5)) return piece;
    const steps = Math.ceil((piece.minutes - least) / STEP_MINUTES);
    return { ...piece, minutes: least + STEP_MINUTES * drawIndex(random, steps) };
  }

  private pieceBy(
    job: WorkJob,
    day: number,
    open: number,
    workers: number[],
  ): WorkPiece | undefined {
    if (workers.length < job.peopleNeeded || workers.length === 0) return undefined;
    let minutes = open;
    for (const w of workers) minutes = Math.min(minutes, this.left(job, w, day));
    minutes = this.crews?.most(workers, day, minutes) ?? minutes;
    return { day, minutes, workers: workers.sort((a, b) => a - b) };
  }
}

/** Days within which a job is put. */
interface DaySpan {
  readonly from: number;
  readonly until: number;
}

type PieceOf = (day: number, open: number, least: number) => WorkPiece | undefined;

/** Looks that it takes to choose who does a piece, for each who can. */
const PIECE_LOOKS = 6;

/** Smaller pieces are a whole number of these longer than the smallest useful one. */
const STEP_MINUTES = 15;
