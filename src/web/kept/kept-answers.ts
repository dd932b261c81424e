import { createStore, delMany, get, keys, set, type UseStore } from 'idb-keyval';
import { atHand, forgetAtHand, keepAtHand, type KeptAnswer } from './at-hand.js';

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
  // Whoever leaves before the page has come to rest finds it at hand all the same.
  window.addEventListener('pagehide', layAtHand, { once: true });
  const later = typeof requestIdleCallback === 'undefined' ? setTimeout : requestIdleCallback;
  later(() => void write());
}

function layAtHand(): void {
  for (const [path, answer] of waiting) keepAtHand(path, nameOf(path), answer);
}

async function write(): Promise<void> {
  const answers = [...waiting];
  layAtHand();
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

/** The answer to a path where it lies at hand, without waiting: of a farm and its day alone. */
export const answerAtHand = <T>(path: string): KeptAnswer<T> | undefined =>
  atHand<T>(path, nameOf(path));

/** Forgets what was read of a farm. */
export async function forgetAnswers(farmId: string): Promise<void> {
  const isOfFarm = (name: string): boolean => new RegExp(`/farms/${farmId}(/|$)`).test(name);
  for (const path of [...waiting.keys()]) if (isOfFarm(path)) waiting.delete(path);
  forgetAtHand(isOfFarm);
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
