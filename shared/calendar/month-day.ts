import { addDays, type PlainDate } from './plain-date.js';

/** The date of a month and day in a year; 29 February is the day before 1 March, leap year or not. */
export const dateIn = (year: number, monthDay: string): PlainDate =>
  monthDay === '02-29' ? addDays(`${year}-03-01`, -1) : `${year}-${monthDay}`;
