import { serviceTimeMs, type LearnedTime } from '../../../shared/calendar/phone-clock.js';

/** What time it is by the service: the phone's own clock is never asked for a day. */
const KEY = 'broodfold-time';
/** Written down again after so long, ms. */
const WRITTEN_EVERY_MS = 30_000;

let learned: LearnedTime | undefined;
let writtenAt = -Infinity;

const now = () => ({ deviceMs: Date.now(), countedMs: performance.now() });

/** Takes the time from an answer of the service, an instant in UTC. */
export function learnTime(askedAt: string): void {
  const serviceMs = Date.parse(askedAt);
  if (Number.isNaN(serviceMs)) return;
  const reading = now();
  learned = { serviceMs, ...reading };
  if (reading.countedMs - writtenAt < WRITTEN_EVERY_MS) return;
  writtenAt = reading.countedMs;
  try {
    localStorage.setItem(KEY, JSON.stringify({ serviceMs, deviceMs: reading.deviceMs }));
  } catch {
    // A browser that keeps nothing knows the time until the page is closed.
  }
}

/** The service's time now, ms; the phone's own where the service was never heard of. */
export function serviceNowMs(): number {
  learned ??= written();
  const reading = now();
  return learned ? serviceTimeMs(learned, reading) : reading.deviceMs;
}

function written(): LearnedTime | undefined {
  try {
    const found = JSON.parse(localStorage.getItem(KEY) ?? 'null') as LearnedTime | null;
    return found && Number.isFinite(found.serviceMs) && Number.isFinite(found.deviceMs)
      ? found
      : undefined;
  } catch {
    return undefined;
  }
}
