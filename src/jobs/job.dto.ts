import type { Importance, OwnJob, WorkConditions } from '../../shared/farm/job.js';
import {
  DateOnly,
  IdList,
  IdText,
  Nested,
  OneOf,
  Optional,
  ShortText,
  Within,
  WorkKey,
  YesNo,
} from '../common/field-rules.js';

export class WorkConditionsDto implements WorkConditions {
  @Optional() @YesNo() noRain?: boolean;
  @Optional() @YesNo() dryGround?: boolean;
  @Optional() @YesNo() daylight?: boolean;
  @Optional() @Within('airC') dayMaxAtLeastC?: number;
  @Optional() @Within('airC') dayMaxAtMostC?: number;
  @Optional() @Within('airC') nightMinAtLeastC?: number;
  @Optional() @Within('peopleAtOnce') people?: number;
}

/** The event that a job moves along with, and its day when the job's dates were given. */
export class HangsOnDto {
  @WorkKey() eventId!: string;
  @DateOnly() on!: string;
}

/** Work the household sets itself, as sent by a client. */
export class JobDto implements Omit<OwnJob, 'id'> {
  @Optional() @IdText() id?: string;
  @Optional() @Within('version') version?: number;
  @ShortText() name!: string;
  @Within('jobHours') hours!: number;
  @Optional() @DateOnly() notBefore?: string;
  @DateOnly() dueOn!: string;
  @Optional() @DateOnly() lastOn?: string;
  @OneOf(['must', 'should', 'could']) importance!: Importance;
  @Nested(() => WorkConditionsDto) conditions!: WorkConditionsDto;
  @YesNo() canBeSpread!: boolean;
  @Optional() @IdList(50) personIds?: string[];
  @Optional() @IdText() waitsForId?: string;
  @Optional() @Within('waitDays') waitDays?: number;
  @Optional() @ShortText() ifLate?: string;
  @Optional() @IdText() setId?: string;
  @Optional() @Nested(() => HangsOnDto) hangsOn?: HangsOnDto;
}

/** A ready-made set that is taken: the date it hangs on, and how many trees, hives or beds. */
export class TakenSetDto {
  @DateOnly() anchorOn!: string;
  @Within('unitsOfWork') count!: number;
}
