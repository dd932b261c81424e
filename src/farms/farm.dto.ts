import { ApiProperty } from '@nestjs/swagger';
import type { Farm } from '../../shared/farm/farm.js';
import type { UnitSystem } from '../../shared/units/unit.js';
import {
  CurrencyCode,
  DateList,
  IdText,
  MonthDay,
  OneOf,
  Optional,
  PriceText,
  ShortText,
  TimeZoneName,
  TwelveMonths,
  Within,
} from '../common/field-rules.js';

/** A farm as sent by a client. */
export class FarmDto implements Farm {
  @Optional() @Within('version') version?: number;
  @ShortText() name!: string;
  @Within('latitudeDeg') latitudeDeg!: number;
  @Within('longitudeDeg') longitudeDeg!: number;
  @Within('elevationM') elevationM!: number;
  @ApiProperty() @TimeZoneName() timeZone!: string;
  @OneOf(['metric', 'us']) units!: UnitSystem;
  @ApiProperty() @CurrencyCode() currency!: string;
  @PriceText() electricityPricePerKWh!: string;
  @PriceText() gasPricePerL!: string;
  @TwelveMonths('airC') monthlyMinC!: number[];
  @TwelveMonths('airC') monthlyMaxC!: number[];
  /** Rain of each month, snow melted; without it dry spells do not slow the grass. */
  @Optional() @TwelveMonths('rainMm') monthlyRainMm?: number[];
  @ApiProperty() @MonthDay() lastFrost!: string;
  @ApiProperty() @MonthDay() firstFrost!: string;
  /** Soil of beds and fence lines, by its id in the table of soils. */
  @Optional() @IdText() gardenSoilId?: string;
  @DateList(200) noDeliveryDates!: string[];
}

/** A farm as sent to a client. */
export interface FarmView extends Farm {
  readonly id: string;
  readonly isSample: boolean;
  readonly revision: number;
  readonly version: number;
}
