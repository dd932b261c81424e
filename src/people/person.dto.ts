import {
  DateOnly,
  IdText,
  Nested,
  NestedList,
  Optional,
  SevenDays,
  ShortText,
  Within,
} from '../common/field-rules.js';
import { FieldError } from '../../shared/problems/field-problem.js';

export class AwayDto {
  @DateOnly() from!: string;
  @DateOnly() to!: string;
}

export class StartingHoursDto {
  @Within('clockH') weekday!: number;
  @Within('clockH') weekend!: number;
}

export class PersonDto {
  @Optional() @IdText() id?: string;
  @Optional() @Within('version') version?: number;
  @ShortText() name!: string;
  @NestedList(() => AwayDto, 200)
  away!: AwayDto[];
  @Optional() @SevenDays('dayHours') hoursByWeekday?: number[];
  @Optional() @Nested(() => StartingHoursDto) startH?: StartingHoursDto;
}

/** Each absence must end on or after the day it begins. */
export function checkAway({ away }: PersonDto, path = ''): void {
  const problems = away.flatMap(({ from, to }, i) =>
    to < from
      ? [
          {
            field: `${path}away.${i}.to`,
            code: 'out-of-bounds' as const,
            given: to,
            min: from,
            fix: 'An absence ends on or after the day it begins: swap the two dates.',
          },
        ]
      : [],
  );
  if (0 < problems.length) throw new FieldError(problems);
}
