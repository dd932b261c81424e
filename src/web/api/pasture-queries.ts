import { useQuery } from '@tanstack/react-query';
import type { Herd } from '../../../shared/farm/herd.js';
import type { GrassReading, Paddock } from '../../../shared/farm/paddock.js';
import type {
  PastureChoices,
  PastureRequest,
} from '../../../shared/plan/pasture/pasture-request.js';
import { getJson, postJson, putJson } from './client.js';
import { useChange } from './queries.js';

/** All that a farm's pasture plan is made from but the tables. */
export type PastureOnFarm = Omit<PastureRequest, 'tables'>;

export const usePasture = (farmId: string) =>
  useQuery({
    queryKey: ['farm', farmId, '/pasture'],
    queryFn: () => getJson<PastureOnFarm>(`/farms/${farmId}/pasture`),
  });

export const useWalk = (farmId: string) =>
  useChange((readings: readonly Omit<GrassReading, 'id'>[]) =>
    postJson<GrassReading[]>(`/farms/${farmId}/grass-readings`, { readings }),
  );
export const useMoved = (farmId: string) =>
  useChange(({ herdId, ...move }: { herdId: string; paddockId: string; on: string }) =>
    postJson<Herd>(`/farms/${farmId}/herds/${herdId}/moved`, move),
  );
export const useSplit = (farmId: string) =>
  useChange(({ id, parts }: { id: string; parts: number }) =>
    postJson<Paddock[]>(`/farms/${farmId}/paddocks/${id}/split`, { parts }),
  );
export const useJoin = (farmId: string) =>
  useChange((join: { ids: readonly string[]; name: string }) =>
    postJson<Paddock>(`/farms/${farmId}/paddocks/join`, join),
  );
export const useImportGeoJson = (farmId: string) =>
  useChange((document: unknown) =>
    postJson<Paddock[]>(`/farms/${farmId}/paddocks/geojson`, document),
  );
export const useChoices = (farmId: string) =>
  useChange((choices: PastureChoices) =>
    putJson<PastureChoices>(`/farms/${farmId}/pasture/choices`, choices),
  );
