import { useEffect, useSyncExternalStore } from 'react';
import { farmDay, type SavedFarm } from '../api/queries.js';
import { useWatchedToday } from '../api/today-queries.js';
import { noticeOf } from './said-notices.js';
import { areOn, noteTold, show, toldHere } from './notice-store.js';

/**
 * Says the alarms of a farm as notices while its page is open, in front or behind; each once. What
 * stands on the screen in front of somebody needs none.
 */
export function useNotices(farm: SavedFarm): void {
  const isOn = useSyncExternalStore(areOn.subscribe, areOn.get);
  const { data: day } = useWatchedToday(farm.id, isOn);
  useEffect(() => {
    if (!isOn || !day || day.date !== farmDay(farm)) return;
    const { keys, notice } = noticeOf(day.attention, toldHere(farm.id));
    if (!notice) return;
    noteTold(farm.id, keys);
    if (!isLookedAt()) show(farm.id, notice).catch(() => undefined);
  }, [isOn, day, farm]);
}

const isLookedAt = (): boolean =>
  document.visibilityState === 'visible' && /\/today$/.test(window.location.pathname);
