import { describe, expect, it } from '@jest/globals';
import { askerNow, workFor } from '../../../src/common/asker.js';
import { SharedAnswers } from '../../../src/work-pool/shared-answers.js';

/** Somebody who asks and may go. */
function newAsker(turn = 'farm') {
  const controller = new AbortController();
  return {
    ask: <T>(work: () => Promise<T>): Promise<T> =>
      workFor({ signal: controller.signal, turn }, work),
    go: () => controller.abort(new Error('gone')),
  };
}

/** Work that ends when told to, and knows whether it was given up. */
function newWork() {
  const begun: AbortSignal[] = [];
  let end: (value: string) => void = () => undefined;
  return {
    begun,
    end: (value: string) => end(value),
    work: (): Promise<string> =>
      new Promise((resolve, reject) => {
        const { signal } = askerNow();
        begun.push(signal);
        signal.addEventListener('abort', () => reject(signal.reason as Error));
        end = resolve;
      }),
  };
}

describe('shared answers', () => {
  it('are worked out once for all who ask at once, and kept', async () => {
    const answers = new SharedAnswers<string>(2);
    const { begun, end, work } = newWork();
    const both = [answers.of('k', work), newAsker().ask(() => answers.of('k', work))];
    end('plan');
    expect(await Promise.all(both)).toEqual(['plan', 'plan']);
    expect(await answers.of('k', work)).toBe('plan');
    expect(begun).toHaveLength(1);
  });

  it('are given up when the last who waits has gone, and never while one waits', async () => {
    const answers = new SharedAnswers<string>(2);
    const { begun, end, work } = newWork();
    const [one, two, three] = [newAsker(), newAsker(), newAsker()];
    const waiting = [one, two].map((each) => each.ask(() => answers.of('k', work)));
    one.go();
    await expect(waiting[0]).rejects.toThrow('gone');
    expect(begun[0]!.aborted).toBe(false);
    // Whoever comes while it is worked out waits for it too.
    const late = three.ask(() => answers.of('k', work));
    two.go();
    expect(begun[0]!.aborted).toBe(false);
    end('plan');
    expect(await late).toBe('plan');
    await expect(waiting[1]).rejects.toThrow('gone');
    expect(begun).toHaveLength(1);
  });

  it('that were given up are begun anew by the next who asks', async () => {
    const answers = new SharedAnswers<string>(2);
    const { begun, end, work } = newWork();
    const one = newAsker();
    const waiting = one.ask(() => answers.of('k', work));
    one.go();
    await expect(waiting).rejects.toThrow('gone');
    expect(begun[0]!.aborted).toBe(true);
    const next = newAsker().ask(() => answers.of('k', work));
    end('again');
    expect(await next).toBe('again');
    expect(begun).toHaveLength(2);
  });

  it('are kept when whoever asked goes after the answer', async () => {
    const answers = new SharedAnswers<string>(2);
    const { begun, end, work } = newWork();
    const one = newAsker();
    const waiting = one.ask(() => answers.of('k', work));
    end('plan');
    await waiting;
    one.go();
    expect(await answers.of('k', work)).toBe('plan');
    expect(begun).toHaveLength(1);
  });

  it('that fail are tried again', async () => {
    const answers = new SharedAnswers<string>(2);
    await expect(answers.of('k', () => Promise.reject(new Error('no')))).rejects.toThrow('no');
    expect(await answers.of('k', () => Promise.resolve('plan'))).toBe('plan');
  });
});
