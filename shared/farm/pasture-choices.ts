import type { PlainDate } from '../calendar/plain-date.js';
import type { Sourced } from '../explain/formula.js';
import { within } from './bounds.js';
import { list, number, optional, row, twelveMonths, yesNo, type RowOf } from './field.js';
import { ASSUMED, date, id, version } from './words.js';

/** The household's choices for the whole pasture; what is left out takes the stated default. */
export const pastureChoiceFields = row('PastureChoices', {
  /** The version of these choices that was seen last. */
  version: optional(version()),
  /** First and last day of the plan; by default the rest of this grazing season, or the next. */
  from: optional(date('From')),
  to: optional(date('To')),
  /** Rain of each month as a share of the usual, January first: 1 is usual. */
  rainShareByMonth: optional(
    twelveMonths(
      'Rain of each month',
      'rain',
      within(0, 3, 'share', 'Give rain as a share of the usual, 0 to 300 %.'),
    ),
  ),
  /** Rest of each paddock over the table's: 1.5 is half as long again. */
  restFactor: optional(
    number('Rest', within(0.3, 3, 'ratio', 'Give rest over the table’s: 1 is the table’s own.')),
  ),
  /** Paddocks shut in late summer, so that their grass stands when growth is over. */
  keepForAutumnIds: optional(list('Kept for fall', id('Paddock'), 200, 'ids')),
  /** Whether grass to spare is mown; left out, it is. */
  makesHay: optional(yesNo('You make hay')),
  /** Day on which the herds went on hay in fall, what stood on open paddocks grazed down. */
  onHaySince: optional(date('On hay since')),
  feedingId: optional(id('Hay is fed')),
  storingId: optional(id('Hay is stored')),
  baleId: optional(id('Bales')),
  hayInStoreKg: optional(
    number('Hay in store', within(0, 1e7, 'kg', 'Give the hay in store, as it lies there.')),
  ),
  /** Day on which that was counted: bales that are told of later days are added to it. */
  hayInStoreOn: optional(date('Counted on')),
  /** Hours the trough takes to refill for a day's water. */
  refillH: optional(
    number(
      'Trough refills in',
      within(0.1, 48, 'h', 'Give the hours the trough needs to refill for a day’s water.'),
    ),
  ),
  ...ASSUMED,
});
export type PastureChoices = RowOf<typeof pastureChoiceFields>;

/** Birds in moved pens or a mobile coop that follow a herd. */
export interface Follower {
  readonly herdId: string;
  readonly name: string;
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly lagDays: number;
  readonly nitrogenKgPerDay: number;
  readonly phosphorusKgPerDay: number;
  /** What these rest on; left out where somebody gave them. */
  readonly rows?: readonly Sourced[];
}
