import { useMutation } from '@tanstack/react-query';
import type { GrassReading, Paddock } from '../../../shared/farm/paddock.js';
import { pastureChoiceFields, type PastureChoices } from '../../../shared/farm/pasture-choices.js';
import type { toldWithBefore } from '../../../shared/plan/pasture/move-told.js';
import { useAskAboutClashes } from './asking.js';
import { postJson } from './client.js';
import { useChange, type SavedFarm } from './queries.js';
import { wordsOfRow } from './row-words.js';
import { saveMerging } from './save-merging.js';
import { useMessage } from './told-queries.js';

/** A paddock after splitting or joining; when its outline was lost, why. */
export type Reshaped = Paddock & { readonly noOutlineBecause?: string };

/** What a paddock is like, as far as no outline shows it. */
export type Ground = Pick<
  Paddock,
  'forageId' | 'stand' | 'productivity' | 'soilId' | 'hasWater' | 'hasShade'
>;

export interface FoundInGeoJson {
  readonly paddocks: readonly {
    readonly name: string;
    readonly areaM2: number;
    /** What the file says of its ground, and what of it was not understood. */
    readonly own: Partial<Ground>;
    readonly notUsed: readonly string[];
  }[];
  readonly leftOut: readonly string[];
}

/** Tells the heights of one walk together. */
export function useWalk(farmId: string) {
  const { mutateAsync } = useMessage(farmId);
  return useMutation({
    mutationFn: async (readings: readonly Omit<GrassReading, 'id' | 'isOfMove'>[]) => {
      const facts = readings.map(
        ({ paddockId: about, date: on, ...details }) =>
          ({ kind: 'grass-reading', about, on, details }) as const,
      );
      const { outcome } = await mutateAsync({ message: { does: 'tell', facts } });
      return { isSent: outcome.is === 'sent' };
    },
  });
}
/** Saves a change of the pasture choices, and joins it with what somebody else chose meanwhile. */
export const useChoose = (farm: SavedFarm) => {
  const ask = useAskAboutClashes(wordsOfRow(pastureChoiceFields, farm));
  const path = `/farms/${farm.id}/pasture/choices`;
  return useChange(({ loaded, wanted }: { loaded: PastureChoices; wanted: PastureChoices }) =>
    saveMerging<PastureChoices>(path, wanted, ask, loaded),
  );
};
/** Tells where a herd went, with the moves before it that nobody told. */
export function useMoved(farmId: string) {
  const { mutateAsync } = useMessage(farmId);
  return useMutation({
    mutationFn: async (facts: ReturnType<typeof toldWithBefore>) => {
      await mutateAsync({ message: { does: 'tell', facts } });
    },
  });
}
export const useSplit = (farmId: string) =>
  useChange(({ id, parts }: { id: string; parts: number }) =>
    postJson<Reshaped[]>(`/farms/${farmId}/paddocks/${id}/split`, { parts }),
  );
export const useJoin = (farmId: string) =>
  useChange((join: { ids: readonly string[]; name: string }) =>
    postJson<Reshaped>(`/farms/${farmId}/paddocks/join`, join),
  );
/** What an import would add; asking changes nothing. */
export const useFindInGeoJson = (farmId: string) =>
  useMutation({
    mutationFn: (document: unknown) =>
      postJson<FoundInGeoJson>(`/farms/${farmId}/paddocks/geojson/preview`, document),
  });
export const useImportGeoJson = (farmId: string) =>
  useChange((document: unknown) =>
    postJson<Paddock[]>(`/farms/${farmId}/paddocks/geojson`, document),
  );
