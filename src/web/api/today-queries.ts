import {
  useIsMutating,
  useMutation,
  useQuery,
  useQueryClient,
  type QueryClient,
} from '@tanstack/react-query';
import { useCallback, useEffect, useState } from 'react';
import type { TickedToday } from '../../../shared/plan/today/today.js';
import { putJson } from './client.js';
import { ofFarm, type SavedFarm } from './queries.js';
import type { Said } from './work-queries.js';

/** Asked for ahead it is not asked for again by its screen. */
const FRESH_MS = 5000;
const ofToday = (farmId: string) => ({
  ...ofFarm<TickedToday>(farmId, '/today'),
  staleTime: FRESH_MS,
});

/** Taken out of the pocket again, a phone knows what others ticked off meanwhile. */
export const useToday = (farmId: string) =>
  useQuery({ ...ofToday(farmId), refetchOnWindowFocus: 'always' });

/** Asks for a farm and its day before anything of the page is there. */
export function askToday(client: QueryClient, farmId: string): void {
  void client.prefetchQuery(ofToday(farmId));
  void client.prefetchQuery(ofFarm<SavedFarm>(farmId, ''));
}

/** Asks for the day before its screen is there. */
export function useAskToday(farmId: string): () => void {
  const client = useQueryClient();
  return useCallback(() => void client.prefetchQuery(ofToday(farmId)), [client, farmId]);
}

/** A tick, its undo, or something else that is told of a piece of work. */
export type Tick =
  | { readonly is: 'chore'; readonly key: string; readonly isDone: boolean }
  | { readonly is: 'job'; readonly key: string; readonly isDone: boolean; readonly told: Said }
  | { readonly is: 'change'; readonly key: string; readonly told: Said };

/**
 * Ticks that are seen at once: what was pressed counts until the service has answered and the day
 * was read again, however many were pressed meanwhile. One that fails goes back to what it was.
 */
export function useTicks(farmId: string) {
  const client = useQueryClient();
  const [said, setSaid] = useState<ReadonlyMap<string, boolean>>(new Map());
  const mutationKey = ['tick', farmId];
  const { queryKey } = ofToday(farmId);
  const tick = useMutation({
    mutationKey,
    mutationFn: (one: Tick) => tell(farmId, one),
    onError: (_error, { key }) =>
      setSaid((before) => new Map([...before].filter(([each]) => each !== key))),
    // No plan goes by a chore: only the day itself is read again.
    onSettled: (_answer, _error, one) =>
      client.invalidateQueries({ queryKey: one.is === 'chore' ? queryKey : ['farm'] }),
  });
  const underWay = useIsMutating({ mutationKey });
  useEffect(() => {
    const isBusy = 0 < client.isMutating({ mutationKey: ['tick', farmId] });
    if (isBusy || 0 < client.isFetching({ queryKey: ['farm', farmId, '/today'] })) return;
    setSaid((before) => (before.size === 0 ? before : new Map()));
  }, [client, farmId, underWay]);
  return {
    /** What was pressed of a key and is not read back yet. */
    said: (key: string): boolean | undefined => said.get(key),
    error: tick.error,
    tick: (one: Tick): void => {
      if (one.is !== 'change') setSaid((before) => new Map(before).set(one.key, one.isDone));
      tick.mutate(one);
    },
  };
}

const tell = (farmId: string, one: Tick): Promise<unknown> =>
  one.is === 'chore'
    ? putJson(`/farms/${farmId}/today/chores`, { key: one.key, isDone: one.isDone })
    : putJson(`/farms/${farmId}/work/progress`, one.told);
