import type { WorkMark } from '../../shared/farm/job.js';
import { DateOnly, IdText, Optional, Within, WorkKey, YesNo } from '../common/field-rules.js';

/** Work ticked off or put off; with neither date it is open again. */
export class WorkMarkDto implements WorkMark {
  @WorkKey() key!: string;
  @Optional() @DateOnly() doneOn?: string;
  @Optional() @DateOnly() notBefore?: string;
  @Optional() @Within('jobHours') hours?: number;
  @Optional() @Within('jobHours') hoursDone?: number;
}

/** A look at the ground; without an answer the look of that day is forgotten. */
export class GroundLookDto {
  @DateOnly() date!: string;
  @Optional() @YesNo() isWorkable?: boolean;
}

/** An arrival on another date, to ask what that would bring. */
export class ArrivalMoveDto {
  @IdText() batchId!: string;
  @DateOnly() arrivalDate!: string;
}
