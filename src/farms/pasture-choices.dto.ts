import type { PastureChoices } from '../../shared/farm/pasture-choices.js';
import { DateOnly, IdList, IdText, Optional, TwelveMonths, Within } from '../common/field-rules.js';

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
