import { formatWeekday } from '../../../../shared/units/dates.js';
import { formatHours } from '../../../../shared/units/format.js';

/** Hours of a week by its days: “Mon–Fri 2 h, Sat 5 h, Sun 3 h”. */
export function weekInHours(hours: readonly number[]): string {
  const days = hours.map((each, k) => ({ each, day: formatWeekday(k + 1).slice(0, 3) }));
  const runs = days.reduce<{ each: number; from: string; to: string }[]>((all, { each, day }) => {
    const last = all.at(-1);
    if (last?.each !== each) return [...all, { each, from: day, to: day }];
    return [...all.slice(0, -1), { ...last, to: day }];
  }, []);
  return runs
    .map(({ each, from, to }) => `${from === to ? from : `${from}–${to}`} ${formatHours(each)}`)
    .join(', ');
}
