import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { ToldFact, ToldKind } from '../../../shared/farm/told-fact.js';
import type { ChangedByFact } from '../../../shared/plan/record/changed-by-fact.js';
import type { HowItWent } from '../../../shared/plan/record/how-it-went.js';
import type { NextYear } from '../../../shared/plan/record/next-year.js';
import type { LearnedFromBatches } from '../../../shared/plan/record/own-batches.js';
import type { PaddocksOfYear, PaddockYear } from '../../../shared/plan/record/paddock-year.js';
import type { CountedYear } from '../../../shared/plan/record/year-limits.js';
import { getJson, postJson } from './client.js';
import { ofFarm, useChange } from './queries.js';

/** Some of what was told, the newest first. */
export interface ToldPage {
  readonly facts: readonly ToldFact[];
  readonly total: number;
  /** Ids of those here that another one has taken the place of. */
  readonly replaced: readonly string[];
}

export interface ToldFilter {
  readonly about?: string | undefined;
  readonly kind?: ToldKind | undefined;
}

/** As many are shown at a time. */
export const FACTS_AT_ONCE = 50;

/** What was told, with what was changed and taken back; ticks of chores and alarms left out. */
export function useTold(farmId: string, { about, kind }: ToldFilter, skip: number) {
  const query = new URLSearchParams({
    history: 'true',
    ticks: 'false',
    skip: `${skip}`,
    take: `${FACTS_AT_ONCE}`,
    ...(about === undefined ? {} : { about }),
    ...(kind === undefined ? {} : { kind }),
  });
  return useQuery({
    ...ofFarm<ToldPage>(farmId, `/told?${query.toString()}`),
    placeholderData: keepPreviousData,
  });
}

export const useYearCounts = (farmId: string, year: number) =>
  useQuery({
    ...ofFarm<CountedYear>(farmId, `/record/years/${year}`),
    placeholderData: keepPreviousData,
  });

const AT_ONCE = 1000;

/** All that holds of what was told of a calendar year, by its day, ticks of chores left out. */
export const useToldOfYear = (farmId: string, year: number) =>
  useQuery({
    queryKey: ['farm', farmId, 'told of a year', year],
    queryFn: async (): Promise<readonly ToldFact[]> => {
      const all: ToldFact[] = [];
      for (let total = 1; all.length < total;) {
        const query = `from=${year}-01-01&to=${year}-12-31&ticks=false&take=${AT_ONCE}&skip=${all.length}`;
        const page = await getJson<ToldPage>(`/farms/${farmId}/told?${query}`);
        if (page.facts.length === 0) break;
        all.push(...page.facts);
        total = page.total;
      }
      return all.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
    },
  });

export const usePaddockYears = (farmId: string, year: number) =>
  useQuery({
    ...ofFarm<PaddockYear[]>(farmId, `/record/years/${year}/paddocks`),
    placeholderData: keepPreviousData,
  });

export const usePaddocksByYear = (farmId: string) =>
  useQuery(ofFarm<PaddocksOfYear[]>(farmId, '/record/paddocks'));

/** A year as it would come again; asked for when somebody wants to begin it. */
export const useNextYear = (farmId: string, year: number) =>
  useQuery(ofFarm<NextYear>(farmId, `/next-year/${year}`));

/** What the farm's own batches say of another one; asked while one is being planned. */
export const useLearned = (
  farmId: string,
  { purpose, strainId }: { readonly purpose: string; readonly strainId: string | undefined },
  isAsked: boolean,
) => {
  const query = new URLSearchParams({ purpose, strainId: strainId ?? '' });
  return useQuery({
    ...ofFarm<LearnedFromBatches>(farmId, `/record/learned?${query.toString()}`),
    enabled: isAsked && strainId !== undefined,
  });
};

type ComesAgain = 'batchIds' | 'jobIds' | 'herdIds' | 'paddockIds';

/** What was made, and rows of before it that were changed with it. */
export interface BegunYear {
  readonly made: Readonly<
    Record<'batches' | 'jobs' | 'herds' | 'paddocks' | 'cows', readonly SavedRow[]>
  >;
  readonly before: Readonly<Record<'herds' | 'paddocks' | 'cows', readonly SavedRow[]>>;
}
interface SavedRow {
  readonly id: string;
  readonly version: number;
}

/** @param cowIds named cows that get a new date of calving */
export const useBeginYear = (farmId: string, cowIds: readonly string[]) =>
  useChange(
    async (
      asked: { readonly year: number } & Readonly<Record<ComesAgain, readonly string[]>>,
    ): Promise<BegunYear> => {
      const rows = (of: string) => getJson<SavedRow[]>(`/farms/${farmId}/${of}`);
      const among = (ids: readonly string[]) => (row: SavedRow) => ids.includes(row.id);
      const before = {
        herds: (await rows('herds')).filter(among(asked.herdIds)),
        paddocks: (await rows('paddocks')).filter(among(asked.paddockIds)),
        cows: cowIds.length === 0 ? [] : (await rows('cows')).filter(among(cowIds)),
      };
      const made = await postJson<BegunYear['made']>(`/farms/${farmId}/next-year`, asked);
      return { made, before };
    },
  );

/** Fields that a begun year changes. */
const CHANGED = {
  herds: ['groups', 'turnOutOn'],
  cows: ['bredOn', 'calvesOn'],
  paddocks: ['closedDays', 'harvestOn', 'lastHarvestOn'],
} as const;

/** Takes out what a year was begun with, in one write: what somebody changed since stays, and is named. */
export const useTakeOutYear = (farmId: string) =>
  useChange(({ made, before }: BegunYear): Promise<{ readonly kept: readonly string[] }> => {
    const ids = (of: readonly SavedRow[]) => of.map(({ id }) => id);
    const changed = (of: keyof typeof CHANGED): object[] =>
      before[of].flatMap((was) => {
        const version = made[of].find(({ id }) => id === was.id)?.version;
        if (version === undefined) return [];
        const fields = Object.entries(was).filter(([name]) =>
          (CHANGED[of] as readonly string[]).includes(name),
        );
        return [{ id: was.id, version, ...Object.fromEntries(fields) }];
      });
    return postJson(`/farms/${farmId}/next-year/take-out`, {
      ...{ batchIds: ids(made.batches), jobIds: ids(made.jobs) },
      ...{ herds: changed('herds'), cows: changed('cows'), paddocks: changed('paddocks') },
    });
  });

export const useHowAllWent = (farmId: string) =>
  useQuery(ofFarm<HowItWent[]>(farmId, '/record/batches'));

export const useHowItWent = (farmId: string, batchId: string) =>
  useQuery(ofFarm<HowItWent>(farmId, `/record/batches/${batchId}`));

/** What a fact changed in the plan of its batch; what is not sent yet changed nothing so far. */
export const useChangedBy = (farmId: string, factId: string, isSent: boolean) =>
  useQuery({
    ...ofFarm<ChangedByFact>(farmId, `/record/changed/${factId}`),
    enabled: isSent,
  });
