import type { Herd } from '../../farm/herd.js';
import type { AnimalPicture, NamedBatch } from '../../farm/picture.js';
import { FieldError } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import { contextAlone } from '../batch-request.js';
import { birdsOutdoors, type BirdsOutdoors } from './birds-outdoors.js';

/** Birds in pens or in a fence of their own that stand in one paddock while they are outdoors. */
export interface Penned extends BirdsOutdoors {
  readonly batchId: string;
  readonly paddockId: string;
  /** A herd that they are said to follow as well. */
  readonly alsoBehind?: string;
}

type Standing = NamedBatch & { readonly grassPaddockId: string };

/** Whether a batch names a paddock that there is: in one that is gone no birds stand. */
export const standsIn = (
  batch: NamedBatch,
  { paddocks }: Pick<AnimalPicture, 'paddocks'>,
): batch is Standing => paddocks.some(({ id }) => id === batch.grassPaddockId);

/** The birds of a farm that stand in a paddock. */
export function pennedOf(picture: AnimalPicture, tables: Tables): Penned[] {
  return picture.batches.flatMap((batch) => {
    if (!standsIn(batch, picture)) return [];
    const birds = outdoorsOf(picture, tables, batch);
    if (!birds) return [];
    const herd = picture.herds.find((each: Herd) => each.followedByBatchId === batch.id);
    return [
      {
        ...birds,
        batchId: batch.id,
        paddockId: batch.grassPaddockId,
        ...(herd ? { alsoBehind: herd.name } : {}),
      },
    ];
  });
}

/** Nothing of a batch that cannot be planned, rather than no plan of the pasture. */
function outdoorsOf(
  picture: AnimalPicture,
  tables: Tables,
  batch: NamedBatch,
): BirdsOutdoors | undefined {
  try {
    return birdsOutdoors(contextAlone(picture, tables, batch));
  } catch (error) {
    if (error instanceof FieldError) return undefined;
    throw error;
  }
}
