import { useMutation, useQuery, useQueryClient, type QueryKey } from '@tanstack/react-query';
import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import type { Check } from '../../../shared/checks/compare.js';
import { batchFields, type Batch } from '../../../shared/farm/batch.js';
import { rowOfKind } from '../../../shared/farm/check-row.js';
import { cowFields } from '../../../shared/farm/cow.js';
import { anyFacility, type Facility } from '../../../shared/farm/facility.js';
import { farmFields, personFields, type Farm, type Person } from '../../../shared/farm/farm.js';
import type { RowDescription } from '../../../shared/farm/field.js';
import { handoverFields } from '../../../shared/farm/handover.js';
import { herdFields, type Herd } from '../../../shared/farm/herd.js';
import { jobFields } from '../../../shared/farm/job.js';
import { grassReadingFields, paddockFields } from '../../../shared/farm/paddock.js';
import { anyProduct, type Product } from '../../../shared/farm/product.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import type { Tables } from '../../../shared/tables/tables.js';
import type { Climate } from '../../../shared/weather/climate.js';
import type { Saved } from '../../../shared/farm/saved.js';
import type { FormWords } from '../../../shared/problems/field-problem.js';
import { useAskAboutClashes, useAskAboutDeleting } from './clash-dialog.js';
import { getFile, getJson, postFile, postJson, putCsv, putJson, remove } from './client.js';
import { removeAsking, saveMerging, type Deleted } from './save-merging.js';
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
    queryFn: () => getJson<Tables>('/reference/tables'),
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
    queryFn: () => getJson<HolidayCountry[]>('/reference/countries'),
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

const FARMS_AT_ONCE = 500;

/** Every farm there is, page by page. */
async function allFarms(): Promise<SavedFarm[]> {
  const farms: SavedFarm[] = [];
  for (;;) {
    const query = `?skip=${farms.length}&take=${FARMS_AT_ONCE}`;
    const page = await getJson<SavedFarm[]>(`/farms${query}`);
    farms.push(...page);
    if (page.length < FARMS_AT_ONCE) return farms;
  }
}

/** A query of something that belongs to a farm. */
export const ofFarm = <T>(farmId: string, what: string) => ({
  queryKey: ['farm', farmId, what],
  queryFn: () => getJson<T>(`/farms/${farmId}${what}`),
});

/** All that plans of a farm are made from, in one request; the page plans from it. */
export const usePicture = (farmId: string) => useQuery(ofFarm<SavedPicture>(farmId, '/picture'));
export const useFarm = (farmId: string) => useQuery(ofFarm<SavedFarm>(farmId, ''));
export const useFacilities = (farmId: string) =>
  useQuery(ofFarm<Facility[]>(farmId, '/facilities'));
export const useProducts = (farmId: string) => useQuery(ofFarm<Product[]>(farmId, '/products'));
export const usePeople = (farmId: string) => useQuery(ofFarm<Person[]>(farmId, '/people'));
export const useBatches = (farmId: string) => useQuery(ofFarm<SavedBatch[]>(farmId, '/batches'));
/** The day on which each batch is processed or lays its first eggs, by its id. */
export const useBatchEnds = (farmId: string) =>
  useQuery(ofFarm<Readonly<Record<string, PlainDate>>>(farmId, '/batch-ends'));
export const useHerds = (farmId: string) => useQuery(ofFarm<Herd[]>(farmId, '/herds'));
export const useWeather = (farmId: string) => useQuery(ofFarm<WeatherView>(farmId, '/weather'));

/** A change to a farm or to something in it; whatever was read of farms is read again after it. */
export function useChange<Input, Output>(change: (input: Input) => Promise<Output>) {
  const client = useQueryClient();
  return useMutation({
    mutationFn: change,
    onSuccess: async () => {
      const stale: QueryKey[] = [['farms'], ['farm']];
      await Promise.all(stale.map((queryKey) => client.invalidateQueries({ queryKey })));
    },
  });
}

export const useCreateSample = () => useChange(() => postJson<SavedFarm>('/farms/sample'));
export const useCreateFarm = () => useChange((farm: Farm) => postJson<SavedFarm>('/farms', farm));
export const useUpdateFarm = (farmId: string, words: FormWords) => {
  const ask = useAskAboutClashes(words);
  return useChange((farm: Farm & { version?: number }) =>
    saveMerging<SavedFarm>(`/farms/${farmId}`, farm, ask, seenRow(farmId, farm.version)),
  );
};
export const useDeleteFarm = () => {
  const ask = useAskAboutDeleting();
  return useChange((farm: SavedFarm) =>
    removeAsking('/farms', farm, (seen, current) => ask(seen, current, farmFields, farm)),
  );
};

/** Everything of a farm as one file. */
export const useDownloadFarm = (farmId: string) =>
  useMutation({ mutationFn: () => getFile(`/farms/${farmId}/archive`) });
export const useReadFarm = () =>
  useChange((file: Blob) => postFile<SavedFarm>('/farms/archive', file));

type Collection =
  | 'facilities'
  | 'products'
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
) => {
  const ask = useAskAboutClashes(words);
  const path = `/farms/${farmId}/${what}`;
  return useChange(({ id, ...values }: T) =>
    id === undefined
      ? postJson<Row>(path, values)
      : saveMerging<Row>(`${path}/${id}`, values, ask, seenRow(id, versionOf(values))),
  );
};
const versionOf = (row: object): unknown => (row as { version?: unknown }).version;

/** Deletes a row, and says whether it is gone: it stays when somebody else changed it meanwhile. */
export const useRemove = (farm: SavedFarm, what: Collection) => {
  const ask = useAskAboutDeleting();
  return useChange((row: Deleted) =>
    removeAsking(`/farms/${farm.id}/${what}`, row, (seen, current) =>
      ask(seen, current, DESCRIBED[what](current), farm),
    ),
  );
};

/** What describes the rows of a collection; a facility is described by its kind. */
const DESCRIBED: Record<Collection, (row: object) => RowDescription> = {
  facilities: (row) => rowOfKind(anyFacility, (row as Facility).kind)!,
  products: (row) => rowOfKind(anyProduct, (row as Product).kind)!,
  people: () => personFields,
  batches: () => batchFields,
  paddocks: () => paddockFields,
  herds: () => herdFields,
  cows: () => cowFields,
  'grass-readings': () => grassReadingFields,
  jobs: () => jobFields,
  handovers: () => handoverFields,
};

export const useAllowFetch = (farmId: string) =>
  useChange((allowed: boolean) =>
    putJson<WeatherView>(`/farms/${farmId}/weather/fetching`, { allowed }),
  );
export const useFetchWeather = (farmId: string) =>
  useChange(() => postJson<WeatherView>(`/farms/${farmId}/weather/fetch`));
export const useImportCsv = (farmId: string) =>
  useChange((text: string) => putCsv<WeatherView>(`/farms/${farmId}/weather/csv`, text));
export const useForgetWeather = (farmId: string) =>
  useChange((kind: 'csv' | 'fetched') => remove(`/farms/${farmId}/weather/${kind}`));
