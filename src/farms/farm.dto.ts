import { farmFields, type Farm } from '../../shared/farm/farm.js';
import { dtoOf } from '../common/dto-of.js';

/** A farm as sent by a client. */
export class FarmDto extends dtoOf(farmFields) {}

/** A farm as sent to a client. */
export interface FarmView extends Farm {
  readonly id: string;
  readonly isSample: boolean;
  readonly revision: number;
}
