import type { PlainDate } from '../calendar/plain-date.js';
import type { Judgements } from '../tables/judgements.js';
import { formatDate } from '../units/dates.js';
import type { expectedWeather } from '../weather/climate.js';
import type { Life } from './life.js';
import type { PlanRequest } from './request.js';

/** One thing that speaks for or against a week. Points are taken off a hundred. */
export interface ArrivalReason {
  readonly code:
    | 'nights'
    | 'places'
    | 'room'
    | 'heater'
    | 'brooder-hot'
    | 'pens'
    | 'heat'
    | 'people'
    | 'cold'
    | 'later-nights'
    | 'light'
    | 'shipping'
    | 'lead-time'
    | 'slot';
  readonly points: number;
  readonly text: string;
}

/** One candidate week with what was worked out for it. */
export interface CandidateWeek {
  readonly request: PlanRequest;
  /** Points of each kind of reason, and what they hang on. */
  readonly points: Readonly<Record<keyof Judgements['arrival'], number>>;
  readonly life: Life;
  readonly arrivalDate: PlainDate;
  readonly leavingDate: PlainDate;
  readonly moveDay: number | undefined;
  /** Days outdoors that are too few to be worth the move; left out where they go, or never could. */
  readonly tooFewDaysOut?: number | undefined;
  readonly moveOutDate: PlainDate | undefined;
  readonly moveOutChance: number | undefined;
  /** How many of the first nights out are too cold. */
  readonly coldNights: number | undefined;
  /** How many of all nights after those. */
  readonly laterColdNights: number | undefined;
  readonly weather: ReturnType<typeof expectedWeather>;
  readonly earliest: number;
  /** Month and day on which frost ends and begins. */
  readonly frost: { readonly last: string; readonly first: string };
}

export type MaybeReason = ArrivalReason | undefined;

/** A date as the household reads it today. */
export const dateText = (date: PlainDate, { farm, today }: PlanRequest): string =>
  formatDate(date, { units: farm.units, today });

export const daysText = (days: number): string => (days === 1 ? '1 day' : `${days} days`);
