import type { Worker } from './work.js';

/**
 * Minutes of each day that two are free at the same hours, for work that takes several at once: who is
 * there in the morning only and who in the evening only have none, whatever each has. Hours of one
 * alone count as outside of them as long as there are others.
 */
export class HoursTogether {
  private readonly free: Int32Array[] = [];
  private readonly whole: Int32Array[] = [];
  /** By two workers, the place of theirs; -1 where they are free at the same hours. */
  private readonly at: Int32Array;

  /** @returns undefined where all are free at the same hours */
  static of(workers: readonly Worker[]): HoursTogether | undefined {
    return workers.some(({ together }) => together) ? new HoursTogether(workers) : undefined;
  }

  private constructor(private readonly workers: readonly Worker[]) {
    const count = workers.length;
    this.at = new Int32Array(count * count).fill(-1);
    workers.forEach(({ together }, a) => {
      for (const [b, minutes] of together ?? []) {
        this.at[a * count + b] = this.free.length;
        this.at[b * count + a] = this.free.length;
        this.whole.push(minutes);
        this.free.push(minutes.slice());
      }
    });
  }

  reset(): void {
    this.whole.forEach((minutes, k) => this.free[k]!.set(minutes));
  }

  /** Takes minutes of a day from all of a crew, or with less than none gives them back. */
  take(crew: readonly number[], day: number, minutes: number): void {
    for (let i = 1; i < crew.length; i++)
      for (let j = 0; j < i; j++) {
        const at = this.at[crew[i]! * this.workers.length + crew[j]!]!;
        if (0 <= at) this.free[at]![day]! -= minutes;
      }
  }

  /** Minutes of a day for which a crew is free together, at most so many. */
  most(crew: readonly number[], day: number, minutes: number): number {
    let most = minutes;
    for (let i = 1; i < crew.length; i++) most = this.mostWith(crew, i, crew[i]!, day, most);
    return most;
  }

  /** As `most`, of one more beside the first so many of a crew. */
  private mostWith(
    crew: readonly number[],
    count: number,
    worker: number,
    day: number,
    minutes: number,
  ): number {
    let most = minutes;
    for (let k = 0; k < count; k++) {
      const at = this.at[worker * this.workers.length + crew[k]!]!;
      if (0 <= at && this.free[at]![day]! < most) most = this.free[at]![day]!;
    }
    return most;
  }

  /**
   * The so many who have most time together on a day; nobody where they have none.
   *
   * @param left minutes of one alone that are free
   */
  crew(
    able: readonly number[],
    count: number,
    day: number,
    left: (worker: number) => number,
  ): { readonly workers: number[]; readonly minutes: number } {
    const inTurn = able
      .map((w) => ({ w, minutes: left(w) }))
      .sort((a, b) => b.minutes - a.minutes || a.w - b.w);
    let best = { workers: [] as number[], minutes: 0 };
    const chosen: number[] = [];
    const choose = (from: number, minutes: number): void => {
      if (chosen.length === count) {
        best = { workers: chosen.toSorted((a, b) => a - b), minutes };
        return;
      }
      for (let k = from; k < inTurn.length; k++) {
        const one = inTurn[k]!;
        // Those who come after have no more time.
        if (one.minutes <= best.minutes) return;
        const most = this.mostWith(
          chosen,
          chosen.length,
          one.w,
          day,
          Math.min(minutes, one.minutes),
        );
        if (most <= best.minutes) continue;
        chosen.push(one.w);
        choose(k + 1, most);
        chosen.pop();
      }
    };
    choose(0, Infinity);
    return best;
  }
}
