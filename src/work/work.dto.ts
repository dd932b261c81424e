import { nested, optional, row, text } from '../../shared/farm/field.js';
import { toldGroundFields } from '../../shared/farm/ground-check.js';
import { DATES_IN_ORDER, progressFields } from '../../shared/farm/job.js';
import { seenFields } from '../../shared/farm/told-seen.js';
import { date, id } from '../../shared/farm/words.js';
import { dtoOf } from '../common/dto-of.js';

/** What is said of a piece of work; with nothing said it is as it was at first. */
export class ProgressDto extends dtoOf(
  row(
    'Progress',
    {
      ...progressFields.fields,
      /** A name of the client's own: said again under the same key it stays said once. */
      tellKey: optional(id('Key')),
      /** What its teller knew; it is asked which holds where somebody else said otherwise meanwhile. */
      seen: optional(nested('Seen', seenFields)),
      saidBy: optional(text('Who said so')),
    },
    [DATES_IN_ORDER],
  ),
) {}

/** A look at the ground; without an answer the look of that day is forgotten. */
export class GroundLookDto extends dtoOf(toldGroundFields) {}

/** An arrival on another date, to ask what that would bring. */
export class ArrivalMoveDto extends dtoOf(
  row('ArrivalMove', { batchId: id('Batch'), arrivalDate: date('Arrival') }),
) {}
