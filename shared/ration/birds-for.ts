import type { Purpose } from '../farm/batch.js';
import type { BirdsToFeed } from '../tables/ration-tables.js';
import type { Tables } from '../tables/tables.js';

/** Birds and an age of the table of needs, by their ids. */
export interface BirdsOfAge {
  readonly birdsId: string;
  readonly stageId: string;
}

/** What is asked for where nothing else is: the first of the table. */
const FIRST = 0;

/**
 * The needs that stand for a breed in a phase of its feeding program; for a phase that has none of
 * its own those of the youngest, and for no breed at all the first of the table.
 */
export function birdsFor(
  { rationNeeds }: Pick<Tables, 'rationNeeds'>,
  of: {
    readonly strainId?: string | undefined;
    readonly purpose?: Purpose | undefined;
    readonly phaseId?: string | undefined;
  },
): BirdsOfAge {
  const fits = ({ strainIds, feedFor }: BirdsToFeed): boolean =>
    of.strainId !== undefined &&
    strainIds.includes(of.strainId) &&
    (of.purpose === undefined || of.purpose === feedFor);
  const birds = rationNeeds.find(fits) ?? rationNeeds[FIRST]!;
  const stage = birds.stages.find(({ phaseIds }) => phaseIds.includes(of.phaseId ?? ''));
  return { birdsId: birds.id, stageId: (stage ?? birds.stages[FIRST]!).id };
}
