import { addDays, yearOf, type PlainDate } from '../../calendar/plain-date.js';
import type { Farm } from '../../farm/farm.js';
import type { KeyDate } from '../tasks/event.js';

const PLACE = 'event/place/';

/** Whether a key date belongs to the place, and not to a batch or herd. */
export const isOfPlace = ({ id }: Pick<KeyDate, 'id'>): boolean => id.startsWith(PLACE);

/** Frosts of the place that own jobs can be tied to: of the year that is, the one before and the next. */
export const frostKeyDates = (
  { lastFrost, firstFrost, frostDatesAre }: Farm,
  today: PlainDate,
): KeyDate[] =>
  [-1, 0, 1].flatMap((k) => {
    const year = yearOf(today) + k;
    const kind = frostDatesAre === 'safe' ? 'nine years in ten' : 'usual';
    return [
      { id: `${PLACE}last-frost-${year}`, name: `Last spring frost, ${kind}`, monthDay: lastFrost },
      {
        id: `${PLACE}first-frost-${year}`,
        name: `First fall frost, ${kind}`,
        monthDay: firstFrost,
      },
    ].map(({ monthDay, ...named }) => ({ ...named, date: dateIn(year, monthDay) }));
  });

/** 29 February is 1 March less a day, whether or not the year has it. */
const dateIn = (year: number, monthDay: string): PlainDate =>
  monthDay === '02-29' ? addDays(`${year}-03-01`, -1) : `${year}-${monthDay}`;
