import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { FarmPicture } from '../../farm/picture.js';
import { isGrownUp } from '../../farm/who-is-there.js';
import { formatDate } from '../../units/dates.js';
import { listed } from '../../units/listed.js';
import { whoIsAway, type AwayToday } from './who-is-away.js';

/** Chicks that come while somebody is away, in words, and the batch they are of. */
export interface ComingWhileAway {
  readonly batchId: string;
  readonly says: string;
}

/** The day they come and the two after it: most that are lost are lost then, and they are looked at every few hours. */
const FIRST_DAYS = 3;

/**
 * Young birds that come while a grown-up of the household is away: who has them then, before what
 * they cost is of interest.
 */
export const comingWhileAway = ({
  batches,
  people,
  farm,
  today,
}: Pick<FarmPicture, 'batches' | 'people' | 'farm' | 'today'>): ComingWhileAway[] =>
  batches.flatMap(({ id: batchId, name, arrivalDate }) => {
    if (arrivalDate < today) return [];
    const adults = people.filter(isGrownUp);
    const days = Array.from({ length: FIRST_DAYS }, (_, k) => addDays(arrivalDate, k));
    const away = days
      .map((day) => whoIsAway({ people: adults, today: day }))
      .find((each) => 0 < each.length);
    if (!away) return [];
    const day = (on: PlainDate): string => formatDate(on, { units: farm.units, today });
    const gone = away.map(({ name: who, to }: AwayToday) => `${who} is away until ${day(to)}`);
    const there = adults.filter((person) => !away.some((each) => each.name === person.name));
    const left =
      there.length === 0
        ? 'nobody is there'
        : `${listed(there.map((person) => person.name))} ${there.length === 1 ? 'has' : 'have'} them alone`;
    return [
      {
        batchId,
        says: `${name} come ${day(arrivalDate)}, and ${listed(gone)}: ${left} in their first days, when somebody looks at them every 2 to 3 hours. Take another day, or ask somebody to come in.`,
      },
    ];
  });
