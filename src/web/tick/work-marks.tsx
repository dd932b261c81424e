import { createContext, useContext, useState, type ReactNode } from 'react';
import { useMark, type SaidOrBought } from '../api/mark-queries.js';
import type { Said } from '../api/work-queries.js';
import { Failure } from '../shell/states.js';

interface WorkMarks {
  /** What was said of a piece of work on this screen and not taken back, so that its row stays. */
  readonly said: ReadonlyMap<string, Said>;
  readonly isSaving: (key: string) => boolean;
  readonly say: (said: SaidOrBought) => void;
}

const Marks = createContext<WorkMarks | undefined>(undefined);

/** What is said of work on a screen is seen at once; what could not be saved goes back. */
export function WorkMarksOf({ farmId, children }: { farmId: string; children: ReactNode }) {
  const mark = useMark(farmId);
  const [said, setSaid] = useState<ReadonlyMap<string, Said>>(new Map());
  const put = (key: string, one: Said | undefined): void =>
    setSaid((before) => {
      const after = new Map(before);
      if (one) after.set(key, one);
      else after.delete(key);
      return after;
    });
  const say = ({ buys, ...one }: SaidOrBought): void => {
    const { key } = one;
    const before = said.get(key);
    put(key, one.undo ? undefined : { ...before, ...one });
    mark.mutate({ ...one, buys }, { onError: () => put(key, before) });
  };
  const isSaving = (key: string): boolean => mark.isPending && mark.variables.key === key;
  return (
    <Marks.Provider value={{ said, isSaving, say }}>
      <Failure error={mark.error} />
      {children}
    </Marks.Provider>
  );
}

export function useWorkMarks(): WorkMarks {
  const marks = useContext(Marks);
  if (!marks) throw new Error('Work is ticked within WorkMarksOf.');
  return marks;
}
