import { useMemo, type ReactNode } from 'react';
import type { AboutNumbers } from '../../../shared/explain/moved.js';
import { OpenerContext, useOpener } from './explain-panel.js';

/** Numbers below it say more when they are opened: what moves them, and when they are known better. */
export function NumbersOf({ about, children }: { about: AboutNumbers; children: ReactNode }) {
  const opener = useOpener();
  const value = useMemo(
    () => ({
      ...opener,
      open: (quantity: Parameters<typeof opener.open>[0]) => opener.open(quantity, about),
    }),
    [opener, about],
  );
  return <OpenerContext value={value}>{children}</OpenerContext>;
}
