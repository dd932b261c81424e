import { BatchDto } from '../batches/batch.dto.js';
import { DateOnly, IdText, Nested, Optional, Within } from '../common/field-rules.js';
import { FarmDto } from '../farms/farm.dto.js';
import { FarmPartsDto } from '../picture/farm-document.dto.js';

/**
 * A batch to be planned among what else there is on its farm: a farm sent whole, or the id of one
 * that is saved. The batch takes the place of the one with its id, else it is added.
 */
export class OrderDto extends FarmPartsDto {
  @Optional() @IdText() farmId?: string;
  @Optional() @Nested(() => FarmDto) farm?: FarmDto;
  @Nested(() => BatchDto) batch!: BatchDto;
  /** Says which tasks moved since this arrival date. */
  @Optional() @DateOnly() previousArrivalDate?: string;
}

/** An order, and the span of weeks to search for its arrival. */
export class ArrivalSearchDto extends OrderDto {
  @DateOnly() from!: string;
  @DateOnly() to!: string;
  /** ISO weekday of arrival, 1 Monday to 7 Sunday. */
  @Optional() @Within('weekday') weekday?: number;
}
