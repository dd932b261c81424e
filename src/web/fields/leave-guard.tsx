import { useCallback, useEffect, type ReactNode } from 'react';
import { Router, type AroundNavHandler } from 'wouter';
import { useAskAboutLeaving } from '../api/asking.js';
import { isAnythingUnsaved } from './unsaved.js';

/** Ways to other screens, and out of the page, that ask before they throw away what was typed. */
export function LeaveGuard({ children }: { children: ReactNode }) {
  const mayLeave = useAskAboutLeaving();
  useEffect(() => {
    const ask = (event: BeforeUnloadEvent) => {
      if (isAnythingUnsaved()) event.preventDefault();
    };
    window.addEventListener('beforeunload', ask);
    return () => window.removeEventListener('beforeunload', ask);
  }, []);
  const around = useCallback<AroundNavHandler>(
    (navigate, to, options) => {
      const go = async () => {
        if (!isAnythingUnsaved() || (await mayLeave())) navigate(to, options);
      };
      void go();
    },
    [mayLeave],
  );
  return <Router aroundNav={around}>{children}</Router>;
}
