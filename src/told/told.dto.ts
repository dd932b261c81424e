import { choice, list, optional, row, yesNo } from '../../shared/farm/field.js';
import type { ToldKind } from '../../shared/farm/told-fact.js';
import { anySaid, TOLD_KINDS } from '../../shared/farm/told-kinds.js';
import { date, workKey } from '../../shared/farm/words.js';
import { dtoOf } from '../common/dto-of.js';
import { pageFields } from '../common/page.dto.js';

const KINDS = Object.keys(TOLD_KINDS) as ToldKind[];

/** Facts that are told together: all are kept, or none. */
export class TellDto extends dtoOf(
  row('Tell', { facts: list('Facts', anySaid, 200, 'objects') }),
) {}

/** Which facts are asked for; what is left out does not matter. */
export class ToldQueryDto extends dtoOf(
  row('ToldQuery', {
    ...pageFields,
    kind: optional(choice('Kind', KINDS)),
    about: optional(workKey('What it happened to')),
    /** First day. */
    from: optional(date('From')),
    /** Last day. */
    to: optional(date('To')),
    /** With those taken back and replaced as well. */
    history: optional(yesNo('With history')),
    /** Ticks of chores and alarms that were seen; true when left out. */
    ticks: optional(yesNo('With ticks')),
  }),
) {}
