import { createStore, delMany, get, keys, set, type UseStore } from 'idb-keyval';

/** An answer of the service, and when it was asked for by the service's clock. */
export interface KeptAnswer<T> {
  readonly data: T;
  readonly askedAt: string;
}

/** Answers as they were last read, for when there is no signal. */
let opened: UseStore | undefined;
const store = (): UseStore => (opened ??= createStore('broodfold-answers', 'answers'));

/** This build of the program, by its entry's name: another one reads none of its answers. */
const build = (): string =>
  document.querySelector<HTMLScriptElement>('script[type=module][src]')?.src ?? 'none';

const nameOf = (path: string): string => `${build()} ${path}`;
const waiting = new Map<string, KeptAnswer<unknown>>();
let isTidied = false;

/** Keeps an answer once the page has time for it; of many of one path the last. */
export function keepAnswer(path: string, answer: KeptAnswer<unknown>): void {
  waiting.set(path, answer);
  if (1 < waiting.size) return;
  const later = typeof requestIdleCallback === 'undefined' ? setTimeout : requestIdleCallback;
  later(() => void write());
}

async function write(): Promise<void> {
  const answers = [...waiting];
  waiting.clear();
  try {
    if (!isTidied) await tidy();
    for (const [path, answer] of answers) await set(nameOf(path), answer, store());
  } catch {
    // A phone that is full or keeps nothing shows what it reads.
  }
}

/** The answer to a path as this build last read it. */
export async function keptAnswer<T>(path: string): Promise<KeptAnswer<T> | undefined> {
  const written = waiting.get(path) as KeptAnswer<T> | undefined;
  if (written) return written;
  try {
    return await get<KeptAnswer<T>>(nameOf(path), store());
  } catch {
    return undefined;
  }
}

/** Forgets what was read of a farm. */
export async function forgetAnswers(farmId: string): Promise<void> {
  const isOfFarm = (name: string): boolean => new RegExp(`/farms/${farmId}(/|$)`).test(name);
  for (const path of [...waiting.keys()]) if (isOfFarm(path)) waiting.delete(path);
  await drop(isOfFarm).catch(() => undefined);
}

/** Answers of an earlier program are of no use any more. */
async function tidy(): Promise<void> {
  isTidied = true;
  await drop((name) => !name.startsWith(`${build()} `));
}

async function drop(isMeant: (name: string) => boolean): Promise<void> {
  const names = (await keys<string>(store())).filter(isMeant);
  if (0 < names.length) await delMany(names, store());
}
