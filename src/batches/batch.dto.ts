import { ApiProperty } from '@nestjs/swagger';
import type { Batch, BatchPrices, Purpose, Sex } from '../../shared/farm/batch.js';
import {
  DateOnly,
  IdText,
  Nested,
  OneOf,
  Optional,
  PriceRecord,
  PriceText,
  ShortText,
  Within,
} from '../common/field-rules.js';

export class BatchPricesDto implements BatchPrices {
  @Optional() @PriceText() perBird?: string;
  @Optional() @PriceText() processingPerBird?: string;
  @Optional() @PriceText() beddingPerBag?: string;
  @Optional() @PriceRecord() feedPerBag?: Record<string, string>;
}

/** One batch as sent by a client. What is left out takes the stated default. */
export class BatchDto implements Batch {
  @Optional() @IdText() id?: string;
  @Optional() @Within('version') version?: number;
  @ShortText() name!: string;
  @OneOf(['meat', 'layers']) purpose!: Purpose;
  @ApiProperty() @IdText() strainId!: string;
  @OneOf(['straight-run', 'cockerels', 'pullets']) sex!: Sex;
  @Within('wantedBirds') wantedBirds!: number;
  @Optional() @Within('orderedBirds') orderedBirds?: number;
  @Optional() @DateOnly() orderDate?: string;
  @DateOnly() arrivalDate!: string;
  @Within('hatchToArrivalDays') hatchToArrivalDays!: number;
  @Optional() @IdText() brooderId?: string;
  @Optional() @IdText() penId?: string;
  @Optional() @IdText() coopId?: string;
  @Optional() @IdText() freezerId?: string;
  @Optional() @IdText() feedStoreId?: string;
  @Optional() @IdText() growthTableId?: string;
  @Optional() @IdText() broodingScheduleId?: string;
  @Optional() @IdText() spaceStandardId?: string;
  @Optional() @IdText() moveOutRuleId?: string;
  @Optional() @DateOnly() moveOutDate?: string;
  @Optional() @Within('weightFactor') weightFactor?: number;
  @Optional() @Within('feedFactor') feedFactor?: number;
  @Optional() @Within('wastePercent') wastePercent?: number;
  @Optional() @Within('lossPercent') firstWeekLossPercent?: number;
  @Optional() @Within('lossPercent') laterLossPercent?: number;
  @Optional() @Within('leaveAgeDays') leaveAgeDays?: number;
  @Optional() @Within('targetLiveKg') targetLiveKg?: number;
  @Optional() @OneOf(['home', 'hired']) processing?: 'home' | 'hired';
  @Optional() @Within('dressingShare') dressingShare?: number;
  @Optional() @Within('movesPerDay') movesPerDay?: number;
  @Optional() @Within('withdrawalDays') medicatedWithdrawalDays?: number;
  @Optional() @Within('bagKg') bagKg?: number;
  @Optional()
  @Nested(() => BatchPricesDto)
  prices?: BatchPricesDto;
}
