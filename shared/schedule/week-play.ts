import { FreeHours } from './free-hours.js';
import { usualAhead } from './usual-ahead.js';
import { mayBeShared } from './job-pieces.js';
import type { PlayedSky } from './played-sky.js';
import type { PlayedJob } from './work-years.js';
import { finishDay, type WorkJob, type WorkProblem } from './work.js';

/** The order in which work is taken, and what comes before everything else. */
export interface TakenOrder {
  /** Every job once, none before one that it waits for. */
  readonly list: Int32Array;
  /** A job that is taken first whatever else there is, with what it waits for. */
  readonly first?: number;
}

/** What is played of the years. */
export interface PlayedPart {
  readonly years?: number | undefined;
  /** A job that is finished later counts as never done. */
  readonly untilDay?: number | undefined;
}

/**
 * Work presses when usual weather leaves so little more than it needs after this week: its days are
 * shared with other work, and half of the years have fewer.
 */
const CARE = 1.5;
/** Work that presses comes before all that does not, however few its days. */
const PRESSING = 50;
/** The costliest work to lose comes before such as has so many days fewer; what is begun likewise. */
const WORTH_DAYS = 5;
const BEGUN_DAYS = 2;
/** Before everything else. */
const FIRST = -100;

/**
 * Plays work through years by people who look at the sky: week by week they choose days for what is
 * open, knowing what has happened, the forecast of that week and, beyond it, only what is usual.
 *
 * What presses comes first; then what has fewest days of the week left, with what it costs to lose
 * it weighed against them; then the order given. On a day that turns out unfit the work chosen for
 * it goes undone and its hours are lost. A job that may be spread keeps what is done of it; what waits
 * for it goes on with that part after its last day.
 *
 * Source: serial schedule generation, Kolisch (1996), over a rolling week; the rule of priority is
 * this program’s own, the best of a dozen tried on invented households.
 *
 * @param part of the years played: the first so many of them, and of each the weeks to a day
 * @returns what became of each job in each year
 */
export function playYears(
  problem: WorkProblem,
  order: TakenOrder,
  sky: PlayedSky,
  { years: most = Infinity, untilDay = Infinity }: PlayedPart = {},
): PlayedJob[] {
  const years = Math.min(most, sky.years);
  const player = new Player(problem, order, sky);
  const played = problem.jobs.map((): PlayedJob => ({
    finishes: new Int16Array(years),
    shares: new Float32Array(years),
  }));
  for (let year = 0; year < years; year++) player.play(year, played, untilDay);
  return played;
}

/** Days of a week, `end` the first after it. */
interface Week {
  readonly start: number;
  readonly end: number;
  /** By kind of day, those of the year that are forecast to suit. */
  readonly forecast: readonly Uint8Array[];
}

class Player {
  private readonly hours: FreeHours;
  private readonly open: Int32Array;
  private readonly doneOn: Int16Array;
  /** Day of this week on which it would be finished as chosen; -1 when it would not. */
  private readonly chosenEnd: Int16Array;
  /** Jobs by the week in which they may first be worked on, in the order given. */
  private readonly begins: readonly (readonly number[])[];
  private readonly position: Int32Array;
  /** Jobs that are open, in the order given, and those of them in the order of the week. */
  private active: number[] = [];
  private readonly taken: Int32Array;
  private readonly rank: Float64Array;
  private readonly ahead: readonly Float64Array[];
  private readonly worthDays: Float64Array;
  private readonly pieceJob: number[] = [];
  private readonly pieceDay: number[] = [];
  private readonly pieceMinutes: number[] = [];

  constructor(
    private readonly problem: WorkProblem,
    private readonly order: TakenOrder,
    private readonly sky: PlayedSky,
  ) {
    const { jobs, workers } = problem;
    this.hours = new FreeHours(workers);
    this.open = new Int32Array(jobs.length);
    this.doneOn = new Int16Array(jobs.length);
    this.chosenEnd = new Int16Array(jobs.length);
    this.begins = beginsOf(problem, order.list, sky.everyDays);
    this.position = new Int32Array(jobs.length);
    order.list.forEach((i, at) => (this.position[i] = at));
    this.taken = new Int32Array(jobs.length);
    this.rank = new Float64Array(jobs.length);
    this.ahead = usualAhead(problem, sky);
    const heaviest = jobs.reduce((most, { lostCost }) => Math.max(most, lostCost), 1);
    this.worthDays = Float64Array.from(jobs, (job) => (WORTH_DAYS * job.lostCost) / heaviest);
  }

  play(year: number, played: readonly PlayedJob[], untilDay: number): void {
    const { jobs, days } = this.problem;
    this.hours.reset();
    jobs.forEach(({ pinned, minutes }, i) => {
      this.open[i] = pinned ? 0 : minutes;
      this.doneOn[i] = pinned ? finishDay(pinned) : -1;
    });
    this.chosenEnd.fill(-1);
    this.active = [];
    const forecast = this.sky.forecast[year]!;
    for (let start = 0; start < days && start <= untilDay; start += this.sky.everyDays) {
      const week = { start, end: Math.min(start + this.sky.everyDays, days), forecast };
      this.chooseWeek(week);
      this.workWeek(this.sky.real[year]!, week);
    }
    jobs.forEach((job, i) => {
      played[i]!.finishes[year] = this.doneOn[i]!;
      played[i]!.shares[year] = 1 - this.open[i]! / job.minutes;
    });
  }

  private chooseWeek(week: Week): void {
    this.pieceJob.length = 0;
    this.pieceDay.length = 0;
    this.pieceMinutes.length = 0;
    const taken = this.taken.subarray(0, this.takeUp(week));
    // By rank, and as in the list where that is equal: few at a time, nearly in order.
    for (let k = 1; k < taken.length; k++) {
      const i = taken[k]!;
      let at = k;
      for (; 0 < at && this.rank[i]! < this.rank[taken[at - 1]!]!; at--) taken[at] = taken[at - 1]!;
      taken[at] = i;
    }
    for (const i of taken) this.chooseDays(i, week);
  }

  /** What can be worked on this week, in the order given, and the rank of each. */
  private takeUp(week: Week): number {
    const { jobs } = this.problem;
    const { first } = this.order;
    this.active = this.openIn(week);
    let count = 0;
    for (const i of this.active) {
      this.chosenEnd[i] = -1;
      this.taken[count++] = i;
      this.rank[i] = i === first ? FIRST : this.rankOf(i, week);
    }
    // What others wait for is taken no later than they are.
    for (let k = count - 1; 0 <= k; k--) {
      const i = this.taken[k]!;
      for (const { job } of jobs[i]!.waitsFor)
        this.rank[job] = Math.min(this.rank[job]!, this.rank[i]!);
    }
    return count;
  }

  /** What was open before and still is, with what begins this week. */
  private openIn({ start }: Week): number[] {
    const { jobs } = this.problem;
    const begins = this.begins[start / this.sky.everyDays]!;
    const open: number[] = [];
    let k = 0;
    const isOpen = (i: number): boolean => 0 < this.open[i]! && start <= jobs[i]!.untilDay;
    for (const i of this.active) {
      if (!isOpen(i)) continue;
      for (; k < begins.length && this.position[begins[k]!]! < this.position[i]!; k++)
        if (isOpen(begins[k]!)) open.push(begins[k]!);
      open.push(i);
    }
    for (; k < begins.length; k++) if (isOpen(begins[k]!)) open.push(begins[k]!);
    return open;
  }

  private rankOf(i: number, { start, end, forecast }: Week): number {
    const { fromDay, dueDay, untilDay, minutes } = this.problem.jobs[i]!;
    const open = this.open[i]!;
    const last = Math.min(end - 1, start <= dueDay ? Math.min(dueDay, untilDay) : untilDay);
    const from = Math.max(start, fromDay);
    const kind = this.sky.kindOf[i]!;
    let fitDays = kind < 0 ? last - from + 1 : 0;
    if (0 <= kind) for (let day = from; day <= last; day++) fitDays += forecast[kind]![day]!;
    return (
      (this.presses(i, end) ? 0 : PRESSING) +
      fitDays -
      this.worthDays[i]! -
      (open < minutes ? BEGUN_DAYS : 0)
    );
  }

  /** Whether usual weather leaves little more than a job needs after a week. */
  private presses(i: number, end: number): boolean {
    const needs = this.problem.jobs[i]!.smallestPieceMinutes === undefined ? 1 : this.open[i]!;
    return this.ahead[i]![end]! < CARE * needs;
  }

  /** Takes the first days of the week that are forecast fit and on which there is time. */
  private chooseDays(i: number, { start, end, forecast }: Week): void {
    const job = this.problem.jobs[i]!;
    const from = this.readyFrom(job, start);
    if (from < 0) return;
    const last = Math.min(end - 1, job.untilDay);
    const fit = forecast[this.sky.kindOf[i]!];
    const isByMore = mayBeShared(job) && this.presses(i, end);
    let open = this.open[i]!;
    for (let day = from; day <= last && 0 < open; day++) {
      if (fit?.[day] === 0) continue;
      let minutes = this.hours.take(job, day, open);
      // Where it presses, others who have the time are at it as well.
      for (let more = minutes; isByMore && 0 < more && minutes < open; minutes += more)
        more = this.hours.take(job, day, open - minutes);
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
      const over = this.overOn(job, start);
      const end = 0 <= over ? over : this.chosenEnd[job]!;
      if (end < 0) return -1;
      from = Math.max(from, end + days);
    }
    return from;
  }

  private workWeek(real: readonly Uint8Array[], { start, end }: Week): void {
    for (let day = start; day < end; day++)
      for (let k = 0; k < this.pieceJob.length; k++) {
        if (this.pieceDay[k] !== day) continue;
        const i = this.pieceJob[k]!;
        if (real[this.sky.kindOf[i]!]?.[day] === 0 || !this.mayStart(i, day)) continue;
        this.open[i]! -= this.pieceMinutes[k]!;
        if (this.open[i]! <= 0) this.doneOn[i] = day;
      }
  }

  /** What it waits for may have gone undone. */
  private mayStart(i: number, day: number): boolean {
    return this.problem.jobs[i]!.waitsFor.every(({ job, days }) => {
      const over = this.overOn(job, day);
      return 0 <= over && over + days <= day;
    });
  }

  /** Day on which a job was done, or its last where only part of it was by then; else -1. */
  private overOn(i: number, today: number): number {
    const { untilDay, minutes } = this.problem.jobs[i]!;
    if (0 <= this.doneOn[i]!) return this.doneOn[i]!;
    return untilDay < today && this.open[i]! < minutes ? untilDay : -1;
  }
}

function beginsOf({ jobs, days }: WorkProblem, list: Int32Array, everyDays: number): number[][] {
  const begins: number[][] = Array.from({ length: Math.ceil(days / everyDays) }, () => []);
  for (const i of list) begins[Math.floor(Math.max(0, jobs[i]!.fromDay) / everyDays)]?.push(i);
  return begins;
}
