import { ApiProperty } from '@nestjs/swagger';
import { ArrayMaxSize, IsArray } from 'class-validator';
import type { GroundLook } from '../../shared/farm/ground-look.js';
import { BatchDto } from '../batches/batch.dto.js';
import { DateOnly, Nested, NestedList, Optional, YesNo } from '../common/field-rules.js';
import { FarmDto } from '../farms/farm.dto.js';
import { HandoverDto } from '../handovers/handover.dto.js';
import { HerdDto } from '../herds/herd.dto.js';
import { JobDto } from '../jobs/job.dto.js';
import { PaddockDto } from '../paddocks/paddock.dto.js';
import { PersonDto } from '../people/person.dto.js';
import { ForecastDayDto } from '../weather/forecast.dto.js';

export class SeenGroundDto implements GroundLook {
  @DateOnly() date!: string;
  @YesNo() isWorkable!: boolean;
}

/** A household by itself: all that a plan of its work needs, nothing saved. */
export class HouseholdOrderDto {
  @Optional() @DateOnly() today?: string;
  @Nested(() => FarmDto) farm!: FarmDto;
  /** Each is checked by the rules of its kind. */
  @Optional()
  @ApiProperty({ type: [Object] })
  @IsArray()
  @ArrayMaxSize(200)
  facilities?: unknown[];
  @NestedList(() => PersonDto, 50) people!: PersonDto[];
  @NestedList(() => BatchDto, 50) batches!: BatchDto[];
  @Optional() @NestedList(() => PaddockDto, 200) paddocks?: PaddockDto[];
  @Optional() @NestedList(() => HerdDto, 20) herds?: HerdDto[];
  @Optional() @NestedList(() => JobDto, 200) jobs?: JobDto[];
  @Optional() @NestedList(() => HandoverDto, 50) handovers?: HandoverDto[];
  @Optional() @NestedList(() => ForecastDayDto, 40) forecast?: ForecastDayDto[];
  @Optional() @NestedList(() => SeenGroundDto, 366) groundLooks?: SeenGroundDto[];
}
