import { startTransition, useEffect, useRef, useState } from 'react';

/**
 * The value as it was when the page was last drawn with it. What is long in the making goes by this
 * one, so that what a hand typed or slid is seen before it is worked with. Values that come faster
 * than pages are drawn are left out, never the last one.
 */
export function useAfterDrawn<T>(value: T): T {
  const [drawn, setDrawn] = useState(value);
  const latest = useRef(value);
  const isAsked = useRef(false);
  useEffect(() => {
    latest.current = value;
    if (isAsked.current || Object.is(value, drawn)) return;
    isAsked.current = true;
    // A page in the background draws nothing, and must not wait for ever.
    if (document.hidden) setTimeout(take);
    else requestAnimationFrame(() => setTimeout(take));

    function take(): void {
      isAsked.current = false;
      startTransition(() => setDrawn(latest.current));
    }
  });
  return drawn;
}
