import { ApiProperty } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { IsOptional, ValidateNested } from 'class-validator';
import type { Batch, BatchPrices } from '../../shared/farm/batch.js';
import type { Purpose, Sex } from '../../shared/tables/tables.js';
import {
  DateOnly,
  IdText,
  OneOf,
  PriceRecord,
  PriceText,
  ShortText,
  Within,
} from '../common/field-rules.js';

export class BatchPricesDto implements BatchPrices {
  @IsOptional() @PriceText() perBird?: string;
  @IsOptional() @PriceText() processingPerBird?: string;
  @IsOptional() @PriceText() beddingPerBag?: string;
  @IsOptional() @PriceRecord() feedPerBag?: Record<string, string>;
}

/** One batch as sent by a client. What is left out takes the stated default. */
export class BatchDto implements Batch {
  @ApiProperty({ required: false }) @IsOptional() @IdText() id?: string;
  @ShortText() name!: string;
  @OneOf(['meat', 'layers']) purpose!: Purpose;
  @ApiProperty() @IdText() strainId!: string;
  @OneOf(['straight-run', 'cockerels', 'pullets']) sex!: Sex;
  @Within('wantedBirds') wantedBirds!: number;
  @IsOptional() @Within('orderedBirds') orderedBirds?: number;
  @IsOptional() @DateOnly() orderDate?: string;
  @DateOnly() arrivalDate!: string;
  @Within('hatchToArrivalDays') hatchToArrivalDays!: number;
  @ApiProperty({ required: false }) @IsOptional() @IdText() brooderId?: string;
  @ApiProperty({ required: false }) @IsOptional() @IdText() penId?: string;
  @ApiProperty({ required: false }) @IsOptional() @IdText() coopId?: string;
  @ApiProperty({ required: false }) @IsOptional() @IdText() freezerId?: string;
  @ApiProperty({ required: false }) @IsOptional() @IdText() feedStoreId?: string;
  @ApiProperty({ required: false }) @IsOptional() @IdText() growthTableId?: string;
  @ApiProperty({ required: false }) @IsOptional() @IdText() broodingScheduleId?: string;
  @ApiProperty({ required: false }) @IsOptional() @IdText() spaceStandardId?: string;
  @ApiProperty({ required: false }) @IsOptional() @IdText() moveOutRuleId?: string;
  @IsOptional() @DateOnly() moveOutDate?: string;
  @IsOptional() @Within('weightFactor') weightFactor?: number;
  @IsOptional() @Within('feedFactor') feedFactor?: number;
  @IsOptional() @Within('wastePercent') wastePercent?: number;
  @IsOptional() @Within('lossPercent') firstWeekLossPercent?: number;
  @IsOptional() @Within('lossPercent') laterLossPercent?: number;
  @IsOptional() @Within('leaveAgeDays') leaveAgeDays?: number;
  @IsOptional() @Within('targetLiveKg') targetLiveKg?: number;
  @IsOptional() @OneOf(['home', 'hired']) processing?: 'home' | 'hired';
  @IsOptional() @Within('dressingShare') dressingShare?: number;
  @IsOptional() @Within('movesPerDay') movesPerDay?: number;
  @IsOptional() @Within('withdrawalDays') medicatedWithdrawalDays?: number;
  @IsOptional() @Within('bagKg') bagKg?: number;
  @ApiProperty({ type: BatchPricesDto, required: false })
  @IsOptional()
  @ValidateNested()
  @Type(() => BatchPricesDto)
  prices?: BatchPricesDto;
}
