import { useQueryClient, type QueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import type { Handover } from '../../../shared/farm/handover.js';
import type { Saved } from '../../../shared/farm/saved.js';
import { farmDay, ofFarm, type SavedFarm } from './queries.js';
import { atRest, useWhenIdle } from './when-idle.js';

/**
 * What may be needed without signal, the most needed first: what is asked for when something goes
 * wrong, and of which batches and grass are planned here; the work, who is in charge when; the year.
 */
const AHEAD = ['/picture', '/people', '/work', '/handovers', '/batches', '/jobs', '/year'] as const;
/** Read again on the next visit after so long, ms. */
const FRESH_MS = 30 * 60_000;

/** Reads what may be needed without signal, once the day is shown and the page has come to rest. */
export function useReadAhead(farm: SavedFarm, isShown: boolean): void {
  const client = useQueryClient();
  const isIdle = useWhenIdle();
  const { id } = farm;
  // A phone that lies open for days reads the days that have come.
  const today = farmDay(farm);
  useEffect(() => {
    if (!isIdle || !isShown) return;
    let isLeft = false;
    void readAll(client, id, { today, isOver: () => isLeft });
    return () => {
      isLeft = true;
    };
  }, [client, id, today, isIdle, isShown]);
}

/** One after another, each when the page rests: whoever touches it meanwhile waits for none. */
async function readAll(
  client: QueryClient,
  farmId: string,
  { today, isOver }: { readonly today: string; readonly isOver: () => boolean },
): Promise<void> {
  const read = async <T>(what: string): Promise<T | undefined> => {
    await atRest();
    if (isOver()) return undefined;
    const query = ofFarm<T>(farmId, what);
    await client.prefetchQuery({ ...query, staleTime: FRESH_MS });
    return client.getQueryData<T>(query.queryKey);
  };
  for (const what of AHEAD) {
    if (what !== '/handovers') await read(what);
    else
      for (const { id, to } of (await read<Saved<Handover>[]>(what)) ?? [])
        if (today <= to) await read(`/handovers/${id}/sheet`);
  }
}
