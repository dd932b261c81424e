import type { TellsOf } from '../rows/tell-row.js';
import { toBatch, type BatchEntity } from './batch.entity.js';

/** What became of a batch stands in the record, by whichever form. */
export const tellsOfBatch: TellsOf<BatchEntity> = {
  of: 'batch',
  fields: (row) => ({ ...toBatch(row) }),
  name: (row) => row.name,
};
