import { list, row } from '../../shared/farm/field.js';
import { toldGroundFields } from '../../shared/farm/ground-check.js';
import { progressFields } from '../../shared/farm/job.js';
import { date, id } from '../../shared/farm/words.js';
import { dtoOf } from '../common/dto-of.js';

/** What is said of a piece of work; with nothing said it is as it was at first. */
export class ProgressDto extends dtoOf(progressFields) {}

/** A look at the ground; without an answer the look of that day is forgotten. */
export class GroundLookDto extends dtoOf(toldGroundFields) {}

/** An arrival on another date, to ask what that would bring. */
export class ArrivalMoveDto extends dtoOf(
  row('ArrivalMove', { batchId: id('Batch'), arrivalDate: date('Arrival') }),
) {}

/** People who are away from today on, to ask what that would bring. */
export class SuddenlyAwayDto extends dtoOf(
  row('SuddenlyAway', {
    awayIds: list('Who', id('Person'), 20, 'people', 1),
    to: date('Last day'),
  }),
) {}
