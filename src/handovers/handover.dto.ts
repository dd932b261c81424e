import type { Handover } from '../../shared/farm/handover.js';
import {
  DateOnly,
  IdList,
  IdText,
  LongText,
  NestedList,
  Optional,
  ShortText,
  Within,
} from '../common/field-rules.js';

export class PhoneNumberDto {
  @ShortText() who!: string;
  @ShortText() number!: string;
}

export class LeftThingDto {
  @ShortText() what!: string;
  @ShortText() where!: string;
}

/** Days handed to a caretaker, as sent by a client. */
export class HandoverDto implements Omit<Handover, 'id'> {
  @Optional() @IdText() id?: string;
  @Optional() @Within('version') version?: number;
  @Optional() @IdText() personId?: string;
  @Optional() @ShortText() caretaker?: string;
  @DateOnly() from!: string;
  @DateOnly() to!: string;
  @Within('dayHours') hoursPerDay!: number;
  @IdList(200) walkingOrder!: string[];
  @NestedList(() => PhoneNumberDto, 20) phones!: PhoneNumberDto[];
  @NestedList(() => LeftThingDto, 40) left!: LeftThingDto[];
  @Optional() @LongText() notes?: string;
}
