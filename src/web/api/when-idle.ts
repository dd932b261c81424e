import { useEffect, useState } from 'react';

/** At the latest so long after it was asked for, ms. */
const LATEST_MS = 2000;

/** Whether the page has come to rest once: what is not needed to show it waits until then. */
export function useWhenIdle(): boolean {
  const [isIdle, setIdle] = useState(false);
  useEffect(() => {
    const rest = (): void => setIdle(true);
    // Not every browser says when it rests.
    if (typeof requestIdleCallback === 'undefined') {
      const timer = setTimeout(rest, LATEST_MS / 4);
      return () => clearTimeout(timer);
    }
    const asked = requestIdleCallback(rest, { timeout: LATEST_MS });
    return () => cancelIdleCallback(asked);
  }, []);
  return isIdle;
}
