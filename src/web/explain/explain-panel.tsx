import {
  createContext,
  lazy,
  Suspense,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useState,
  type ReactNode,
} from 'react';
import type { AboutNumbers } from '../../../shared/explain/moved.js';
import type { Quantity } from '../../../shared/explain/quantity.js';
import { dayIn } from '../kept/day-it-is.js';
import type { Tables } from '../../../shared/tables/tables.js';
import { unbroken } from './unbroken.js';
import { formatDate } from '../../../shared/units/dates.js';
import type { Reader } from '../../../shared/units/format.js';

const loadDrawer = () => import('./explain-drawer.js');
const ExplainDrawer = lazy(loadDrawer);

interface Opener {
  /** The household, on the day it is on the farm. */
  readonly reader: Reader;
  readonly sayDate: (date: string) => string;
  readonly open: (quantity: Quantity, about?: AboutNumbers) => void;
}

export const OpenerContext = createContext<Opener | undefined>(undefined);

export function useOpener(): Opener {
  const opener = useContext(OpenerContext);
  if (!opener) throw new Error('Numbers that open need an ExplainProvider around them.');
  return opener;
}

/** Lets every number below it open to its formula, inputs and source. */
export function ExplainProvider({
  tables,
  farm,
  children,
}: {
  /** Left out until they are there: a screen that needs none of them does not wait. */
  tables: Tables | undefined;
  farm: Reader & { readonly timeZone: string };
  children: ReactNode;
}) {
  const today = dayIn(farm.timeZone);
  const reader = useMemo((): Reader => ({ ...farm, today }), [farm, today]);
  const [shown, setShown] = useState<{ quantity: Quantity; about: AboutNumbers | undefined }>();
  const [isOpen, setOpen] = useState(false);
  const open = useCallback((quantity: Quantity, about?: AboutNumbers) => {
    setShown({ quantity, about });
    setOpen(true);
  }, []);
  // The first screen is there sooner without it, and it is there before anybody opens a number.
  useEffect(() => {
    if (tables) loadDrawer().catch(() => undefined);
  }, [tables]);
  const opener = useMemo(
    () => ({ reader, open, sayDate: (date: string) => unbroken(formatDate(date, reader)) }),
    [reader, open],
  );
  return (
    <OpenerContext value={opener}>
      {children}
      {shown && tables && (
        <Suspense>
          <ExplainDrawer
            {...shown}
            tables={tables}
            reader={reader}
            isOpen={isOpen}
            close={() => setOpen(false)}
          />
        </Suspense>
      )}
    </OpenerContext>
  );
}
