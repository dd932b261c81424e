import { createStore, del, entries, set, update, type UseStore } from 'idb-keyval';
import { changing } from './changing.js';
import { isUnsent, type Entry } from './entry.js';
import { jot, jotted, unjot } from './jotted.js';

/** How many entries that were sent are remembered, so that they can be taken back by their key. */
const SENT_KEPT = 200;

let opened: UseStore | undefined;
const store = (): UseStore => (opened ??= createStore('broodfold-outbox', 'entries'));
let counting: UseStore | undefined;
const counter = (): UseStore => (counting ??= createStore('broodfold-outbox-count', 'count'));

/** Everything that was told here, in its order, as it is shown; the store holds the same. */
export const outbox = changing<readonly Entry[]>([]);

let channel: BroadcastChannel | undefined;
/** Other pages of this browser; opened when it is first needed, because that takes a phone long. */
function others(): BroadcastChannel | undefined {
  if (channel || typeof BroadcastChannel === 'undefined') return channel;
  channel = new BroadcastChannel('outbox');
  channel.onmessage = () => void load();
  return channel;
}

let loading: Promise<void> | undefined;
/** Reads what the store holds, once at the start and whenever another page changed it. */
export function load(): Promise<void> {
  others();
  loading = read();
  return loading;
}
export const loaded = (): Promise<void> => loading ?? load();

async function read(): Promise<void> {
  try {
    await takeUpJotted();
    const all = (await entries<number, Entry>(store())).map(([, entry]) => entry);
    const stored = all.filter(({ n }) => !underWay.has(n));
    outbox.set(inOrder([...stored, ...[...underWay.values()].flatMap((entry) => entry ?? [])]));
  } catch {
    // A browser that keeps nothing sends what it has while it is open.
  }
}

/** Takes up what a page that closed did not come to write; what stands in the store is as new. */
async function takeUpJotted(): Promise<void> {
  for (const [n, entry] of jotted()) {
    if (underWay.has(n)) continue;
    await (entry ? update<Entry>(n, (stored = entry) => stored, store()) : del(n, store()));
    unjot(n, entry);
  }
}

/** Entries that are being written just now, and those that are being dropped. */
const underWay = new Map<number, Entry | undefined>();

const inOrder = (all: readonly Entry[]): Entry[] => [...all].sort((a, b) => a.n - b.n);

/** Shows an entry at once and keeps it. It is on the phone when the promise holds. */
export async function put(entry: Entry): Promise<void> {
  outbox.set(inOrder([...outbox.get().filter(({ n }) => n !== entry.n), entry]));
  await write(entry.n, entry);
}

export async function drop(n: number): Promise<void> {
  outbox.set(outbox.get().filter((each) => each.n !== n));
  await write(n, undefined);
}

/** Forgets what a farm was told: it is gone. */
export async function dropFarm(farmId: string): Promise<void> {
  await loaded();
  for (const { n } of outbox.get().filter((each) => each.farmId === farmId)) await drop(n);
}

/** The next place in the order, never given twice, by whichever page. */
export async function nextPlace(): Promise<number> {
  try {
    let place = 0;
    await update<number>('last', (last = 0) => (place = last + 1), counter());
    return place;
  } catch {
    return 1 + Math.max(0, ...outbox.get().map(({ n }) => n));
  }
}

/** Lets go of what was sent long ago. */
export async function tidy(): Promise<void> {
  const sent = outbox.get().filter((entry) => !isUnsent(entry));
  for (const { n } of sent.slice(0, -SENT_KEPT)) await drop(n);
}

async function write(n: number, entry: Entry | undefined): Promise<void> {
  underWay.set(n, entry);
  jot(n, entry);
  try {
    await (entry ? set(n, entry, store()) : del(n, store()));
    unjot(n, entry);
    others()?.postMessage('changed');
  } catch {
    // It is shown and sent all the same while the page is open.
  }
  if (underWay.get(n) === entry) underWay.delete(n);
}
