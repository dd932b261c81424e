import { ApiProperty } from '@nestjs/swagger';
import { DateOnly, IdText, NestedList, Within } from '../common/field-rules.js';

export class GrassReadingDto {
  @ApiProperty() @IdText() paddockId!: string;
  @DateOnly() date!: string;
  @Within('heightCm') heightCm!: number;
}

/** Heights of one walk. A second reading of a paddock on the same day replaces the first. */
export class WalkDto {
  @NestedList(() => GrassReadingDto, 200) readings!: GrassReadingDto[];
}
