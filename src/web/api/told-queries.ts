import { useMutation } from '@tanstack/react-query';
import { useEffect, useRef, useSyncExternalStore } from 'react';
import type { FactOf, ToldKind } from '../../../shared/farm/told-fact.js';
import { isUnsent, type Entry, type Message, type SaidFact } from '../kept/entry.js';
import { outbox } from '../kept/outbox-store.js';
import { ApiError } from './client.js';
import { backToForm, readBack, takeOut, tellService, type Told } from './outbox.js';
import type { Outcome } from './send-entry.js';

/** What is said of a kind of fact. */
type Said<Kind extends ToldKind> = Pick<FactOf<Kind>, 'kind' | 'about' | 'on' | 'details'>;

/** The same, with what is told of earlier days along with it. */
type Telling<Kind extends ToldKind> = Said<Kind> & { readonly before?: readonly SaidFact[] };

/** A form waits so long for an answer; later it is said what became of it where all is listed, ms. */
const PATIENCE_MS = 5000;

/**
 * Tells one thing that happened, now or when there is signal. What it answers without signal has the
 * key of its entry as id, by which it can be taken back like any other.
 */
export const useTell = <Kind extends ToldKind>(farmId: string) => {
  const through = useThrough();
  return useMutation({
    mutationFn: async ({ before = [], ...said }: Telling<Kind>): Promise<FactOf<Kind>[]> => {
      const facts = [...before, said as unknown as SaidFact];
      const { entry, outcome } = await through(tellService(farmId, { does: 'tell', facts }));
      if (outcome.is === 'sent') return outcome.facts.slice(-1) as FactOf<Kind>[];
      const { key, madeAt: toldAt } = entry;
      return [{ ...said, id: key, key, toldAt } as unknown as FactOf<Kind>];
    },
  });
};

/** Takes back what was told, by its id; what is not sent yet is taken out. */
export const useTakeBack = (farmId: string) => {
  const through = useThrough();
  return useMutation({
    mutationFn: async (id: string): Promise<void> => {
      const own = outbox.get().find((entry) => entry.farmId === farmId && entry.key === id);
      if (own && (await takeOut(own))) return;
      await through(tellService(farmId, { does: 'take-back', of: { id } }));
    },
  });
};

/** Tells anything through the outbox, for a form or a tick that says itself what is wrong with it. */
export const useMessage = (farmId: string) => {
  const through = useThrough();
  return useMutation({
    mutationFn: ({ message, ...more }: Pick<Entry, 'name' | 'shows'> & { message: Message }) =>
      through(tellService(farmId, message, more)),
  });
};

/**
 * Waits for what becomes of an entry, while the screen it was told on is open. Refused, it goes back
 * to the form, which still holds it; left, it is kept where all that waits is listed.
 */
function useThrough() {
  const isThere = useRef(false);
  useEffect(() => {
    isThere.current = true;
    return () => {
      isThere.current = false;
    };
  }, []);
  return async (telling: Promise<Told>): Promise<{ entry: Entry; outcome: Outcome }> => {
    const { entry, outcome: coming } = await telling;
    const outcome = await Promise.race([coming, later()]);
    if (outcome.is === 'refused' && isThere.current) {
      await backToForm(entry);
      throw new ApiError(outcome.refusal as ApiError['problem']);
    }
    // What goes by it is read again before the form is told.
    if (outcome.is === 'sent') await Promise.race([readBack(), later()]);
    return { entry, outcome };
  };
}

const later = (): Promise<Outcome> =>
  new Promise((resolve) => setTimeout(() => resolve({ is: 'later' }), PATIENCE_MS));

/** What was told of a farm on this phone and is not with the service yet. */
export function useUnsent(farmId?: string): readonly Entry[] {
  const all = useSyncExternalStore(outbox.subscribe, outbox.get);
  return all.filter(
    (entry) => isUnsent(entry) && (farmId === undefined || entry.farmId === farmId),
  );
}
