import { useEffect, useRef, type ReactNode } from 'react';

/**
 * An answer to what was asked, which comes into view when it comes. Give it a key of the answer, so
 * that the next one does so too.
 */
export function Answer({ children }: { children: ReactNode }) {
  const ref = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const answer = ref.current!;
    // A long one is read from its beginning.
    const isLong = window.innerHeight / 2 < answer.offsetHeight;
    answer.scrollIntoView({ block: isLong ? 'start' : 'nearest' });
  }, []);
  return (
    <div ref={ref} role="status" className="answer">
      {children}
    </div>
  );
}
