import { addDays, datesFrom, daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { FarmPicture } from '../farm/picture.js';
import { handoverOn, isAtHome, isGrownUp } from '../farm/who-is-there.js';
import { formatDate } from '../units/dates.js';
import { listed } from '../units/listed.js';
import type { BatchPlan } from './batch-plan.js';

type Household = Pick<FarmPicture, 'people' | 'handovers' | 'farm' | 'today'>;

/** So long after they come one grown-up fewer is said: they are looked at every few hours. */
const FIRST_DAYS = 7;
/** Without a date on which they go out: the weeks in which birds are kept warm. */
const WARM_DAYS = 42;

/**
 * What of the household's absences falls on the young birds of a batch, from the day they come until
 * they go out: said before an arrival is kept, as whoever moves it does not have them in mind.
 *
 * @returns a sentence for each time, in their order
 */
export function nobodyHome(
  { people, handovers, farm, today }: Household,
  { arrivalDate, hatchDate, outdoors }: Pick<BatchPlan, 'arrivalDate' | 'hatchDate' | 'outdoors'>,
): string[] {
  const adults = people.filter(isGrownUp);
  if (adults.length === 0) return [];
  const out = String(outdoors.moveOut?.value ?? '');
  const until = /^\d{4}-/.test(out) ? out : addDays(arrivalDate, WARM_DAYS);
  const dates = datesFrom(arrivalDate, daysBetween(arrivalDate, until) + 1);
  const say = (on: PlainDate): string => formatDate(on, { units: farm.units, today });
  const spans = spansOf(dates, (date) => {
    const gone = adults.filter((person) => !isAtHome(person, date, handovers));
    if (gone.length === 0) return undefined;
    const isNobody = gone.length === adults.length;
    if (!isNobody && FIRST_DAYS <= daysBetween(arrivalDate, date)) return undefined;
    if (!isNobody)
      return `${listed(gone.map(({ name }) => name))} ${gone.length === 1 ? 'is' : 'are'} away`;
    const handover = handoverOn(handovers, date);
    const inCharge = handover?.sitter === undefined ? '' : ` but ${handover.sitter}`;
    return `nobody of the household is there${inCharge}`;
  });
  return spans.map(({ from, to, what }) => {
    const [young, old] = [daysBetween(hatchDate, from), daysBetween(hatchDate, to)];
    const age = young === old ? `${old} ${old === 1 ? 'day' : 'days'}` : `${young} to ${old} days`;
    const on = from === to ? say(from) : `${say(from)} to ${say(to)}`;
    return `They are ${age} old when ${what} (${on}).`;
  });
}

interface Span {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly what: string;
}

/** Days in a row of which the same is to be said. */
function spansOf(
  dates: readonly PlainDate[],
  whatOn: (date: PlainDate) => string | undefined,
): Span[] {
  const spans: Span[] = [];
  for (const date of dates) {
    const what = whatOn(date);
    const last = spans.at(-1);
    if (what === undefined) continue;
    if (last && last.what === what && addDays(last.to, 1) === date)
      spans[spans.length - 1] = { ...last, to: date };
    else spans.push({ from: date, to: date, what });
  }
  return spans;
}
