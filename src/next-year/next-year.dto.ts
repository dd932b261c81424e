import { whole } from '../../shared/farm/bounds.js';
import { list, number, optional, row } from '../../shared/farm/field.js';
import { id } from '../../shared/farm/words.js';
import { dtoOf } from '../common/dto-of.js';

/** What of a year is to come again: batches, jobs, herds and paddocks by their ids. */
export class NextYearDto extends dtoOf(
  row('NextYearAsked', {
    year: number('The year', whole(1900, 2200, 'count', 'Give the year that is to come again.')),
    batchIds: list('Batches', id('Batch'), 50, 'ids'),
    jobIds: list('Other jobs', id('Job'), 500, 'ids'),
    /** Herds to which the cattle of that year come again. */
    herdIds: optional(list('Cattle', id('Herd'), 50, 'ids')),
    /** Paddocks whose closed days and harvests come again. */
    paddockIds: optional(list('Paddocks', id('Paddock'), 500, 'ids')),
  }),
) {}
