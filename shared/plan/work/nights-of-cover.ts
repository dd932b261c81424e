import { addDays, daysOfYear } from '../../calendar/plain-date.js';
import { finishDay } from '../../schedule/work.js';
import { formatValue } from '../../units/format.js';
import { chanceBelow, chanceOfColdNight } from '../../weather/night-chances.js';
import { expectedNights, nightsOfPlace } from '../expected-nights.js';
import type { WholeWork } from './whole-work.js';
import type { WorkRequest } from './work-request.js';

/** Nights after a day on which what was put out has to be covered. */
export interface NightsOfCover {
  /** Chance that there is one at all. */
  readonly chance: number;
  /** How many there are on average. */
  readonly nights: number;
}

/** Nights looked at after the work: later in spring none is left, in fall it is winter by then. */
const LOOKED_AT = 60;

/**
 * Nights after a day that harm what was put out on it: those forecast by the forecast, the rest by
 * the lows of the place and their spread.
 *
 * Range: 60 nights from the one after that day.
 * Source: a chain over nights as in `night-chances.ts`.
 *
 * @param day days from today, on which it is put out
 */
export function nightsOfCover(
  { farm, climate, tables, today }: Pick<WorkRequest, 'farm' | 'climate' | 'tables' | 'today'>,
  day: number,
  atOrBelowC: number,
): NightsOfCover {
  const first = addDays(today, day + 1);
  const nights = expectedNights(
    nightsOfPlace(climate, farm, tables),
    daysOfYear(first, LOOKED_AT),
    climate.forecast,
    { today, arrivalDate: first, tables },
  );
  let expected = 0;
  for (let night = 0; night < LOOKED_AT; night++)
    expected += chanceBelow(nights, night, atOrBelowC);
  const span = { from: 0, to: LOOKED_AT };
  return {
    chance: chanceOfColdNight(nights, span, () => atOrBelowC, tables.nights.likeness.value),
    nights: expected,
  };
}

/** The same of a piece of work on its day, in words; nothing where it harms nothing. */
export function coverWords({ request, needs, fitted }: WholeWork, index: number): string {
  const { harmedAtOrBelowC: atOrBelowC } = needs[index]!;
  if (atOrBelowC === undefined) return '';
  const { chance, nights } = nightsOfCover(request, finishDay(fitted.plan[index]!), atOrBelowC);
  const cold = `a night of ${formatValue(atOrBelowC, 'degC', request.farm)} or less`;
  const inTen = Math.round(10 * chance);
  if (inTen === 0) return ` After it ${cold} comes in fewer than 1 of 20 years.`;
  // On average over the years in which there is one at all.
  const count = Math.max(1, Math.round(nights / chance));
  return ` After it ${cold} comes in ${inTen} of 10 years, in such a year about ${count} ${count === 1 ? 'night' : 'nights'} of cover.`;
}
