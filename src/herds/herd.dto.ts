import { ApiProperty } from '@nestjs/swagger';
import type { CattleGroup, Herd } from '../../shared/farm/herd.js';
import {
  DateOnly,
  IdText,
  NestedList,
  Optional,
  ShortText,
  Within,
} from '../common/field-rules.js';

export class CattleGroupDto implements CattleGroup {
  @ApiProperty() @IdText() classId!: string;
  @Within('head') head!: number;
  @Optional() @Within('cattleKg') weightKg?: number;
  @Optional() @Within('gainKgPerDay') gainKgPerDay?: number;
  @Optional() @Within('milkKgPerDay') milkKgPerDay?: number;
  @Optional() @DateOnly() arrivesOn?: string;
  @Optional() @DateOnly() leavesOn?: string;
  @Optional() @DateOnly() bredOn?: string;
  @Optional() @DateOnly() calvesOn?: string;
  @Optional() @IdText() breedId?: string;
}

/** A herd as sent by a client. */
export class HerdDto implements Omit<Herd, 'id'> {
  @Optional() @IdText() id?: string;
  @Optional() @Within('version') version?: number;
  @ShortText() name!: string;
  @NestedList(() => CattleGroupDto, 20) groups!: CattleGroupDto[];
  @Optional() @Within('stayDays') longestStayDays?: number;
  @Optional() @IdText() inPaddockId?: string;
  @Optional() @DateOnly() inSince?: string;
  @Optional() @DateOnly() turnOutOn?: string;
  @Optional() @IdText() followedByBatchId?: string;
  @Optional() @Within('followDays') followDays?: number;
}

/** Where a herd really went, and on which day. */
export class MovedDto {
  @ApiProperty() @IdText() paddockId!: string;
  @DateOnly() on!: string;
}
