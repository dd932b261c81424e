import { useEffect, useState } from 'react';

/** At the latest so long after it was asked for, ms. */
const LATEST_MS = 2000;

/** Calls back once the page rests; what comes back calls that off. */
function whenAtRest(then: () => void): () => void {
  // Not every browser says when it rests.
  if (typeof requestIdleCallback === 'undefined') {
    const timer = setTimeout(then, LATEST_MS / 4);
    return () => clearTimeout(timer);
  }
  const asked = requestIdleCallback(then, { timeout: LATEST_MS });
  return () => cancelIdleCallback(asked);
}

/** Ends when the page rests. */
export const atRest = (): Promise<void> => new Promise((resolve) => void whenAtRest(resolve));

/** Whether the page has come to rest once: what is not needed to show it waits until then. */
export function useWhenIdle(): boolean {
  const [isIdle, setIdle] = useState(false);
  useEffect(() => whenAtRest(() => setIdle(true)), []);
  return isIdle;
}
