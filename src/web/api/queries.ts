import {
  useMutation,
  useMutationState,
  useQuery,
  useQueryClient,
  type MutationKey,
  type QueryKey,
} from '@tanstack/react-query';
import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import type { Check } from '../../../shared/checks/compare.js';
import type { Batch } from '../../../shared/farm/batch.js';
import type { Facility } from '../../../shared/farm/facility.js';
import type { Farm, Person } from '../../../shared/farm/farm.js';
import type { Herd } from '../../../shared/farm/herd.js';
import type { Product } from '../../../shared/farm/product.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import type { Tables } from '../../../shared/tables/tables.js';
import type { Climate } from '../../../shared/weather/climate.js';
import type { Cow } from '../../../shared/farm/cow.js';
import type { Saved } from '../../../shared/farm/saved.js';
import type { FormWords } from '../../../shared/problems/field-problem.js';
import { useAskAboutClashes, useAskAboutDeleting } from './asking.js';
import { getFile, getJson, postFile, postJson, putCsv, putJson, remove } from './client.js';
import { dayIn } from '../kept/day-it-is.js';
import { forgetAnswers } from '../kept/kept-answers.js';
import { dropFarm } from '../kept/outbox-store.js';
import { FARMS_AT_ONCE, farmsFrom, isKeptRead, keptQuery, readOrKept } from './kept-reads.js';
import { removeAsking, saveMerging, type AskAboutDeleting, type Deleted } from './save-merging.js';
import { seenRow } from './seen-rows.js';

export type SavedFarm = Saved<Farm> & { readonly isSample: boolean };
export type SavedBatch = Saved<Batch>;

/** A farm's picture from the service, whose rows can be changed. */
export type SavedPicture = Omit<FarmPicture, 'farm' | 'batches'> & {
  readonly farm: SavedFarm;
  readonly batches: readonly SavedBatch[];
};

export interface WeatherView {
  readonly inUse: Climate['way'];
  readonly label: string;
  readonly fetchAllowed: boolean;
  readonly fetchedDays: number;
  readonly csvDays: number;
  readonly forecastDays: number;
}

export const useTables = ({ isAsked = true } = {}) =>
  useQuery({
    enabled: isAsked,
    queryKey: ['tables'],
    ...keptQuery<Tables>('/reference/tables'),
    staleTime: Infinity,
  });
export interface HolidayCountry {
  readonly id: string;
  readonly name: string;
  readonly regions: readonly { readonly id: string; readonly name: string }[];
}
export const useCountries = () =>
  useQuery({
    queryKey: ['countries'],
    ...keptQuery<HolidayCountry[]>('/reference/countries'),
    staleTime: Infinity,
  });
/** What the program computes beside values from outside. */
export const useChecks = () =>
  useQuery({
    queryKey: ['checks'],
    queryFn: () => getJson<Check[]>('/reference/checks'),
    staleTime: Infinity,
  });
export const useFarms = () => useQuery({ queryKey: ['farms'], queryFn: allFarms });

/** Every farm there is, page by page. */
async function allFarms(): Promise<SavedFarm[]> {
  const farms: SavedFarm[] = [];
  for (;;) {
    const page = await readOrKept<SavedFarm[]>(farmsFrom(farms.length));
    farms.push(...page);
    if (page.length < FARMS_AT_ONCE) return farms;
  }
}

/** A query of something that belongs to a farm. */
export const ofFarm = <T>(farmId: string, what: string) => ({
  queryKey: ['farm', farmId, what],
  ...keptQuery<T>(`/farms/${farmId}${what}`),
});

/** All that plans of a farm are made from, in one request; the page plans from it. */
export const usePicture = (farmId: string) =>
  useQuery({ ...ofFarm<SavedPicture>(farmId, '/picture'), select: ofTheDay });

/** A picture that was read days ago is planned from on the day it is. */
function ofTheDay(picture: SavedPicture): SavedPicture {
  const today = farmDay(picture.farm);
  return picture.today < today && isKeptRead(`/farms/${picture.farm.id}/picture`)
    ? { ...picture, today }
    : picture;
}

/** The day it is on a farm, by the service's clock, whatever day was read last. */
export const farmDay = ({ timeZone }: SavedFarm): PlainDate => dayIn(timeZone);

/** What was asked for ahead is not asked for again by its screen, ms. */
export const FRESH_MS = 5000;
export const useFarm = (farmId: string) =>
  useQuery({ ...ofFarm<SavedFarm>(farmId, ''), staleTime: FRESH_MS });
export const useFacilities = (farmId: string) =>
  useQuery(ofFarm<Facility[]>(farmId, '/facilities'));
export const useProducts = (farmId: string) => useQuery(ofFarm<Product[]>(farmId, '/products'));
export const usePeople = (farmId: string) => useQuery(ofFarm<Person[]>(farmId, '/people'));
export const useBatches = (farmId: string) => useQuery(ofFarm<SavedBatch[]>(farmId, '/batches'));
/** The day on which each batch is processed or lays its first eggs, by its id. */
export const useBatchEnds = (farmId: string) =>
  useQuery(ofFarm<Readonly<Record<string, PlainDate>>>(farmId, '/batch-ends'));
export const useHerds = (farmId: string) => useQuery(ofFarm<Herd[]>(farmId, '/herds'));
/** Cows with a name, those that are gone as well: the picture holds who is there. */
export const useCows = (farmId: string) => useQuery(ofFarm<Saved<Cow>[]>(farmId, '/cows'));
export const useWeather = (farmId: string) => useQuery(ofFarm<WeatherView>(farmId, '/weather'));

/** A change to a farm or to something in it; whatever was read of farms is read again after it. */
export function useChange<Input, Output>(
  change: (input: Input) => Promise<Output>,
  mutationKey?: MutationKey,
) {
  const client = useQueryClient();
  return useMutation({
    ...(mutationKey ? { mutationKey } : {}),
    mutationFn: change,
    onSuccess: async () => {
      const stale: QueryKey[] = [['farms'], ['farm']];
      await Promise.all(stale.map((queryKey) => client.invalidateQueries({ queryKey })));
    },
  });
}

export const useCreateSample = () => useChange(() => postJson<SavedFarm>('/farms/sample'));
export const useUpdateFarm = (farmId: string, words: FormWords) => {
  const ask = useAskAboutClashes(words);
  return useChange((farm: Farm & { version?: number }) =>
    saveMerging<SavedFarm>(`/farms/${farmId}`, farm, ask, seenRow(farmId, farm.version)),
  );
};
/** Saves a farm as it is given, for a press that changes just what it says. */
export const usePutFarm = (farmId: string) =>
  useChange((farm: SavedFarm) => {
    const {
      id: _id,
      isSample: _isSample,
      revision: _revision,
      ...sent
    } = farm as SavedFarm & {
      readonly revision?: number;
    };
    return putJson<SavedFarm>(`/farms/${farmId}`, sent);
  });
export const useDeleteFarm = () => {
  const ask = useAskAboutDeletingIn('farms');
  return useChange(async (farm: SavedFarm) => {
    const isGone = await removeAsking('/farms', farm, ask(farm));
    // Nothing of it stays on this phone, nor is anything told of it any more.
    if (isGone) await Promise.all([forgetAnswers(farm.id), dropFarm(farm.id)]);
    return isGone;
  });
};

/** Everything of a farm as one file. */
export const useDownloadFarm = (farmId: string) =>
  useMutation({ mutationFn: () => getFile(`/farms/${farmId}/archive`) });
export const useReadFarm = () =>
  useChange((file: Blob) => postFile<SavedFarm>('/farms/archive', file));

type Collection =
  | 'facilities'
  | 'products'
  | 'suppliers'
  | 'people'
  | 'batches'
  | 'paddocks'
  | 'herds'
  | 'cows'
  | 'grass-readings'
  | 'jobs'
  | 'handovers';

/** Saves a new row or an existing one, by whether it has an id. Words are those of its form. */
export const useSave = <T extends { id?: string | undefined }, Row = T & { id: string }>(
  farmId: string,
  what: Collection,
  words: FormWords,
  how: { readonly isPutBack?: boolean } = {},
) => {
  const ask = useAskAboutClashes(words);
  const path = `/farms/${farmId}/${what}`;
  return useChange(({ id, ...values }: T) =>
    id === undefined
      ? postJson<Row>(path, values)
      : saveMerging<Row>(`${path}/${id}`, values, ask, seenRow(id, versionOf(values)), how),
  );
};
const versionOf = (row: object): unknown => (row as { version?: unknown }).version;

/** Deletes a row, and says whether it is gone: it stays when somebody else changed it meanwhile. */
export const useRemove = (farm: SavedFarm, what: Collection) => {
  const ask = useAskAboutDeletingIn(what);
  return useChange((row: Deleted) => removeAsking(`/farms/${farm.id}/${what}`, row, ask(farm)));
};

/** Asks about a row that somebody else changed. What describes all rows comes only then. */
function useAskAboutDeletingIn(what: Collection | 'farms') {
  const ask = useAskAboutDeleting();
  return (farm: SavedFarm): AskAboutDeleting =>
    async (seen, current) => {
      const { DESCRIBED } = await import('./described-rows.js');
      return ask(seen, current, DESCRIBED[what](current), farm);
    };
}

export const useAllowFetch = (farmId: string) =>
  useChange((allowed: boolean) =>
    putJson<WeatherView>(`/farms/${farmId}/weather/fetching`, { allowed }),
  );
const fetchingOf = (farmId: string): MutationKey => ['weather', 'fetch', farmId];
/** It goes on, and what became of it is known, when the screen that began it was left. */
export function useFetchWeather(farmId: string) {
  const fetchNow = useChange(
    () => postJson<WeatherView>(`/farms/${farmId}/weather/fetch`),
    fetchingOf(farmId),
  );
  const last = useMutationState({
    filters: { mutationKey: fetchingOf(farmId) },
    select: ({ state: { status, error } }) => ({ status, error }),
  }).at(-1);
  return {
    fetchNow: fetchNow.mutateAsync,
    isFetching: last?.status === 'pending',
    error: last?.error,
  };
}
export const useImportCsv = (farmId: string) =>
  useChange((text: string) => putCsv<WeatherView>(`/farms/${farmId}/weather/csv`, text));
export const useForgetWeather = (farmId: string) =>
  useChange((kind: 'csv' | 'fetched') => remove(`/farms/${farmId}/weather/${kind}`));
