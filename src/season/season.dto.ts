import type { WorkMark } from '../../shared/farm/job.js';
import { DateOnly, Optional, Within, WorkKey } from '../common/field-rules.js';

/** Work ticked off or put off; with neither date it is open again. */
export class WorkMarkDto implements WorkMark {
  @WorkKey() key!: string;
  @Optional() @DateOnly() doneOn?: string;
  @Optional() @DateOnly() notBefore?: string;
  @Optional() @Within('jobHours') hours?: number;
}
