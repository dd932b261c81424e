import type { Farm } from '../../../../shared/farm/farm.js';
import { angleText } from '../../../../shared/units/typed.js';

/** Hours by which the clock of a zone may differ from the sun before it looks like a mistake. */
const MOST_HOURS_FROM_SUN = 4;

/** A doubt about the time zone when it cannot be that of the longitude. */
export function zoneDoubt({ timeZone, longitudeDeg }: Partial<Farm>): string | undefined {
  if (timeZone === undefined || longitudeDeg === undefined || !Number.isFinite(longitudeDeg))
    return;
  const sun = longitudeDeg / 15;
  const apart = Math.abs(hoursFromUtc(timeZone) - sun);
  if (Math.min(apart, 24 - apart) <= MOST_HOURS_FROM_SUN) return undefined;
  return `${timeZone} is far from ${angleText(longitudeDeg, 'longitude')}: check both.`;
}

/** Hours ahead of UTC in January of this century; summer time does not matter here. */
function hoursFromUtc(timeZone: string): number {
  const at = new Date(Date.UTC(2025, 0, 15, 12));
  const parts = new Intl.DateTimeFormat('en', { timeZone, timeZoneName: 'longOffset' });
  const name = parts.formatToParts(at).find((p) => p.type === 'timeZoneName')?.value ?? 'GMT';
  const found = /([+-])(\d+):(\d+)/.exec(name);
  if (!found) return 0;
  return (found[1] === '-' ? -1 : 1) * (Number(found[2]) + Number(found[3]) / 60);
}
