import { ApiProperty } from '@nestjs/swagger';
import type { Follower, PastureChoices } from '../../shared/plan/pasture/pasture-request.js';
import { FarmDto } from '../farms/farm.dto.js';
import { GrassReadingDto } from '../grass-readings/grass-reading.dto.js';
import { HerdDto } from '../herds/herd.dto.js';
import { PaddockDto } from '../paddocks/paddock.dto.js';
import {
  DateOnly,
  IdList,
  IdText,
  Nested,
  NestedList,
  Optional,
  ShortText,
  TwelveMonths,
  Within,
} from '../common/field-rules.js';

export class PastureChoicesDto implements PastureChoices {
  @Optional() @DateOnly() from?: string;
  @Optional() @DateOnly() to?: string;
  @Optional() @TwelveMonths('rainShare') rainShareByMonth?: number[];
  @Optional() @Within('restFactor') restFactor?: number;
  @Optional() @IdList(200) keepForAutumnIds?: string[];
  @Optional() @IdText() feedingId?: string;
  @Optional() @IdText() storingId?: string;
  @Optional() @IdText() baleId?: string;
  @Optional() @Within('hayKg') hayInStoreKg?: number;
  @Optional() @Within('refillH') refillH?: number;
}

export class FollowerDto implements Follower {
  @ApiProperty() @IdText() herdId!: string;
  @ShortText() name!: string;
  @DateOnly() from!: string;
  @DateOnly() to!: string;
  @Within('followDays') lagDays!: number;
  @Within('manureKgPerDay') nitrogenKgPerDay!: number;
  @Within('manureKgPerDay') phosphorusKgPerDay!: number;
}

/** A pasture by itself: everything a plan needs, nothing saved. */
export class PastureOrderDto {
  @Nested(() => FarmDto) farm!: FarmDto;
  @NestedList(() => PaddockDto, 200) paddocks!: PaddockDto[];
  @NestedList(() => HerdDto, 20) herds!: HerdDto[];
  @Optional() @NestedList(() => GrassReadingDto, 5000) readings?: GrassReadingDto[];
  @Optional() @NestedList(() => FollowerDto, 20) followers?: FollowerDto[];
  @Optional() @Nested(() => PastureChoicesDto) choices?: PastureChoicesDto;
  @Optional() @DateOnly() today?: string;
}
