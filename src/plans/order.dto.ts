import { batchFields, occupancyFields } from '../../shared/farm/batch.js';
import { whole } from '../../shared/farm/bounds.js';
import { anyFacility } from '../../shared/farm/facility.js';
import { farmFields, personFields } from '../../shared/farm/farm.js';
import { list, nested, number, optional, row, rows } from '../../shared/farm/field.js';
import { date, id } from '../../shared/farm/words.js';
import { dtoOf } from '../common/dto-of.js';

const orderFields = row('Order', {
  today: optional(date('Today')),
  /** Plan on a saved farm: its facilities, people, weather and other batches are used. */
  farmId: optional(id('Farm')),
  farm: optional(nested('Farm', farmFields)),
  facilities: optional(list('Buildings and gear', anyFacility, 200, 'objects')),
  people: optional(rows('People', personFields, 50, 'person')),
  occupied: optional(rows('Places that are taken', occupancyFields, 200, 'place')),
  batch: nested('Batch', batchFields),
  /** Says which tasks moved since this arrival date. */
  previousArrivalDate: optional(date('Arrival before')),
});

/**
 * A whole order: a farm (its own, or the id of one that is saved) and a batch. The body of the
 * preview, and the file that the terminal reads.
 */
export class OrderDto extends dtoOf(orderFields) {}

const searchFields = row('ArrivalSearch', {
  ...orderFields.fields,
  from: date('From'),
  to: date('To'),
  weekday: optional(
    number('Delivery weekday', whole(1, 7, 'count', 'Give 1 for Monday to 7 for Sunday.')),
  ),
});

/** An order, and the span of weeks to search for its arrival. */
export class ArrivalSearchDto extends dtoOf(searchFields) {}
