import type { WeekBeside } from '../../../shared/plan/weeks-beside.js';

/** What speaks against the weeks before and after: “Four weeks earlier, Apr 21: …”. */
export const besideInWords = (
  beside: readonly WeekBeside[],
  own: string,
  say: (date: string) => string,
): string =>
  beside
    .map(({ arrivalDate, against }) => {
      const when = arrivalDate < own ? 'earlier' : 'later';
      return `Four weeks ${when}, ${say(arrivalDate)}: ${against ?? 'about as good.'}`;
    })
    .join(' ');
