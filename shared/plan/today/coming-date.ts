import type { PlainDate } from '../../calendar/plain-date.js';
import type { Place } from './looked-at.js';

/** A date that is worth knowing before it comes. */
export interface ComingDate {
  readonly key: string;
  readonly on: PlainDate;
  readonly text: string;
  readonly place: Place;
}
