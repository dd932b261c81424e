import { row } from './field.js';
import { date, workKey } from './words.js';

/** An event that dates of a job move along with, and its day when they were given. */
export const tiedToFields = row('TiedTo', { eventId: workKey('Tied to'), on: date('On') });
