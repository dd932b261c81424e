import { ApiProperty } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { ArrayMaxSize, IsArray, IsOptional, ValidateNested } from 'class-validator';
import type { Occupancy } from '../../shared/farm/batch.js';
import { BatchDto } from '../batches/batch.dto.js';
import { DateOnly, IdText, ShortText, Within } from '../common/field-rules.js';
import { FarmDto } from '../farms/farm.dto.js';
import { PersonDto } from '../people/person.dto.js';

export class OccupancyDto implements Occupancy {
  @ShortText() batchName!: string;
  @ApiProperty() @IdText() facilityId!: string;
  @DateOnly() from!: string;
  @DateOnly() to!: string;
}

/**
 * A whole order: a farm (its own, or the id of one that is saved) and a batch. The body of the
 * preview, and the file that the terminal reads.
 */
export class OrderDto {
  @IsOptional() @DateOnly() today?: string;
  /** Plan on a saved farm: its facilities, people, weather and other batches are used. */
  @ApiProperty({ required: false }) @IsOptional() @IdText() farmId?: string;
  @ApiProperty({ type: FarmDto, required: false })
  @IsOptional()
  @ValidateNested()
  @Type(() => FarmDto)
  farm?: FarmDto;
  /** Each is checked by the rules of its kind. */
  @ApiProperty({ type: [Object], required: false })
  @IsOptional()
  @IsArray()
  @ArrayMaxSize(200)
  facilities?: unknown[];
  @ApiProperty({ type: [PersonDto], required: false })
  @IsOptional()
  @IsArray()
  @ArrayMaxSize(50)
  @ValidateNested({ each: true })
  @Type(() => PersonDto)
  people?: PersonDto[];
  @ApiProperty({ type: [OccupancyDto], required: false })
  @IsOptional()
  @IsArray()
  @ArrayMaxSize(200)
  @ValidateNested({ each: true })
  @Type(() => OccupancyDto)
  occupied?: OccupancyDto[];
  @ApiProperty({ type: BatchDto }) @ValidateNested() @Type(() => BatchDto) batch!: BatchDto;
  /** Says which tasks moved since this arrival date. */
  @IsOptional() @DateOnly() previousArrivalDate?: string;
}

/** An order, and the span of weeks to search for its arrival. */
export class ArrivalSearchDto extends OrderDto {
  @DateOnly() from!: string;
  @DateOnly() to!: string;
  /** ISO weekday of arrival, 1 Monday to 7 Sunday. */
  @IsOptional() @Within('weekday') weekday?: number;
}
