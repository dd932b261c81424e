import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { Turns } from '../../../src/work-pool/turns.js';

const NEVER = new AbortController().signal;

/** Pieces of work that end when they are told to, and the order in which they began. */
function bench(most: number) {
  const turns = new Turns(most);
  const begun: string[] = [];
  const ends = new Map<string, () => void>();
  const ask = (who: string, what: string, signal = NEVER): Promise<void> =>
    turns.take(
      who,
      () => {
        begun.push(what);
        return new Promise((resolve) => ends.set(what, resolve));
      },
      signal,
    );
  const end = async (what: string): Promise<void> => {
    ends.get(what)!();
    await settled();
  };
  return { begun, ask, end };
}

const settled = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

describe('turns', () => {
  it('lets one farm run one thing at a time, so that another finds a thread', async () => {
    const { begun, ask, end } = bench(2);
    void ask('a', 'a1');
    void ask('a', 'a2');
    void ask('b', 'b1');
    await settled();
    expect(begun).toEqual(['a1', 'b1']);
    await end('a1');
    expect(begun).toEqual(['a1', 'b1', 'a2']);
  });

  it('takes farms one after another, however much one asks for', async () => {
    const { begun, ask, end } = bench(1);
    for (const what of ['a1', 'a2', 'a3']) void ask('a', what);
    void ask('b', 'b1');
    void ask('c', 'c1');
    void ask('b', 'b2');
    await settled();
    for (const what of ['a1', 'b1', 'c1', 'a2', 'b2', 'a3']) await end(what);
    expect(begun).toEqual(['a1', 'b1', 'c1', 'a2', 'b2', 'a3']);
  });

  it('takes out of the line whoever has gone, and says so', async () => {
    const { begun, ask, end } = bench(1);
    const gone = new AbortController();
    void ask('a', 'a1');
    const leaving = ask('b', 'b1', gone.signal);
    void ask('b', 'b2');
    gone.abort(new Error('gone'));
    await expect(leaving).rejects.toThrow('gone');
    await expect(ask('c', 'c1', gone.signal)).rejects.toThrow('gone');
    await end('a1');
    expect(begun).toEqual(['a1', 'b2']);
  });

  it('goes on after work that failed', async () => {
    const turns = new Turns(1);
    await expect(turns.take('a', () => Promise.reject(new Error('failed')), NEVER)).rejects.toThrow(
      'failed',
    );
    expect(await turns.take('a', () => Promise.resolve(1), NEVER)).toBe(1);
  });

  it('does everything that is asked for once, never too much at once', async () => {
    const asks = fc.array(
      fc.record({ who: fc.constantFrom('a', 'b', 'c'), isGone: fc.boolean() }),
      {
        maxLength: 30,
      },
    );
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 3 }), asks, async (most, all) => {
        const turns = new Turns(most);
        const running: string[] = [];
        let done = 0;
        const work = (who: string) => async (): Promise<void> => {
          expect(running).not.toContain(who);
          running.push(who);
          expect(running.length).toBeLessThanOrEqual(most);
          await settled();
          running.splice(running.indexOf(who), 1);
          done++;
        };
        const results = await Promise.allSettled(
          all.map(({ who, isGone }) =>
            turns.take(who, work(who), isGone ? AbortSignal.abort() : NEVER),
          ),
        );
        expect(done).toBe(all.filter(({ isGone }) => !isGone).length);
        expect(results.filter(({ status }) => status === 'fulfilled')).toHaveLength(done);
      }),
      { numRuns: 100 },
    );
  });
});
