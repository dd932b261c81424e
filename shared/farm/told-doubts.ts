import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import { formatDate, type DateReader } from '../units/dates.js';

/** A day told that lies further back is more likely in the wrong year. A planning guess. */
const LONG_AGO_DAYS = 60;
/** A box holds a few birds more or less than were ordered. A planning guess. */
const MORE_CAME_TIMES = 1.5;
const FEWER_CAME_SHARE = 0.5;

/** What is asked of a day before it is kept, where it is hard to believe: words to agree to. */
export const doubtOfDay = (
  on: PlainDate,
  reader: DateReader & { readonly today: PlainDate },
): string | undefined =>
  daysBetween(on, reader.today) <= LONG_AGO_DAYS
    ? undefined
    : `It was on ${formatDate(on, reader)}, ${daysBetween(on, reader.today)} days ago: the year is right`;

/** What is asked of birds that came before it is kept, where far more or fewer were waited for. */
export const doubtOfBirds = (came: number, awaited: number): string | undefined =>
  FEWER_CAME_SHARE * awaited <= came && came <= MORE_CAME_TIMES * awaited
    ? undefined
    : `${came} came where ${awaited} were waited for: that is right`;
