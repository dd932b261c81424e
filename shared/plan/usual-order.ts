import type { Batch } from '../farm/batch.js';
import { rowById, type Tables } from '../tables/tables.js';
import { usualFactors } from './how-they-grow.js';

/** What the plan uses for figures of an order that are left out. */
export interface UsualOrder {
  readonly weightFactor: number;
  readonly feedFactor: number;
  readonly wastePercent: number;
  readonly firstWeekPercent: number;
  readonly laterPercent: number;
  /** Left out of strains that are not dressed. */
  readonly dressingShare?: number;
}

type Asked = Pick<Batch, 'purpose' | 'strainId'> & {
  readonly [K in 'growthTableId' | 'keptAs' | 'weightFactor']?: Batch[K] | undefined;
};

/** @throws when the strain or its tables are not among the tables */
export function usualOrder(batch: Asked, tables: Tables): UsualOrder {
  const strain = rowById(tables.strains, batch.strainId);
  const table = rowById(tables.growthTables, batch.growthTableId ?? strain.growthTables[0]!);
  const factors = usualFactors(batch, table);
  const losses = rowById(
    tables.losses,
    (batch.purpose === 'layers' && strain.layLosses) || strain.losses,
  );
  return {
    weightFactor: factors.weight,
    feedFactor: factors.feed,
    wastePercent: strain.waste.percent,
    firstWeekPercent: losses.firstWeekPercent,
    laterPercent: losses.laterPercent,
    ...(strain.dressing === undefined
      ? {}
      : { dressingShare: rowById(tables.processing.dressing, strain.dressing).share }),
  };
}
