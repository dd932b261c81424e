import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { ofFarm } from './queries.js';
import { useWhenIdle } from './when-idle.js';

/** What is asked for when something goes wrong, with signal or without. */
const AHEAD = ['/picture', '/people'] as const;
/** Read again on the next visit after so long, ms. */
const FRESH_MS = 30 * 60_000;

/** Reads what may be needed without signal, once the page of the day has come to rest. */
export function useReadAhead(farmId: string): void {
  const client = useQueryClient();
  const isIdle = useWhenIdle();
  useEffect(() => {
    if (!isIdle) return;
    for (const what of AHEAD)
      void client.prefetchQuery({ ...ofFarm<unknown>(farmId, what), staleTime: FRESH_MS });
  }, [client, farmId, isIdle]);
}
