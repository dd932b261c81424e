import { ApiProperty } from '@nestjs/swagger';
import { TOLD_KINDS } from '../../shared/farm/told-kinds.js';
import type { ToldKind } from '../../shared/farm/told-fact.js';
import {
  AnyObject,
  DateOnly,
  IdText,
  NestedList,
  OneOf,
  Optional,
  ShortText,
  WorkKey,
  YesNo,
} from '../common/field-rules.js';
import { PageDto } from '../common/page.dto.js';

const KINDS = Object.keys(TOLD_KINDS);

/** One thing that happened, as sent by a client. */
export class SaidDto {
  @OneOf(KINDS) kind!: ToldKind;
  /** Key of the work, id of the paddock or herd, or "ground". */
  @ApiProperty() @WorkKey() about!: string;
  @DateOnly() on!: string;
  @AnyObject() details!: Record<string, unknown>;
  @Optional() @ShortText() saidBy?: string;
  /** A name of the client's own: said again under the same key it stays one fact. */
  @Optional() @IdText() key?: string;
  /** Id of the fact that this one changes. */
  @Optional() @IdText() replaces?: string;
}

/** Facts that are told together: all are kept, or none. */
export class TellDto {
  @NestedList(() => SaidDto, 200) facts!: SaidDto[];
}

/** Which facts are asked for; what is left out does not matter. */
export class ToldQueryDto extends PageDto {
  @Optional() @OneOf(KINDS) kind?: ToldKind;
  @Optional() @WorkKey() about?: string;
  /** First day. */
  @Optional() @DateOnly() from?: string;
  /** With those taken back and replaced as well. */
  @Optional() @YesNo() history?: boolean;
}
