import { rationAskedFields } from '../../shared/farm/ration-asked.js';
import { dtoOf } from '../common/dto-of.js';

/** A mix that is asked for, of ingredients of the farm or of others. */
export class RationAskedDto extends dtoOf(rationAskedFields) {}
