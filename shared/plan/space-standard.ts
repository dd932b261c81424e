import type { BrooderSpaceStandard } from '../tables/bird-tables.js';
import { defaultRow, ofSpecies, rowById } from '../tables/tables.js';
import type { PlanRequest } from './request.js';

/** The standard of brooder space that a batch goes by: as chosen, else the usual of its kind. */
export const spaceStandardOf = ({
  batch,
  tables: { space, strains },
}: Pick<PlanRequest, 'batch' | 'tables'>): BrooderSpaceStandard =>
  batch.spaceStandardId === undefined
    ? defaultRow(ofSpecies(space.brooder, rowById(strains, batch.strainId).species))
    : rowById(space.brooder, batch.spaceStandardId);
