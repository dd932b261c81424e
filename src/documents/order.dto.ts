import { comparisonFields } from '../../shared/farm/batch-choice.js';
import { batchFields } from '../../shared/farm/batch.js';
import { farmParts } from '../../shared/farm/farm-document.js';
import { farmFields } from '../../shared/farm/farm.js';
import { nested, number, optional, row } from '../../shared/farm/field.js';
import { readyGoalFields } from '../../shared/farm/ready-goal.js';
import { whole } from '../../shared/farm/bounds.js';
import { date, id } from '../../shared/farm/words.js';
import { dtoOf } from '../common/dto-of.js';

const orderParts = {
  ...farmParts,
  farmId: optional(id('Farm')),
  farm: optional(nested('Farm', farmFields)),
  batch: nested('Batch', batchFields),
  /** Says which tasks moved since this arrival date. */
  previousArrivalDate: optional(date('Arrival before')),
} as const;

/**
 * A batch to be planned among what else there is on its farm: a farm sent whole, or the id of one
 * that is saved. The batch takes the place of the one with its id, else it is added.
 */
export class OrderDto extends dtoOf(row('Order', orderParts)) {}

/** An order, and the span of weeks to search for its arrival. */
export class ArrivalSearchDto extends dtoOf(
  row('ArrivalSearch', {
    ...orderParts,
    from: date('From'),
    to: date('To'),
    /** ISO weekday of arrival, 1 Monday to 7 Sunday. */
    weekday: optional(
      number('Delivery weekday', whole(1, 7, 'count', 'Give 1 for Monday to 7 for Sunday.')),
    ),
  }),
) {}

/** An order, and the day by which it is to be ready. */
export class ReadyByDto extends dtoOf(
  row('ReadyBy', { ...orderParts, ...readyGoalFields.fields }),
) {}

/** Ways to raise a saved batch, to be set beside its plan. */
export class ComparisonDto extends dtoOf(comparisonFields) {}
