import { LRUCache } from 'lru-cache';

/** Answers kept by key. Whoever asks while one is worked out waits for that one. */
export class SharedAnswers<Answer> {
  private readonly answers: LRUCache<string, Promise<Answer>>;

  constructor(most: number) {
    this.answers = new LRUCache({ max: most });
  }

  of(key: string, work: () => Promise<Answer>): Promise<Answer> {
    const known = this.answers.get(key);
    if (known) return known;
    const asked = work();
    this.answers.set(key, asked);
    // What failed is tried again by the next who asks.
    asked.catch(() => {
      if (this.answers.peek(key) === asked) this.answers.delete(key);
    });
    return asked;
  }
}
