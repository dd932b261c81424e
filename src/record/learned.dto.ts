import { batchFields } from '../../shared/farm/batch.js';
import { row } from '../../shared/farm/field.js';
import { dtoOf } from '../common/dto-of.js';

const { purpose, strainId } = batchFields.fields;

/** Of which birds it is asked what the farm has learned. */
export class LearnedDto extends dtoOf(row('LearnedAsked', { purpose, strainId })) {}
