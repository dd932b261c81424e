import { usualAhead } from './usual-ahead.js';
import type { PlayedJob, YearSuits } from './work-years.js';
import { finishDay, type WorkJob, type WorkProblem } from './work.js';

/** Taken last: not pressing, not begun, and asking nothing of the weather. */
const LAST_RANK = 6;

/** The years that are played, and what people know of them in advance. */
export interface PlayedSky {
  readonly years: readonly YearSuits[];
  /** Days from one choice to the next, all of which are forecast. */
  readonly everyDays: number;
  /** Of each year the year whose weather is forecast for each day. */
  readonly forecasts: readonly Int16Array[];
}

/** The order in which work is taken, and what comes before everything else. */
export interface TakenOrder {
  /** Every job once, none before one that it waits for. */
  readonly list: Int32Array;
  /** A job that is taken first whatever else there is, with what it waits for. */
  readonly first?: number;
}

/**
 * Work that would have so much of its usual chance left after this week is not put off: usual days
 * are shared with other work, and half of the years have fewer.
 */
const CARE = 2;

/**
 * Plays work through years by people who look at the sky: week by week they choose days for what is
 * open, knowing what has happened, the forecast of that week and, beyond it, only what is usual.
 *
 * What may not be done in time if it waits, by usual weather, comes first; then what is begun; then
 * the rest in the order given. Work that asks for weather takes its days before work that does not.
 * On a day that turns out unfit the work chosen for it goes undone and its hours are lost. A job
 * that may be spread keeps what is done of it, whether it is finished or not.
 *
 * @returns what became of each job in each year
 */
export function playYears(
  problem: WorkProblem,
  order: TakenOrder,
  sky: PlayedSky,
  years: number = sky.years.length,
): PlayedJob[] {
  const player = new Player(problem, order, sky);
  const played = problem.jobs.map((): PlayedJob => ({
    finishes: new Int16Array(years),
    shares: new Float32Array(years),
  }));
  for (let year = 0; year < years; year++) player.play(year, played);
  return played;
}

class Player {
  private readonly free: Int32Array[];
  private readonly light: Int32Array[];
  private readonly open: Int32Array;
  private readonly doneOn: Int16Array;
  /** Day of this week on which it would be finished as chosen; -1 when it would not. */
  private readonly chosenEnd: Int16Array;
  private readonly rank: Int8Array;
  private readonly taken: Int32Array;
  private readonly ahead: readonly Float64Array[];
  private readonly whole: Int8Array;
  private readonly one = [0];
  private readonly pieceJob: number[] = [];
  private readonly pieceDay: number[] = [];
  private readonly pieceMinutes: number[] = [];

  constructor(
    private readonly problem: WorkProblem,
    private readonly order: TakenOrder,
    private readonly sky: PlayedSky,
  ) {
    const { jobs, workers } = problem;
    this.free = workers.map(({ minutes }) => minutes.slice());
    this.light = workers.map(({ lightMinutes }) => lightMinutes.slice());
    this.open = new Int32Array(jobs.length);
    this.doneOn = new Int16Array(jobs.length);
    this.chosenEnd = new Int16Array(jobs.length);
    this.rank = new Int8Array(jobs.length);
    this.taken = new Int32Array(jobs.length);
    this.whole = Int8Array.from(jobs, (job) => (job.smallestPieceMinutes === undefined ? 1 : 0));
    this.ahead = usualAhead(problem, sky.years);
  }

  play(year: number, played: readonly PlayedJob[]): void {
    const { jobs, days } = this.problem;
    this.begin();
    for (let start = 0; start < days; start += this.sky.everyDays) {
      const end = Math.min(start + this.sky.everyDays, days);
      this.chooseWeek(year, start, end);
      this.workWeek(year, start, end);
    }
    jobs.forEach((job, i) => {
      played[i]!.finishes[year] = this.doneOn[i]!;
      played[i]!.shares[year] = 1 - this.open[i]! / job.minutes;
    });
  }

  private begin(): void {
    const { jobs, workers } = this.problem;
    workers.forEach(({ minutes, lightMinutes }, w) => {
      this.free[w]!.set(minutes);
      this.light[w]!.set(lightMinutes);
    });
    jobs.forEach(({ pinned, minutes }, i) => {
      this.open[i] = pinned ? 0 : minutes;
      this.doneOn[i] = pinned ? finishDay(pinned) : -1;
    });
  }

  private chooseWeek(year: number, start: number, end: number): void {
    this.pieceJob.length = 0;
    this.pieceDay.length = 0;
    this.pieceMinutes.length = 0;
    const count = this.rankWeek(start, end);
    for (let rank = 0; rank <= LAST_RANK; rank++)
      for (let k = 0; k < count; k++) {
        const i = this.taken[k]!;
        if (this.rank[i] === rank) this.chooseDays(i, year, start, end);
      }
  }

  /** What can be worked on this week, in the order given, and how soon each is taken. */
  private rankWeek(start: number, end: number): number {
    const { jobs } = this.problem;
    const { list, first } = this.order;
    let count = 0;
    for (const i of list) {
      const { fromDay, untilDay } = jobs[i]!;
      this.chosenEnd[i] = -1;
      if (this.open[i]! <= 0 || end <= fromDay || untilDay < start) continue;
      this.taken[count++] = i;
      this.rank[i] = i === first ? 0 : this.rankOf(i, end);
    }
    // What others wait for is taken no later than they are.
    for (let k = count - 1; 0 <= k; k--) {
      const i = this.taken[k]!;
      for (const { job } of jobs[i]!.waitsFor)
        if (this.rank[i]! < this.rank[job]!) this.rank[job] = this.rank[i]!;
    }
    return count;
  }

  private rankOf(i: number, end: number): number {
    const { minutes } = this.problem.jobs[i]!;
    const suits = this.sky.years[0]![i];
    const needs = this.whole[i] === 1 ? 1 : this.open[i]!;
    const isPressing = this.ahead[i]![end]! < CARE * needs;
    const isBegun = this.open[i]! < minutes;
    return 1 + (isPressing ? 0 : isBegun ? 2 : 4) + (suits ? 0 : 1);
  }

  /** Takes the first days of the week that are forecast fit and on which there is time. */
  private chooseDays(i: number, year: number, start: number, end: number): void {
    const job = this.problem.jobs[i]!;
    const from = this.readyFrom(job, start);
    if (from < 0) return;
    const { years, forecasts } = this.sky;
    const forecast = forecasts[year]!;
    const last = Math.min(end - 1, job.untilDay);
    let open = this.open[i]!;
    for (let day = from; day <= last && 0 < open; day++) {
      if (years[forecast[day]!]![i]?.[day] === 0) continue;
      const minutes = this.take(job, day, open);
      if (minutes === 0) continue;
      open -= minutes;
      this.pieceJob.push(i);
      this.pieceDay.push(day);
      this.pieceMinutes.push(minutes);
      if (open <= 0) this.chosenEnd[i] = day;
    }
  }

  /** First day from which what it waits for lets it start, done or chosen; -1 when it is neither. */
  private readyFrom({ fromDay, waitsFor }: WorkJob, start: number): number {
    let from = Math.max(start, fromDay);
    for (const { job, days } of waitsFor) {
      const end = 0 <= this.doneOn[job]! ? this.doneOn[job]! : this.chosenEnd[job]!;
      if (end < 0) return -1;
      from = Math.max(from, end + days);
    }
    return from;
  }

  private workWeek(year: number, start: number, end: number): void {
    const suits = this.sky.years[year]!;
    for (let day = start; day < end; day++)
      for (let k = 0; k < this.pieceJob.length; k++) {
        if (this.pieceDay[k] !== day) continue;
        const i = this.pieceJob[k]!;
        if (suits[i]?.[day] === 0 || !this.mayStart(i, day)) continue;
        this.open[i]! -= this.pieceMinutes[k]!;
        if (this.open[i]! <= 0) this.doneOn[i] = day;
      }
  }

  /** What it waits for may have gone undone. */
  private mayStart(i: number, day: number): boolean {
    return this.problem.jobs[i]!.waitsFor.every(
      ({ job, days }) => 0 <= this.doneOn[job]! && this.doneOn[job]! + days <= day,
    );
  }

  /** Takes hours of a day for the most of a job that fits on it, by those with most time left. */
  private take(job: WorkJob, day: number, open: number): number {
    const { smallestPieceMinutes: smallest, peopleNeeded: people, able } = job;
    const least = smallest === undefined ? open : Math.min(smallest, open);
    const crew = people === 1 ? this.bestOf(job, day, least) : this.bestFew(job, day, least);
    if (crew.length < people || able.length === 0) return 0;
    let minutes = open;
    for (const w of crew) minutes = Math.min(minutes, this.left(job, w, day));
    for (const w of crew) {
      this.free[w]![day]! -= minutes;
      if (job.needsLight) this.light[w]![day]! -= minutes;
    }
    return minutes;
  }

  private bestOf(job: WorkJob, day: number, least: number): readonly number[] {
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

  private bestFew(job: WorkJob, day: number, least: number): readonly number[] {
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
