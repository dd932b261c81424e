/** A moment by the clock that people set, and by one that only counts on, of one run of the page. */
export interface ClockReading {
  readonly deviceMs: number;
  readonly countedMs?: number;
}

/** A moment when the service said what time it is. */
export interface LearnedTime extends ClockReading {
  readonly serviceMs: number;
}

/** No phone lies asleep longer with a page open: a clock that shows more was set, ms. */
const LONGEST_SLEEP_MS = 60 * 24 * 3600 * 1000;
/** Clocks drift apart by that much without being set, ms. */
const DRIFT_MS = 2000;

/**
 * The time as the service would tell it, on a phone whose clock may be a year off: what was learned
 * last, and what has gone by since.
 *
 * The phone's clock says how much went by, because a counter stands still while the phone sleeps.
 * Where it shows less than the counter, or far more, it was set meanwhile, and the counter holds. It
 * never goes back behind what was learned.
 */
export function serviceTimeMs(learned: LearnedTime, now: ClockReading): number {
  const shown = now.deviceMs - learned.deviceMs;
  const isCounted = learned.countedMs !== undefined && now.countedMs !== undefined;
  const counted = isCounted ? now.countedMs - learned.countedMs : undefined;
  const wasSet =
    counted !== undefined && (shown < counted - DRIFT_MS || counted + LONGEST_SLEEP_MS < shown);
  return learned.serviceMs + Math.max(0, wasSet ? counted : shown);
}
