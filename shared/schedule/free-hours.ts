import { HoursTogether } from './hours-together.js';
import type { WorkJob, Worker } from './work.js';

/** Hours of workers that one play of a year uses up; made once, for many plays. */
export class FreeHours {
  private readonly free: Int32Array[];
  private readonly light: Int32Array[];
  private readonly one = [0];
  private readonly crews: HoursTogether | undefined;

  constructor(private readonly workers: readonly Worker[]) {
    this.free = workers.map(({ minutes }) => minutes.slice());
    this.light = workers.map(({ lightMinutes }) => lightMinutes.slice());
    this.crews = HoursTogether.of(workers);
  }

  reset(): void {
    this.workers.forEach(({ minutes, lightMinutes }, w) => {
      this.free[w]!.set(minutes);
      this.light[w]!.set(lightMinutes);
    });
    this.crews?.reset();
  }

  /**
   * Takes hours of a day for the most of a job that fits on it, by those with most time left.
   *
   * @returns the minutes of each who takes part, 0 when it does not fit
   */
  take(job: WorkJob, day: number, open: number): number {
    const { smallestPieceMinutes: smallest, peopleNeeded: people } = job;
    const least = smallest === undefined ? open : Math.min(smallest, open);
    const crew = people === 1 ? this.best(job, day, least) : this.few(job, day, least);
    if (crew.length < people) return 0;
    let minutes = open;
    for (const w of crew) minutes = Math.min(minutes, this.left(job, w, day));
    if (this.crews && 1 < people) {
      minutes = this.crews.most(crew, day, minutes);
      this.crews.take(crew, day, minutes);
    }
    for (const w of crew) {
      this.free[w]![day]! -= minutes;
      if (job.needsLight) this.light[w]![day]! -= minutes;
    }
    return minutes;
  }

  private best(job: WorkJob, day: number, least: number): readonly number[] {
    let best = -1;
    let most = least - 1;
    for (const w of job.able) {
      const left = this.left(job, w, day);
      if (most < left) [most, best] = [left, w];
    }
    if (best < 0) return NOBODY;
    this.one[0] = best;
    return this.one;
  }

  private few(job: WorkJob, day: number, least: number): readonly number[] {
    if (this.crews) {
      const left = (w: number): number => this.left(job, w, day);
      const { workers, minutes } = this.crews.crew(job.able, job.peopleNeeded, day, left);
      return minutes < least ? NOBODY : workers;
    }
    return job.able
      .filter((w) => least <= this.left(job, w, day))
      .sort((a, b) => this.left(job, b, day) - this.left(job, a, day) || a - b)
      .slice(0, job.peopleNeeded);
  }

  private left(job: WorkJob, worker: number, day: number): number {
    const free = this.free[worker]![day]!;
    return job.needsLight ? Math.min(free, this.light[worker]![day]!) : free;
  }
}

const NOBODY: readonly number[] = [];
