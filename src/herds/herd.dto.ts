import { herdFields, movedFields } from '../../shared/farm/herd.js';
import { dtoOf } from '../common/dto-of.js';

/** A herd as sent by a client. */
export class HerdDto extends dtoOf(herdFields) {}

/** Where a herd really went, and on which day. */
export class MovedDto extends dtoOf(movedFields) {}
