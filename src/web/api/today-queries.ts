import {
  useQuery,
  useQueryClient,
  type QueryClient,
  type QueryFunctionContext,
} from '@tanstack/react-query';
import { useCallback, useState, useSyncExternalStore } from 'react';
import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import type { DatedToday, TickedToday } from '../../../shared/plan/today/today.js';
import { movedBy, type HerdGoes } from '../../../shared/plan/pasture/move-told.js';
import type { TripToBuy } from '../../../shared/plan/tasks/task.js';
import { isNow, learnDay } from '../kept/day-it-is.js';
import { drawn } from '../kept/drawn.js';
import type { Entry, Message } from '../kept/entry.js';
import { outbox } from '../kept/outbox-store.js';
import { isBought, takeBackBought, tellBought } from './bought-with-work.js';
import { readAt, showAtHand } from './kept-reads.js';
import { takeOut } from './outbox.js';
import { farmDay, FRESH_MS, ofFarm, type SavedFarm } from './queries.js';
import { useMessage } from './told-queries.js';
import type { Said } from './work-queries.js';

function ofToday(farmId: string) {
  const { queryKey, queryFn } = ofFarm<DatedToday>(farmId, '/today');
  return {
    queryKey,
    queryFn: async (context: QueryFunctionContext): Promise<DatedToday> => {
      const day = await queryFn(context);
      learnDay(day.inZone);
      return day;
    },
    staleTime: FRESH_MS,
  };
}

/** Taken out of the pocket again, a phone knows what others ticked off meanwhile. */
export const useToday = (farmId: string) =>
  useQuery({ ...ofToday(farmId), refetchOnWindowFocus: 'always' });

/** The day is looked at so often for alarms while nobody does anything, ms. */
const WATCH_MS = 10 * 60_000;

/** The day, read again and again while the page is open, also behind others. */
export const useWatchedToday = (farmId: string, isWatched: boolean) =>
  useQuery({
    ...ofToday(farmId),
    enabled: isWatched,
    refetchInterval: isWatched && WATCH_MS,
    refetchIntervalInBackground: true,
  });

/**
 * Asks for a farm and its day before anything of the page is there, and shows them as they were read
 * last until they are: the day only while it is that day, because another has other numbers.
 * Returns nothing where both are shown so, else what ends when they have come, or were not to be had.
 */
export function askToday(client: QueryClient, farmId: string): Promise<unknown> | undefined {
  const ofIt = ofFarm<SavedFarm>(farmId, '');
  showAtHand<SavedFarm>(client, ofIt.queryKey, () => true);
  if (client.getQueryData(ofIt.queryKey))
    showAtHand<DatedToday>(client, ofToday(farmId).queryKey, ({ inZone }) => {
      learnDay(inZone);
      return isNow(inZone);
    });
  const asked = Promise.all([client.prefetchQuery(ofToday(farmId)), client.prefetchQuery(ofIt)]);
  return client.getQueryData(ofToday(farmId).queryKey) === undefined ? asked : undefined;
}

/** Asks for the day before its screen is there. */
export function useAskToday(farmId: string): () => void {
  const client = useQueryClient();
  return useCallback(() => void client.prefetchQuery(ofToday(farmId)), [client, farmId]);
}

/** A day with its round open again when another day has begun since it was read. */
export function onDayItIs(
  day: TickedToday,
  farm: SavedFarm,
): TickedToday & { readonly on: PlainDate } {
  const on = farmDay(farm);
  if (on <= day.date) return { ...day, on: day.date };
  return { ...day, on, chores: day.chores.map((chore) => ({ ...chore, isDone: false })) };
}

/** A tick, its undo, or something else that is told of a piece of work. */
export type Tick = { readonly key: string; readonly name?: string } & (
  | {
      readonly is: 'chore';
      readonly on: PlainDate;
      readonly isDone: boolean;
      readonly goes?: HerdGoes | undefined;
      readonly doneBy?: string | undefined;
      /** It was ticked already, and somebody else did it. */
      readonly isOther?: true;
    }
  | {
      readonly is: 'job';
      readonly isDone: boolean;
      readonly told: Said;
      readonly buys?: TripToBuy | undefined;
    }
  | { readonly is: 'change'; readonly told: Said }
);

/** A key as it was pressed, until what was told of it has been dealt with. */
interface Pressed {
  readonly key: string;
  readonly isDone: boolean;
}

/**
 * Ticks that are seen at once, before anything is stored: what was pressed counts until the day was
 * read again after the service had it, without signal for as long as that takes. One that is refused
 * goes back to what it was.
 */
export function useTicks(farmId: string) {
  const { mutateAsync, error } = useMessage(farmId);
  const [pressed, setPressed] = useState<readonly Pressed[]>([]);
  const all = useSyncExternalStore(outbox.subscribe, outbox.get);
  const shown = new Map(
    all
      .filter((entry) => isNewer(entry, farmId))
      .flatMap((entry): [string, boolean][] => {
        const key = keyOf(entry.message);
        return key === undefined || entry.shows === undefined ? [] : [[key, entry.shows]];
      }),
  );
  const tell = async (one: Tick): Promise<void> => {
    // The tick is seen before it is stored and sent.
    await drawn(DRAWN_MS);
    if (one.is === 'chore' && one.isOther) {
      const { isOther: _isOther, ...again } = one;
      await tell({ ...again, isDone: false });
      return tell(again);
    }
    const told = one.is === 'chore' ? undefined : one.told;
    if (told) await takeBackBought(farmId, told);
    if (await takenOut(farmId, one)) return;
    if (told && one.is === 'job') await tellBought(farmId, told, one.buys);
    await mutateAsync({
      message: messageOf(one),
      ...(one.name === undefined ? {} : { name: one.name }),
      ...(one.is === 'change' ? {} : { shows: one.isDone }),
    });
  };
  return {
    /** What was pressed of a key and is not read back yet. */
    said: (key: string): boolean | undefined =>
      pressed.find((each) => each.key === key)?.isDone ?? shown.get(key),
    error,
    tick: (one: Tick): void => {
      const press = one.is === 'change' ? undefined : { key: one.key, isDone: one.isDone };
      if (press) setPressed((before) => [...before.filter(({ key }) => key !== press.key), press]);
      tell(one)
        // What was refused is said by the error of the message.
        .catch(() => undefined)
        .finally(() => setPressed((before) => before.filter((each) => each !== press)));
    },
  };
}

/** A tick is held back no longer than this for being drawn, ms. */
const DRAWN_MS = 50;

/** Whether what was told of a farm is not in the day as it was read. */
export function isNewer(entry: Entry, farmId: string): boolean {
  const { state, sentAt } = entry;
  if (entry.farmId !== farmId || state === 'refused') return false;
  if (sentAt === undefined) return true;
  const read = readAt(`/farms/${farmId}/today`);
  return read === undefined || read < sentAt;
}

const messageOf = (one: Tick): Message => {
  if (one.is !== 'chore') return messageOfWork(one.told);
  const { key: about, on, goes, doneBy } = one;
  return one.isDone
    ? {
        does: 'tell',
        facts: [
          { kind: 'chore-done', about, on, details: doneBy === undefined ? {} : { doneBy } },
          ...(goes ? movedBy(goes, about, on) : []),
        ],
      }
    : { does: 'take-back', of: { kind: 'chore-done', about, on } };
};

/** What is said of a piece of work, or that the last that was said of it is taken back. */
export const messageOfWork = (told: Said): Message =>
  told.undo
    ? { does: 'take-back', of: { kind: 'work-progress', about: told.key } }
    : { does: 'work', said: told };

/** What a message of work or of a chore is about. */
function keyOf(message: Message): string | undefined {
  if (message.does === 'work') return message.said.key;
  if (message.does === 'tell') return message.facts[0]?.about;
  return 'about' in message.of ? message.of.about : undefined;
}

/** An undo takes out what was not sent yet, with the hours that were told after the tick. */
export async function takenOut(farmId: string, one: Pick<Tick, 'key'> & UndoOf): Promise<boolean> {
  const isUndo = one.is === 'chore' ? !one.isDone : one.told.undo === true;
  if (!isUndo) return false;
  const own = outbox
    .get()
    .filter((entry) => entry.farmId === farmId && keyOf(entry.message) === one.key)
    .filter((entry) => !isBought(entry, one.key));
  for (let last = own.pop(); last; last = own.pop()) {
    if (last.message.does === 'take-back' || !(await takeOut(last))) return false;
    if (!isAfterTick(last.message)) return true;
  }
  return false;
}
type UndoOf =
  | { readonly is: 'chore'; readonly isDone: boolean }
  | { readonly is: 'job' | 'change'; readonly told: Said };

/** Hours that it took, and who did it, are told after the tick. */
const isAfterTick = (message: Message): boolean =>
  message.does === 'work' &&
  Object.keys(message.said).every((name) => ['key', 'hours', 'doneBy'].includes(name));
