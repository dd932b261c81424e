import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import { formatDate, type DateReader } from '../units/dates.js';

/** From when on it is asked; of the tables. */
export interface AskedFrom {
  readonly toldLongAgoDays: Asked;
  readonly moreCameTimes: Asked;
  readonly fewerCameShare: Asked;
}
interface Asked {
  readonly value: number;
}

/** What is asked of a day before it is kept, where it is hard to believe: words to agree to. */
export const doubtOfDay = (
  on: PlainDate,
  reader: DateReader & { readonly today: PlainDate },
  { toldLongAgoDays }: Pick<AskedFrom, 'toldLongAgoDays'>,
): string | undefined =>
  daysBetween(on, reader.today) <= toldLongAgoDays.value
    ? undefined
    : `It was on ${formatDate(on, reader)}, ${daysBetween(on, reader.today)} days ago: the year is right`;

/** What is asked of birds that came before it is kept, where far more or fewer were waited for. */
export const doubtOfBirds = (
  came: number,
  awaited: number,
  { moreCameTimes, fewerCameShare }: Omit<AskedFrom, 'toldLongAgoDays'>,
): string | undefined =>
  fewerCameShare.value * awaited <= came && came <= moreCameTimes.value * awaited
    ? undefined
    : `${came} came where ${awaited} were waited for: that is right`;
