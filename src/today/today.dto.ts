import { row, yesNo } from '../../shared/farm/field.js';
import { workKey } from '../../shared/farm/words.js';
import { dtoOf } from '../common/dto-of.js';

/** A chore of today, done or open again. */
export const choreTickFields = row('ChoreTick', { key: workKey('Chore'), isDone: yesNo('Done') });

export class ChoreTickDto extends dtoOf(choreTickFields) {}
