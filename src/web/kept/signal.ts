import { changing } from './changing.js';

/** First and last wait before the service is tried again, ms. */
const FIRST_WAIT_MS = 2000;
const LONGEST_WAIT_MS = 60_000;

/** Whether the service was heard of at the last try. */
export const signal = changing(typeof navigator === 'undefined' || navigator.onLine);

let isHeard = false;
/** Whether the service itself was heard at the last try: what a browser says of its network is a guess. */
export const isHeardOf = (): boolean => isHeard;

let waitMs = FIRST_WAIT_MS;
let timer: ReturnType<typeof setTimeout> | undefined;
let tryAgain: () => void = () => undefined;

/** The service answered: what waited for the next try need not wait for it. */
export function heard(): void {
  const isTriedLater = timer !== undefined;
  waitMs = FIRST_WAIT_MS;
  waitNoMore();
  isHeard = true;
  signal.set(true);
  if (isTriedLater) tryAgain();
}

function waitNoMore(): void {
  clearTimeout(timer);
  timer = undefined;
}

/** The service did not answer: it is tried again after a while, each time a longer one. */
export function notHeard(): void {
  isHeard = false;
  signal.set(false);
  timer ??= setTimeout(() => {
    timer = undefined;
    waitMs = Math.min(2 * waitMs, LONGEST_WAIT_MS);
    tryAgain();
  }, waitMs);
}

/** Calls whenever it is worth trying: after a wait, when the phone says so, when it is taken up. */
export function whenWorthTrying(attempt: () => void): void {
  tryAgain = attempt;
  const now = (): void => {
    waitNoMore();
    attempt();
  };
  window.addEventListener('online', now);
  window.addEventListener('focus', now);
  window.addEventListener('offline', () => notHeard());
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') now();
  });
}
