interface Waiting {
  readonly begin: () => void;
}

/**
 * Lets a few pieces of work run at once, and gives everyone the same turn: who has one running
 * waits, however much else they ask for, and the others are taken one after another.
 */
export class Turns {
  /** Who waits, in the order in which they come next. */
  private readonly waiting = new Map<string, Waiting[]>();
  private readonly running = new Set<string>();

  /** @param most how many may run at once, at least 1 */
  constructor(private readonly most: number) {}

  /**
   * Does work when it is its turn.
   *
   * @param who whose turn it takes
   * @param signal takes the work out of the line; what runs already has to see to itself
   * @throws the signal's reason when it was aborted before the work began
   */
  async take<T>(who: string, work: () => Promise<T>, signal: AbortSignal): Promise<T> {
    await this.turnOf(who, signal);
    try {
      return await work();
    } finally {
      this.running.delete(who);
      this.goBehind(who);
      this.callNext();
    }
  }

  /** Whoever had a turn comes after all others who wait. */
  private goBehind(who: string): void {
    const line = this.waiting.get(who);
    if (!line) return;
    this.waiting.delete(who);
    this.waiting.set(who, line);
  }

  private turnOf(who: string, signal: AbortSignal): Promise<void> {
    return new Promise((resolve, reject) => {
      if (signal.aborted) return reject(signal.reason as Error);
      const leave = (): void => {
        this.remove(who, own);
        reject(signal.reason as Error);
      };
      const own: Waiting = {
        begin: () => {
          signal.removeEventListener('abort', leave);
          resolve();
        },
      };
      signal.addEventListener('abort', leave, { once: true });
      this.waiting.set(who, [...(this.waiting.get(who) ?? []), own]);
      this.callNext();
    });
  }

  private remove(who: string, gone: Waiting): void {
    const left = (this.waiting.get(who) ?? []).filter((each) => each !== gone);
    if (left.length === 0) this.waiting.delete(who);
    else this.waiting.set(who, left);
  }

  private callNext(): void {
    for (const [who, line] of this.waiting) {
      if (this.most <= this.running.size) return;
      if (this.running.has(who)) continue;
      const [first, ...rest] = line;
      if (0 < rest.length) this.waiting.set(who, rest);
      else this.waiting.delete(who);
      this.running.add(who);
      first!.begin();
    }
  }
}
