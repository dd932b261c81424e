import { ApiProperty } from '@nestjs/swagger';
import { ArrayMaxSize, IsArray } from 'class-validator';
import type { GroundLook } from '../../shared/farm/ground-look.js';
import type { WorkMark } from '../../shared/farm/job.js';
import { BatchDto } from '../batches/batch.dto.js';
import {
  DateOnly,
  Nested,
  NestedList,
  Optional,
  ShortText,
  Within,
  WorkKey,
  YesNo,
} from '../common/field-rules.js';
import { FarmDto } from '../farms/farm.dto.js';
import { GrassReadingDto } from '../grass-readings/grass-reading.dto.js';
import { HandoverDto } from '../handovers/handover.dto.js';
import { HerdDto } from '../herds/herd.dto.js';
import { JobDto } from '../jobs/job.dto.js';
import { PaddockDto } from '../paddocks/paddock.dto.js';
import { PastureChoicesDto } from '../farms/pasture-choices.dto.js';
import { PersonDto } from '../people/person.dto.js';
import { ForecastDayDto } from '../weather/forecast.dto.js';

/** Ground as it was found on a day. */
export class SeenGroundDto implements GroundLook {
  @DateOnly() date!: string;
  @YesNo() isWorkable!: boolean;
}

/** What became of a piece of work, with what it had been reckoned at. */
export class SentMarkDto implements WorkMark {
  @WorkKey() key!: string;
  @Optional() @DateOnly() doneOn?: string;
  @Optional() @DateOnly() notBefore?: string;
  @Optional() @Within('jobHours') hours?: number;
  @Optional() @Within('jobHours') hoursDone?: number;
  @Optional() @Within('jobHours') reckonedHours?: number;
  @Optional() @ShortText() kind?: string;
}

/** What there is on a farm. */
export class FarmPartsDto {
  /** The day to plan from; left out, it is today on the farm. */
  @Optional() @DateOnly() today?: string;
  /** Each is checked by the rules of its kind. */
  @Optional()
  @ApiProperty({ type: [Object] })
  @IsArray()
  @ArrayMaxSize(200)
  facilities?: unknown[];
  @Optional() @NestedList(() => PersonDto, 50) people?: PersonDto[];
  @Optional() @NestedList(() => BatchDto, 50) batches?: BatchDto[];
  @Optional() @NestedList(() => PaddockDto, 200) paddocks?: PaddockDto[];
  @Optional() @NestedList(() => HerdDto, 20) herds?: HerdDto[];
  @Optional() @NestedList(() => GrassReadingDto, 12000) readings?: GrassReadingDto[];
  @Optional() @Nested(() => PastureChoicesDto) pastureChoices?: PastureChoicesDto;
  @Optional() @NestedList(() => JobDto, 500) jobs?: JobDto[];
  @Optional() @NestedList(() => HandoverDto, 50) handovers?: HandoverDto[];
  @Optional() @NestedList(() => SentMarkDto, 5000) marks?: SentMarkDto[];
  @Optional() @NestedList(() => SeenGroundDto, 400) groundLooks?: SeenGroundDto[];
  /** The next days, where a forecast is at hand. */
  @Optional() @NestedList(() => ForecastDayDto, 40) forecast?: ForecastDayDto[];
}

/** A whole farm in one document, nothing saved: the body of every preview, the terminal's file. */
export class FarmDocumentDto extends FarmPartsDto {
  @Nested(() => FarmDto) farm!: FarmDto;
}
