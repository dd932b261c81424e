/** Work that has to be done one after another, by key: whoever comes later waits its turn. */
export class Turns {
  private readonly last = new Map<string, Promise<unknown>>();

  /** Does a piece of work when all that was asked for before under the same key is over. */
  take<T>(key: string, work: () => Promise<T>): Promise<T> {
    const mine = (this.last.get(key) ?? Promise.resolve()).then(work);
    // The next in line waits for this one to be over, whether it went well or not.
    const over: Promise<void> = mine.then(
      () => this.leave(key, over),
      () => this.leave(key, over),
    );
    this.last.set(key, over);
    return mine;
  }

  private leave(key: string, over: Promise<unknown>): void {
    if (this.last.get(key) === over) this.last.delete(key);
  }
}
