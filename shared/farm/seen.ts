import { list, optional, row, type RowOf } from './field.js';
import { id, instant } from './words.js';

/** What somebody knew who tells something, perhaps days before it can be sent. */
export const seenFields = row('Seen', {
  /** All that was told up to then, as the service told the time. */
  until: instant('Read at'),
  /** Keys of facts of one's own that were told after that. */
  ownKeys: optional(list('Told after it', id('Key'), 100, 'keys')),
});
export type Seen = RowOf<typeof seenFields>;
