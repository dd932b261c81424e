/** The worker is fetched once the page has come to rest, at the latest after so long, ms. */
const LATEST_MS = 10_000;

/**
 * Starts the worker that opens the page without signal, where the browser has one: over https or on
 * the computer itself.
 */
export function startWorker(): void {
  // A part of the page that an update took away: the page that belongs to what is there now is read.
  window.addEventListener('vite:preloadError', (event) => {
    if (!navigator.onLine || isJustReloaded()) return;
    event.preventDefault();
    window.location.reload();
  });
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  const start = (): void => {
    navigator.serviceWorker.register('/sw.js').catch(() => undefined);
  };
  const whenResting = (): void => {
    if (typeof requestIdleCallback === 'undefined') setTimeout(start, LATEST_MS / 4);
    else requestIdleCallback(start, { timeout: LATEST_MS });
  };
  if (document.readyState === 'complete') whenResting();
  else window.addEventListener('load', whenResting, { once: true });
}

const RELOADED = 'broodfold-reloaded';
/** Whether the page was read anew a moment ago: once more would not help. Notes that it is now. */
function isJustReloaded(): boolean {
  const before = Number(sessionStorage.getItem(RELOADED) ?? 0);
  const now = Math.round(performance.timeOrigin + performance.now());
  sessionStorage.setItem(RELOADED, String(now));
  return Math.abs(now - before) < 3 * LATEST_MS;
}
