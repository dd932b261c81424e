import { useQueryClient, type QueryClient, type QueryFunctionContext } from '@tanstack/react-query';
import { useSyncExternalStore } from 'react';
import { changing } from '../kept/changing.js';
import { drawn } from '../kept/drawn.js';
import { answerAtHand, forgetAnswers, keepAnswer, keptAnswer } from '../kept/kept-answers.js';
import { ApiError, getDated, NOT_REACHED } from './client.js';
import { isPicture, readPicture } from './picture-reads.js';
import { remember } from './seen-rows.js';

/** A weak signal is waited for so long before what was read before is shown, ms. */
const PATIENCE_MS = 4000;

interface Read {
  readonly askedAt: string;
  /** Out of the store: there was no signal. */
  readonly isKept: boolean;
}

/** When each path was last read, as it is shown. */
const reads = changing<ReadonlyMap<string, Read>>(new Map());
const note = (path: string, read: Read): void => reads.set(new Map(reads.get()).set(path, read));

/** A query that shows what it read last where there is no signal. */
export const keptQuery = <T>(path: string, { endsWithScreen = false } = {}) => ({
  queryFn: (context: QueryFunctionContext): Promise<T> => {
    const { client, queryKey } = context;
    const isFirst = client.getQueryData(queryKey) === undefined;
    const late = (data: T): void => void client.setQueryData(queryKey, data);
    return readOrKept<T>(path, {
      // Asking for it lets a query be ended by whoever leaves its screen.
      ...(endsWithScreen ? { signal: context.signal } : {}),
      ...(isFirst ? { late } : {}),
    });
  },
});

interface Asking<T> {
  /** Ends it. */
  readonly signal?: AbortSignal;
  /** Takes the service's answer where it came after what was kept had been shown. */
  readonly late?: (data: T) => void;
}

/** What is shown as it lay at hand is drawn before anything is asked for. */
let isDrawn: Promise<void> | undefined;
const DRAWN_MS = 1000;

/** What a path holds: as the service says it now, or without signal as it was read last. */
export async function readOrKept<T>(path: string, { signal, late }: Asking<T> = {}): Promise<T> {
  const asked = fresh<T>(path, signal);
  try {
    return await (late ? inTime(asked) : asked);
  } catch (problem) {
    const isSlow = problem instanceof Slow;
    if (signal?.aborted || (!isSlow && !isNotReached(problem))) throw problem;
    const kept = await keptAnswer<T>(path);
    if (!kept) {
      if (isSlow) return asked;
      throw problem;
    }
    note(path, { askedAt: kept.askedAt, isKept: true });
    if (isSlow) asked.then(late, () => undefined);
    return remember(kept.data);
  }
}

/**
 * Shows what a query read last, where it lies at hand, until its answer is there; what is shown so
 * counts as stale. That it is of earlier is said where no answer comes in time.
 */
export function showAtHand<T>(
  client: QueryClient,
  queryKey: readonly unknown[],
  isStillRight: (data: T) => boolean,
): void {
  const path = pathOf(queryKey);
  const found = answerAtHand<T>(path);
  if (!found || !isStillRight(found.data)) return;
  const read: Read = { askedAt: found.askedAt, isKept: false };
  isDrawn ??= drawn(DRAWN_MS);
  note(path, read);
  client.setQueryData(queryKey, remember(found.data), { updatedAt: 1 });
  setTimeout(() => {
    if (reads.get().get(path) === read) note(path, { ...read, isKept: true });
  }, PATIENCE_MS);
}

async function fresh<T>(path: string, signal?: AbortSignal): Promise<T> {
  await isDrawn;
  const read = isPicture(path) ? readPicture : getDated;
  const { data, askedAt } = await read<T>(path, signal).catch((problem: unknown) => {
    if (problem instanceof ApiError && problem.problem.status === 404) forgetGone(path);
    throw problem;
  });
  note(path, { askedAt, isKept: false });
  keepAnswer(path, { data, askedAt });
  return data;
}

class Slow extends Error {}

function inTime<T>(asked: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Slow()), PATIENCE_MS);
    asked.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

const isNotReached = (problem: unknown): boolean =>
  problem instanceof ApiError && problem.problem.status === NOT_REACHED;

/** A farm that somebody deleted leaves nothing behind here. */
function forgetGone(path: string): void {
  const farmId = /^\/farms\/([^/]+)$/.exec(path)?.[1];
  if (farmId !== undefined) void forgetAnswers(farmId);
}

/** What of a farm shows what was told. */
const SHOWS_TOLD = /^\/(today|picture|year|work(\/outlook)?|handovers\/[^/]+\/sheet)$/;

/** The service's time of what is shown of a farm now, the oldest of it; undefined when none is. */
export function shownAt(client: QueryClient, farmId: string): string | undefined {
  return oldest(shownReads(client, farmId, SHOWS_TOLD).map(({ askedAt }) => askedAt));
}

/** When the day of a farm was last read, by the service's clock. */
export const readAt = (path: string): string | undefined => reads.get().get(path)?.askedAt;

/** Whether a path is shown as it was kept, for want of signal. */
export const isKeptRead = (path: string): boolean => reads.get().get(path)?.isKept === true;

/** Since when what is shown of a farm is as it is; undefined while it is as the service says it. */
export function useAsOf(farmId: string): string | undefined {
  const client = useQueryClient();
  useSyncExternalStore(reads.subscribe, reads.get);
  return oldest(
    shownReads(client, farmId)
      .filter(({ isKept }) => isKept)
      .map(({ askedAt }) => askedAt),
  );
}

/** Reads again what was shown out of the store, and what could not be shown for want of signal. */
export async function readAgain(client: QueryClient): Promise<void> {
  const kept = [...reads.get()].filter(([, { isKept }]) => isKept).map(([path]) => path);
  await client.invalidateQueries({
    predicate: ({ queryKey, state }) =>
      kept.includes(pathOf(queryKey)) || isNotReached(state.error),
  });
}

const shownReads = (client: QueryClient, farmId: string, which = /^/): Read[] =>
  client
    .getQueryCache()
    .findAll({ queryKey: ['farm', farmId], type: 'active' })
    .filter(({ queryKey }) => which.test(String(queryKey[2])))
    .flatMap(({ queryKey }) => reads.get().get(pathOf(queryKey)) ?? []);

const pathOf = (queryKey: readonly unknown[]): string =>
  queryKey[0] === 'farm'
    ? `/farms/${String(queryKey[1])}${String(queryKey[2])}`
    : (PATHS[String(queryKey[0])] ?? '');

/** The first page of all farms there are. */
export const FARMS_AT_ONCE = 500;
export const farmsFrom = (skip: number): string => `/farms?skip=${skip}&take=${FARMS_AT_ONCE}`;

/** Paths of what belongs to no farm. */
const PATHS: Readonly<Record<string, string>> = {
  tables: '/reference/tables',
  countries: '/reference/countries',
  farms: farmsFrom(0),
};

const oldest = (instants: readonly string[]): string | undefined => [...instants].sort()[0];
