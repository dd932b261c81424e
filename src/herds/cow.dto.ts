import { cowFields } from '../../shared/farm/cow.js';
import { dtoOf } from '../common/dto-of.js';

/** A cow with a name, as sent by a client. */
export class CowDto extends dtoOf(cowFields) {}
