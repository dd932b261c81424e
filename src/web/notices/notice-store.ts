import { changing } from '../kept/changing.js';
import { withLying, type Notice } from './said-notices.js';

/** What this browser lets the page do. */
export type Can = 'no' | 'not-asked' | 'refused' | 'yes';

const ON = 'broodfold-notices';
const toldKey = (farmId: string): string => `broodfold-noticed-${farmId}`;
/** Alarms that are remembered as told; older ones have long become others. */
const REMEMBERED = 200;

/** Over plain http, and on an iPhone before it is on the home screen, there are none. */
export function canNotify(): Can {
  if (typeof Notification === 'undefined' || !window.isSecureContext) return 'no';
  const { permission } = Notification;
  return permission === 'granted' ? 'yes' : permission === 'denied' ? 'refused' : 'not-asked';
}

/** Whether somebody wanted notices on this device, and may have them. */
export const areOn = changing(wanted() && canNotify() === 'yes');

function wanted(): boolean {
  try {
    return localStorage.getItem(ON) !== null;
  } catch {
    return false;
  }
}

/** Asks the browser, which asks whoever holds the phone. */
export async function turnOn(): Promise<Can> {
  await Notification.requestPermission();
  const can = canNotify();
  if (can !== 'yes') return can;
  try {
    localStorage.setItem(ON, 'on');
  } catch {
    // Kept by nothing, they are on until the page is closed.
  }
  areOn.set(true);
  return can;
}

export function turnOff(): void {
  try {
    localStorage.removeItem(ON);
  } catch {
    // What keeps nothing has nothing to forget.
  }
  areOn.set(false);
}

/** Alarms of a farm that were said on this device, or stood on its screen. */
export function toldHere(farmId: string): ReadonlySet<string> {
  try {
    return new Set(JSON.parse(localStorage.getItem(toldKey(farmId)) ?? '[]') as string[]);
  } catch {
    return new Set();
  }
}

export function noteTold(farmId: string, keys: readonly string[]): void {
  const all = [...toldHere(farmId), ...keys].slice(-REMEMBERED);
  try {
    localStorage.setItem(toldKey(farmId), JSON.stringify(all));
  } catch {
    // Said again at worst.
  }
}

/** Shows a notice by the worker, which a phone asks for; on a computer without one, by the page. */
export async function show(farmId: string, said: Notice): Promise<void> {
  const worker = await navigator.serviceWorker?.getRegistration();
  const lying = (await worker?.getNotifications({ tag: farmId })) ?? [];
  const { notice, titles } = withLying(said, lying.flatMap(titlesOf));
  const { title, body, isQuiet } = notice;
  const options = {
    // A new one takes the place of the last, so that they do not pile up: it is heard all the same.
    ...{ body, tag: farmId, silent: isQuiet, renotify: !isQuiet, icon: '/icon-192.png' },
    data: { href: `/farm/${farmId}/today`, titles },
  };
  if (worker?.active) return worker.showNotification(title, options);
  new Notification(title, options).addEventListener('click', () => window.focus());
}

const titlesOf = ({ title, data }: Notification): readonly string[] =>
  (data as { titles?: readonly string[] } | null)?.titles ?? [title];
