import type { BrooderSpaceStandard } from '../tables/bird-tables.js';
import { defaultRow, rowById } from '../tables/tables.js';
import type { PlanRequest } from './request.js';

/** The standard of brooder space that a batch goes by. */
export const spaceStandardOf = ({
  batch,
  tables,
}: Pick<PlanRequest, 'batch' | 'tables'>): BrooderSpaceStandard =>
  batch.spaceStandardId === undefined
    ? defaultRow(tables.space.brooder)
    : rowById(tables.space.brooder, batch.spaceStandardId);
