import type { AnimalPicture } from '../farm/picture.js';
import type { PlanRequest } from './request.js';

/** What a plan goes by of all that was told of a batch. */
export type ToldOfBatch = Required<
  Pick<PlanRequest, 'headChanges' | 'weighings' | 'eggCounts' | 'feedOpenings'>
>;

/** What was told of one batch of a farm, each part in the order of the picture. */
export function toldOfBatch(
  { headChanges, weighings, eggCounts, feedOpenings = NOTHING }: AnimalPicture,
  batchId: string,
): ToldOfBatch {
  return {
    headChanges: ofBatch(headChanges, batchId),
    weighings: ofBatch(weighings, batchId),
    eggCounts: ofBatch(eggCounts, batchId),
    feedOpenings: ofBatch(feedOpenings, batchId),
  };
}

/**
 * Whether the same was told of a batch in two pictures, by the very rows: a page that reads a picture
 * again keeps those that are as before.
 */
export const isSameTold = (one: ToldOfBatch, other: ToldOfBatch): boolean =>
  PARTS.every(
    (part) =>
      one[part].length === other[part].length &&
      one[part].every((row, k) => row === other[part][k]),
  );

const PARTS = [
  'headChanges',
  'weighings',
  'eggCounts',
  'feedOpenings',
] as const satisfies readonly (keyof ToldOfBatch)[];

const NOTHING: readonly never[] = [];

interface OfBatch {
  readonly batchId: string;
}

/** Kept by the rows themselves: every batch of a picture asks for its own. */
const grouped = new WeakMap<readonly OfBatch[], ReadonlyMap<string, readonly OfBatch[]>>();

function ofBatch<Row extends OfBatch>(rows: readonly Row[], batchId: string): readonly Row[] {
  let byBatch = grouped.get(rows);
  if (!byBatch) grouped.set(rows, (byBatch = byBatchIn(rows)));
  return (byBatch.get(batchId) ?? NOTHING) as readonly Row[];
}

function byBatchIn(rows: readonly OfBatch[]): ReadonlyMap<string, readonly OfBatch[]> {
  const found = new Map<string, OfBatch[]>();
  for (const row of rows) {
    const own = found.get(row.batchId);
    if (own) own.push(row);
    else found.set(row.batchId, [row]);
  }
  return found;
}
