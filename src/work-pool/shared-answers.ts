import { LRUCache } from 'lru-cache';
import { askerNow, AskerGone, workFor } from '../common/asker.js';

interface Asked<Answer> {
  readonly answer: Promise<Answer>;
  readonly controller: AbortController;
  /** How many wait for it. */
  waiting: number;
  isThere: boolean;
}

/**
 * Answers kept by key. Whoever asks while one is worked out waits for that one. When all who waited
 * have gone it is given up; as long as one waits it is not.
 */
export class SharedAnswers<Answer> {
  private readonly answers: LRUCache<string, Asked<Answer>>;

  constructor(most: number) {
    this.answers = new LRUCache({ max: most });
  }

  of(key: string, work: () => Promise<Answer>): Promise<Answer> {
    const asked = this.answers.get(key) ?? this.begin(key, work);
    return asked.isThere ? asked.answer : this.waitFor(key, asked);
  }

  /** Whether an answer is there, or is being worked out. */
  has = (key: string): boolean => this.answers.has(key);

  /** Puts down an answer that came with another one. */
  keep(key: string, answer: Answer): void {
    const controller = new AbortController();
    const there = { answer: Promise.resolve(answer), controller, waiting: 0, isThere: true };
    this.answers.set(key, there);
  }

  private begin(key: string, work: () => Promise<Answer>): Asked<Answer> {
    const controller = new AbortController();
    // The work belongs to all who wait for it, not to whoever asked first.
    const { turn } = askerNow();
    const answer = workFor({ signal: controller.signal, turn }, work);
    const asked = { answer, controller, waiting: 0, isThere: false };
    this.answers.set(key, asked);
    answer.then(
      () => (asked.isThere = true),
      // What failed is tried again by the next who asks.
      () => this.forget(key, asked),
    );
    return asked;
  }

  private waitFor(key: string, asked: Asked<Answer>): Promise<Answer> {
    const { signal } = askerNow();
    asked.waiting++;
    return new Promise<Answer>((resolve, reject) => {
      const leave = (): void => {
        reject(signal.reason as Error);
        if (0 < --asked.waiting) return;
        asked.controller.abort(new AskerGone());
        this.forget(key, asked);
      };
      if (signal.aborted) return leave();
      signal.addEventListener('abort', leave, { once: true });
      asked.answer.then(
        (answer) => {
          signal.removeEventListener('abort', leave);
          resolve(answer);
        },
        (error: Error) => {
          signal.removeEventListener('abort', leave);
          reject(error);
        },
      );
    });
  }

  private forget(key: string, asked: Asked<Answer>): void {
    if (this.answers.peek(key) === asked) this.answers.delete(key);
  }
}
