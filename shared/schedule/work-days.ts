import type { WorkJob, WorkPiece, Worker, WorkProblem } from './work.js';

/** Hours that are still free, person by person and day by day, while jobs are put in. */
export class WorkDays {
  private readonly free: Int32Array[];
  private readonly light: Int32Array[];

  constructor(
    private readonly problem: WorkProblem,
    private readonly full: readonly Worker[] = problem.workers,
  ) {
    this.free = full.map(({ minutes }) => minutes.slice());
    this.light = full.map(({ lightMinutes }) => lightMinutes.slice());
  }

  reset(): void {
    this.full.forEach(({ minutes, lightMinutes }, w) => {
      this.free[w]!.set(minutes);
      this.light[w]!.set(lightMinutes);
    });
  }

  /** Minutes that a worker can still give to a job on a day. */
  left(job: WorkJob, worker: number, day: number): number {
    const free = this.free[worker]![day]!;
    return job.needsLight ? Math.min(free, this.light[worker]![day]!) : free;
  }

  /** Minutes on a day that as many people as a job takes still have together. */
  together(job: WorkJob, day: number): number {
    const left = job.able.map((w) => this.left(job, w, day)).sort((a, b) => b - a);
    return Math.max(0, left[job.peopleNeeded - 1] ?? 0);
  }

  /**
   * Puts a job on the earliest days it fits on, from a day on; takes the hours. Of a job that may
   * be spread it puts what fits.
   *
   * @param until last day it may take, when that is before its own
   * @returns its pieces, none when it does not fit before its last day
   */
  put(job: WorkJob, from: number, until = job.untilDay): WorkPiece[] {
    const last = Math.min(until, job.untilDay, this.problem.days - 1);
    const pieces: WorkPiece[] = [];
    let open = job.minutes;
    for (let day = Math.max(0, from); day <= last; day++) {
      if (job.suits && job.suits[day] === 0) continue;
      const piece = this.pieceOn(job, day, open);
      if (!piece) continue;
      this.take(job, piece);
      pieces.push(piece);
      open -= piece.minutes;
      if (open <= 0) return pieces;
    }
    return pieces;
  }

  /** Puts a job back where it was, whole, when it still fits there. */
  putWhereItWas(job: WorkJob, from: number, was: readonly WorkPiece[]): boolean {
    const { smallestPieceMinutes: smallest } = job;
    if (smallest === undefined && 1 < was.length) return false;
    let total = 0;
    for (const { day, minutes, workers } of was) {
      const fits =
        Math.min(smallest ?? 0, job.minutes - total) <= minutes &&
        from <= day &&
        day <= Math.min(job.untilDay, this.problem.days - 1) &&
        (!job.suits || job.suits[day] === 1) &&
        workers.length === job.peopleNeeded &&
        workers.every((w) => job.able.includes(w) && minutes <= this.left(job, w, day));
      if (!fits) return false;
      total += minutes;
    }
    if (total !== job.minutes) return false;
    for (const piece of was) this.take(job, piece);
    return true;
  }

  take(job: WorkJob, { day, minutes, workers }: WorkPiece): void {
    for (const w of workers) {
      this.free[w]![day]! -= minutes;
      if (job.needsLight) this.light[w]![day]! -= minutes;
    }
  }

  giveBack(job: WorkJob, pieces: readonly WorkPiece[]): void {
    for (const piece of pieces) this.take(job, { ...piece, minutes: -piece.minutes });
  }

  /** The most of a job that fits on a day, by those with most time left. */
  private pieceOn(job: WorkJob, day: number, open: number): WorkPiece | undefined {
    const { smallestPieceMinutes: smallest, peopleNeeded: people, able } = job;
    const least = smallest === undefined ? open : Math.min(smallest, open);
    if (people === 1) {
      let best = -1;
      let most = least - 1;
      for (const w of able) {
        const left = this.left(job, w, day);
        if (most < left) {
          most = left;
          best = w;
        }
      }
      return best < 0 ? undefined : { day, minutes: Math.min(open, most), workers: [best] };
    }
    const fit = able
      .map((w) => ({ w, left: this.left(job, w, day) }))
      .filter(({ left }) => least <= left)
      .sort((a, b) => b.left - a.left || a.w - b.w)
      .slice(0, people);
    if (fit.length < people || fit.length === 0) return undefined;
    const minutes = Math.min(open, fit.at(-1)!.left);
    return { day, minutes, workers: fit.map(({ w }) => w).sort((a, b) => a - b) };
  }
}
