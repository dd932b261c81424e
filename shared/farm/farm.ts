import type { PlainDate } from '../calendar/plain-date.js';
import { AIR_C, CLOCK_H, DAY_HOURS, RAIN_MM, whole, within } from './bounds.js';
import {
  choice,
  list,
  nested,
  number,
  optional,
  row,
  rows,
  sevenDays,
  text,
  twelveMonths,
  yesNo,
  type RowOf,
  type RowRule,
  type SavedRowOf,
} from './field.js';
import { ESTIMATED_FIELDS } from './estimated-climate.js';
import { problemsOfMonths } from './months.js';
import {
  ASSUMED,
  country,
  currency,
  date,
  id,
  monthDay,
  OWN,
  price,
  region,
  timeZone,
} from './words.js';

/** What may leave the place in a calendar year by the rules it sells under; left out, no limit is held. */
export const yearLimitFields = row('YearLimits', {
  birdsProcessed: optional(
    number('Birds processed here', whole(1, 1e6, 'count', 'Give the birds of a calendar year.')),
  ),
  birdsSold: optional(
    number('Birds sold alive', whole(1, 1e6, 'count', 'Give the birds of a calendar year.')),
  ),
  eggsSold: optional(
    number(
      'Eggs sold',
      whole(1, 1e8, 'count', 'Give the eggs of a calendar year: a dozen is 12 eggs.'),
    ),
  ),
});
export type YearLimits = RowOf<typeof yearLimitFields>;

/** The place and its prices. Amounts of money per unit are decimal text, never floats. */
export const farmFields = row(
  'Farm',
  {
    ...ASSUMED,
    name: text('Name'),
    latitudeDeg: number('Latitude', {
      ...within(-90, 90, 'ratio', 'Give degrees north of the equator, negative for south.'),
      typedAs: 'latitude',
    }),
    longitudeDeg: number('Longitude', {
      ...within(-180, 180, 'ratio', 'Give degrees east of Greenwich, negative for west.'),
      typedAs: 'longitude',
    }),
    elevationM: number(
      'Height above sea level',
      within(-430, 6000, 'm', 'Give the height above sea level.'),
    ),
    timeZone: timeZone('Time zone'),
    units: choice('Units', ['metric', 'us']),
    currency: currency('Currency'),
    electricityPricePerKWh: price('Electricity, one kWh'),
    /** Price of a liter of liquid propane. */
    gasPricePerL: price('Propane'),
    /** Mean daily minimum of each month, January first. */
    monthlyMinC: twelveMonths('Monthly lows', 'low', AIR_C),
    monthlyMaxC: twelveMonths('Monthly highs', 'high', AIR_C),
    /** Rain of each month, snow melted; left out when it is not known. */
    monthlyRainMm: optional(twelveMonths('Monthly rain', 'rain', RAIN_MM)),
    /** Month and day, such as 05-10; the usual last spring and first fall frost. */
    lastFrost: monthDay('Usual last spring frost'),
    firstFrost: monthDay('Usual first fall frost'),
    /** Which of these figures are an estimate from coordinates and height; the rest was typed. */
    estimated: optional(
      list('Estimated', choice('Figure', ESTIMATED_FIELDS), ESTIMATED_FIELDS.length, 'figures'),
    ),
    /** Usual dates come in half of the years, safe ones in nine of ten. */
    frostDatesAre: optional(choice('Frost dates are', ['usual', 'safe'])),
    /** Soil of the beds and lines that are worked; left out, it is taken as loam. */
    gardenSoilId: optional(id('Soil of the garden')),
    /** Whose public holidays are days without post, and feasts to be ready for. */
    country: optional(country('Country')),
    region: optional(region('State or region')),
    /** Days on which no box is delivered besides Sundays and public holidays. */
    noDeliveryDates: list('Holidays without post', date('Holiday'), 200, 'dates'),
    yearLimits: optional(nested('Limits of a year', yearLimitFields)),
  },
  [
    {
      name: 'low-below-high',
      of: ['monthlyMinC', 'monthlyMaxC'],
      find: ({ monthlyMinC, monthlyMaxC }, at) => problemsOfMonths(monthlyMinC, monthlyMaxC, at),
    },
  ],
);
export type Farm = RowOf<typeof farmFields>;

const ENDS_AFTER: RowRule<{ readonly from: PlainDate; readonly to: PlainDate }> = {
  name: 'to-after-from',
  of: ['to', 'from'],
  find: ({ from, to }, at) =>
    to < from
      ? [
          {
            field: `${at}to`,
            code: 'out-of-bounds',
            given: to,
            min: from,
            fix: 'An absence ends on or after the day it begins: swap the two dates.',
          },
        ]
      : [],
};

export const awayFields = row(
  'Away',
  {
    from: date('First day'),
    to: date('Last day'),
    /** They are in the house, and can do nothing. */
    isIll: optional(yesNo('Ill')),
  },
  [ENDS_AFTER],
);
export type Away = RowOf<typeof awayFields>;

/** Hours of the clock, 0 to below 24: 7.5 is half past seven. */
export const startingHourFields = row('StartingHours', {
  weekday: number('Begins on weekdays at', CLOCK_H),
  weekend: number('Begins at weekends at', CLOCK_H),
});
export type StartingHours = RowOf<typeof startingHourFields>;

export const personFields = row('Person', {
  ...OWN,
  ...ASSUMED,
  name: text('Name'),
  /** A child has no work planned but what a child can do too, and jobs that name it. */
  isChild: optional(yesNo('A child')),
  away: rows('Days away', awayFields, 200, 'absence'),
  /** Hours for the farm on each day of the week, Monday first. */
  hoursByWeekday: optional(sevenDays('Hours by day of the week', DAY_HOURS)),
  /** When those hours begin. */
  startH: optional(nested('Begins', startingHourFields)),
  /** Where they are by day on a weekday; left out, out where their hours begin in the afternoon. */
  byDay: optional(choice('By day on weekdays', ['at-home', 'out-am', 'out-pm', 'out'])),
  /** Not of the household: comes by to look after animals, and is given a chore where nobody else can. */
  looksIn: optional(
    number(
      'Looks in, times a day',
      whole(
        1,
        8,
        'count',
        'Give how often a neighbor comes by in a day; leave it empty for the household.',
      ),
    ),
  ),
});
export type Person = SavedRowOf<typeof personFields>;
