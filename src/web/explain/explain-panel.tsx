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
import type { Quantity } from '../../../shared/explain/quantity.js';
import type { Tables } from '../../../shared/tables/tables.js';
import type { Reader } from '../../../shared/units/format.js';

const loadDrawer = () => import('./explain-drawer.js');
const ExplainDrawer = lazy(loadDrawer);

interface Opener {
  readonly reader: Reader;
  readonly open: (quantity: Quantity) => void;
}

const OpenerContext = createContext<Opener | undefined>(undefined);

export function useOpener(): Opener {
  const opener = useContext(OpenerContext);
  if (!opener) throw new Error('Numbers that open need an ExplainProvider around them.');
  return opener;
}

/** Lets every number below it open to its formula, inputs and source. */
export function ExplainProvider({
  tables,
  reader,
  children,
}: {
  tables: Tables;
  reader: Reader;
  children: ReactNode;
}) {
  const [shown, setShown] = useState<Quantity>();
  const [isOpen, setOpen] = useState(false);
  const open = useCallback((quantity: Quantity) => {
    setShown(quantity);
    setOpen(true);
  }, []);
  // The first screen is there sooner without it, and it is there before anybody opens a number.
  useEffect(() => {
    loadDrawer().catch(() => undefined);
  }, []);
  const opener = useMemo(() => ({ reader, open }), [reader, open]);
  return (
    <OpenerContext value={opener}>
      {children}
      {shown && (
        <Suspense>
          <ExplainDrawer
            quantity={shown}
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
