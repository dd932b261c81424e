import { handoverFields } from '../../shared/farm/handover.js';
import { dtoOf } from '../common/dto-of.js';

/** Days handed to a sitter, as sent by a client. */
export class HandoverDto extends dtoOf(handoverFields) {}
