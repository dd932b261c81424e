import { batchFields } from '../../shared/farm/batch.js';
import { dtoOf } from '../common/dto-of.js';

/** One batch as sent by a client. What is left out takes the stated default. */
export class BatchDto extends dtoOf(batchFields) {}
