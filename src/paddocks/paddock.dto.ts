import { ApiProperty } from '@nestjs/swagger';
import {
  type ClosedFor,
  type Outline,
  type Paddock,
  PRODUCTIVITIES,
  STANDS,
  type Productivity,
  type Stand,
} from '../../shared/farm/paddock.js';
import {
  AnyList,
  DateOnly,
  IdText,
  NestedList,
  OneOf,
  Optional,
  ShortText,
  Within,
  YesNo,
} from '../common/field-rules.js';
import type { Ground } from './ground.js';

const REASONS: readonly ClosedFor[] = ['hay', 'wet', 'reseeding', 'stockpile', 'other'];

export class ClosedDaysDto {
  @DateOnly() from!: string;
  @DateOnly() to!: string;
  @OneOf(REASONS) why!: ClosedFor;
}

/** A paddock as sent by a client. With an outline, the area may be left out. */
export class PaddockDto implements Omit<Paddock, 'id' | 'areaM2'> {
  @Optional() @IdText() id?: string;
  @Optional() @Within('version') version?: number;
  @ShortText() name!: string;
  @Optional() @Within('paddockM2') areaM2?: number;
  @ApiProperty() @IdText() forageId!: string;
  @OneOf(STANDS) stand!: Stand;
  @OneOf(PRODUCTIVITIES) productivity!: Productivity;
  @ApiProperty() @IdText() soilId!: string;
  @ApiProperty() @YesNo() hasWater!: boolean;
  @ApiProperty() @YesNo() hasShade!: boolean;
  @Optional() @Within('turnInCm') turnInCm?: number;
  @Optional() @Within('residualCm') residualCm?: number;
  @Optional() @Within('massKgPerHaCm') massKgPerHaCm?: number;
  @Optional() @DateOnly() lastGrazedOn?: string;
  @NestedList(() => ClosedDaysDto, 20) closed!: ClosedDaysDto[];
  @Optional() @DateOnly() harvestOn?: string;
  @Optional() @AnyList(500) outline?: Outline;
}

/** Equal parts, or parts by their shares of the area. */
export class SplitDto {
  @Optional() @Within('parts') parts?: number;
  @Optional() @AnyList(20) shares?: unknown[];
}

export class JoinDto {
  @AnyList(50) ids!: unknown[];
  @ShortText() name!: string;
}

/** What an outline does not say of a paddock; an import takes it for all that do not say it. */
export class GroundDto implements Partial<Ground> {
  @Optional() @IdText() forageId?: string;
  @Optional() @OneOf(STANDS) stand?: Stand;
  @Optional() @OneOf(PRODUCTIVITIES) productivity?: Productivity;
  @Optional() @IdText() soilId?: string;
  @Optional() @YesNo() hasWater?: boolean;
  @Optional() @YesNo() hasShade?: boolean;
}
