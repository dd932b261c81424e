import { ApiProperty } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { ArrayMaxSize, IsArray, IsOptional, ValidateNested } from 'class-validator';
import { DateOnly, IdText, ShortText } from '../common/field-rules.js';
import { FieldError } from '../../shared/problems/field-problem.js';

export class AwayDto {
  @DateOnly() from!: string;
  @DateOnly() to!: string;
}

export class PersonDto {
  @ApiProperty({ required: false }) @IsOptional() @IdText() id?: string;
  @ShortText() name!: string;
  @ApiProperty({ type: [AwayDto] })
  @IsArray()
  @ArrayMaxSize(200)
  @ValidateNested({ each: true })
  @Type(() => AwayDto)
  away!: AwayDto[];
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
