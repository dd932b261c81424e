import { whole } from '../../shared/farm/bounds.js';
import { list, number, row } from '../../shared/farm/field.js';
import { id } from '../../shared/farm/words.js';
import { dtoOf } from '../common/dto-of.js';

/** What of a year is to come again: batches and jobs by the ids they have in it. */
export class NextYearDto extends dtoOf(
  row('NextYearAsked', {
    year: number('The year', whole(1900, 2200, 'count', 'Give the year that is to come again.')),
    batchIds: list('Batches', id('Batch'), 50, 'ids'),
    jobIds: list('Other jobs', id('Job'), 500, 'ids'),
  }),
) {}
