import { ApiProperty } from '@nestjs/swagger';
import { ArrayMaxSize, IsArray } from 'class-validator';
import type { Occupancy } from '../../shared/farm/batch.js';
import { BatchDto } from '../batches/batch.dto.js';
import {
  DateOnly,
  IdText,
  Nested,
  NestedList,
  Optional,
  ShortText,
  Within,
} from '../common/field-rules.js';
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
  @Optional() @DateOnly() today?: string;
  /** Plan on a saved farm: its facilities, people, weather and other batches are used. */
  @Optional() @IdText() farmId?: string;
  @Optional() @Nested(() => FarmDto) farm?: FarmDto;
  /** Each is checked by the rules of its kind. */
  @Optional()
  @ApiProperty({ type: [Object] })
  @IsArray()
  @ArrayMaxSize(200)
  facilities?: unknown[];
  @Optional()
  @NestedList(() => PersonDto, 50)
  people?: PersonDto[];
  @Optional()
  @NestedList(() => OccupancyDto, 200)
  occupied?: OccupancyDto[];
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
