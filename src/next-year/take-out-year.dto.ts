import { cowFields } from '../../shared/farm/cow.js';
import { list, optional, row, rows } from '../../shared/farm/field.js';
import { herdFields } from '../../shared/farm/herd.js';
import { paddockFields } from '../../shared/farm/paddock.js';
import { id, version } from '../../shared/farm/words.js';
import { dtoOf } from '../common/dto-of.js';

const { closedDays, harvestOn, lastHarvestOn } = paddockFields.fields;
const { groups, turnOutOn } = herdFields.fields;
const { bredOn, calvesOn } = cowFields.fields;

/** A row that was changed with the year: the version it was given, and what its fields held before. */
const CHANGED = { id: id(), version: version() };

/** What a year was begun with, to be taken out again. */
export class TakeOutYearDto extends dtoOf(
  row('YearTakenOut', {
    batchIds: list('Batches', id('Batch'), 50, 'ids'),
    jobIds: list('Other jobs', id('Job'), 500, 'ids'),
    herds: optional(
      rows('Herds', row('HerdBefore', { ...CHANGED, groups, turnOutOn }), 50, 'herd'),
    ),
    cows: optional(rows('Cows', row('CowBefore', { ...CHANGED, bredOn, calvesOn }), 500, 'cow')),
    paddocks: optional(
      rows(
        'Paddocks',
        row('PaddockBefore', { ...CHANGED, closedDays, harvestOn, lastHarvestOn }),
        ...([500, 'paddock'] as const),
      ),
    ),
  }),
) {}
