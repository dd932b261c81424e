import type { QueryClient } from '@tanstack/react-query';
import type { Seen } from '../../../shared/farm/seen.js';
import { serviceNowMs } from '../kept/clock.js';
import { heldBack, isUnsent, subjectsOf, type Entry, type Message } from '../kept/entry.js';
import { drop, load, loaded, nextPlace, outbox, put, tidy } from '../kept/outbox-store.js';
import { tidyPhotos } from '../kept/photo-store.js';
import { isHeardOf, signal, whenWorthTrying } from '../kept/signal.js';
import { whoUses } from '../kept/whose-phone.js';
import { getJson } from './client.js';
import { readAgain, shownAt } from './kept-reads.js';
import { newKey } from './new-key.js';
import { forgetPhotos, photosOf } from './photos.js';
import { sendEntry, type Outcome } from './send-entry.js';

/** One page of a browser sends at a time. */
const LOCK = 'broodfold-outbox';
/** The most keys of one's own that are handed along. */
const OWN_KEYS = 100;

let client: QueryClient | undefined;
/** Entries that are with the service just now. */
const underWay = new Set<number>();
const awaited = new Map<number, (outcome: Outcome) => void>();

/** Sends what is waiting, and from now on whenever it is worth trying. */
export function startOutbox(queries: QueryClient): void {
  client = queries;
  whenWorthTrying(() => void tryService());
  void load()
    .then(() => tidy())
    .then(() => sendAll())
    .then(() => tidyPhotos((id) => outbox.get().some((entry) => photosOf(entry).includes(id))));
}

/** Asks whether there is signal where something hangs on it. */
async function tryService(): Promise<void> {
  if (outbox.get().some(isWaiting)) await sendAll();
  else if (!signal.get()) await isReached();
  if (signal.get() && client) await readAgain(client);
}

/** What was told, on the phone and on its way; `outcome` is there once the service has answered. */
export interface Told {
  readonly entry: Entry;
  readonly outcome: Promise<Outcome>;
}

/** Tells the service something, now or when there is signal. It is on the phone when this holds. */
export async function tellService(
  farmId: string,
  message: Message,
  more: Pick<Entry, 'name' | 'shows'> = {},
): Promise<Told> {
  // The place comes from the store: until it is known nothing of it is shown.
  const n = await nextPlace();
  const seen = seenNow(farmId, message);
  const saidBy = whoUses(farmId);
  const entry: Entry = {
    ...{ n, key: newKey(), farmId, message, ...more },
    madeAt: new Date(serviceNowMs()).toISOString(),
    ...(seen ? { seen } : {}),
    ...(saidBy === undefined ? {} : { saidBy }),
    state: 'waiting',
  };
  const outcome = new Promise<Outcome>((resolve) => awaited.set(n, resolve));
  await put(entry);
  void sendAll();
  return { entry, outcome };
}

/** Says of an entry that was asked about or refused what is to become of it, and sends it again. */
export async function sendAgain(
  entry: Entry,
  change: Partial<Pick<Entry, 'message' | 'seen'>> = {},
): Promise<void> {
  const { theirs: _theirs, refusal: _refusal, ...rest } = entry;
  await put({ ...rest, ...change, state: 'waiting' });
  await sendAll();
}

/** Takes an entry out that is not with the service; false when it is, or may be. */
export async function takeOut(entry: Entry): Promise<boolean> {
  if (!isUnsent(entry) || underWay.has(entry.n) || entry.mayBeThere) return false;
  await throwAway(entry);
  return true;
}

/** Takes an entry out that its form still holds, with its photos. */
export const backToForm = ({ n }: Entry): Promise<void> => drop(n);

/** Throws an entry away for good. */
export async function throwAway(entry: Entry): Promise<void> {
  await drop(entry.n);
  await forgetPhotos(entry);
}

const isWaiting = ({ state }: Entry): boolean => state === 'waiting';

let sending: Promise<void> | undefined;
let isAskedAgain = false;

/** Sends all that is waiting, one after another in the order in which it was told. */
export function sendAll(): Promise<void> {
  isAskedAgain = true;
  sending ??= inTurn(sendWaiting).finally(() => {
    sending = undefined;
    if (isAskedAgain) void sendAll();
  });
  return sending;
}

let reading: Promise<void> = Promise.resolve();
/** Waits until what was sent is read back; what is told meanwhile is sent all the same. */
export async function readBack(): Promise<void> {
  await sendAll();
  await reading;
}

/** In one page of the browser at a time, where the browser can see to that. */
const inTurn = (work: () => Promise<void>): Promise<void> =>
  typeof navigator.locks === 'undefined'
    ? work()
    : (navigator.locks.request(LOCK, work) as Promise<void>);

async function sendWaiting(): Promise<void> {
  const sent: Entry[] = [];
  try {
    await sendUntilDone(sent);
  } finally {
    for (const answer of awaited.values()) answer({ is: 'later' });
    awaited.clear();
    reading = readAfter(sent);
  }
}

/** Sends until nothing is left or the signal is lost, and notes what was sent. */
async function sendUntilDone(sent: Entry[]): Promise<void> {
  while (isAskedAgain) {
    isAskedAgain = false;
    await loaded();
    if (!outbox.get().some(isWaiting)) continue;
    // Without signal nothing is begun of which it would not be known whether it arrived.
    if (!isHeardOf() && !(await isReached())) return;
    for (let next = nextToSend(); next; next = nextToSend()) {
      const outcome = await sendOne(next);
      awaited.get(next.n)?.(outcome);
      awaited.delete(next.n);
      if (outcome.is === 'later') return;
      if (outcome.is === 'sent') sent.push(next);
    }
  }
}

const isReached = (): Promise<boolean> =>
  getJson('/farms?take=1').then(
    () => true,
    () => signal.get(),
  );

/** The first that is waiting; what follows one that is asked about or refused waits with it. */
function nextToSend(): Entry | undefined {
  const entries = outbox.get();
  const held = heldBack(entries);
  return entries.find((entry) => isWaiting(entry) && !held.has(entry));
}

async function sendOne(entry: Entry): Promise<Outcome> {
  underWay.add(entry.n);
  try {
    // Whether an answer is lost cannot be known: from here on it may be with the service.
    if (!entry.mayBeThere) await put({ ...entry, mayBeThere: true });
    const outcome = await sendEntry(entry);
    const now = { ...entry, mayBeThere: outcome.is === 'later' };
    if (outcome.is === 'sent') {
      // Of the answer just heard: every read after it is asked for later than that.
      const sentAt = new Date(serviceNowMs()).toISOString();
      await put({ ...now, state: 'sent', sentAt, ids: outcome.facts.map(({ id }) => id) });
      await forgetPhotos(entry);
    } else if (outcome.is === 'asked') {
      await put({ ...now, state: 'asked', theirs: outcome.theirs });
    } else if (outcome.is === 'refused') {
      await put({ ...now, state: 'refused', refusal: outcome.refusal });
    }
    return outcome;
  } finally {
    underWay.delete(entry.n);
  }
}

/** What plans go by is read again; a chore is only of the day. */
async function readAfter(sent: readonly Entry[]): Promise<void> {
  if (sent.length === 0 || !client) return;
  const all = sent.every(isChore)
    ? [...new Set(sent.map(({ farmId }) => farmId))].map((id) => ['farm', id, '/today'])
    : [['farms'], ['farm']];
  await Promise.all(all.map((queryKey) => client!.invalidateQueries({ queryKey })));
}

const isChore = ({ message }: Entry): boolean =>
  message.does === 'tell'
    ? message.facts.every(({ kind }) => kind === 'chore-done')
    : message.does === 'take-back' && 'kind' in message.of && message.of.kind === 'chore-done';

/** What whoever tells something knows: what the screen shows, and what was told from here. */
function seenNow(farmId: string, message: Message): Seen | undefined {
  const until = client && shownAt(client, farmId);
  if (until === undefined) return undefined;
  const subjects = subjectsOf({ farmId, message } as Entry);
  const own = outbox
    .get()
    .filter((entry) => subjectsOf(entry).some((each) => subjects.includes(each)))
    .flatMap(keysOf)
    .slice(-OWN_KEYS);
  return { until, ...(0 < own.length ? { ownKeys: own } : {}) };
}

/** The keys under which an entry tells its facts. */
const keysOf = ({ key, message }: Entry): readonly string[] =>
  message.does === 'tell' ? message.facts.map((_, k) => (k === 0 ? key : `${key}-${k}`)) : [key];
