import { batchFields, type Batch } from '../../../shared/farm/batch.js';
import { leavingOn } from '../../../shared/plan/leaving-on.js';
import type { LeavingChoice } from '../../../shared/plan/record/weight-follows.js';
import { useBatches, useSave, type SavedBatch, type SavedFarm } from '../api/queries.js';
import { wordsOfRow } from '../api/row-words.js';
import { Touch } from './touch.js';

/** One touch has the birds processed on another day than the one planned. */
export function ProcessOn({
  farm,
  leaving: { batchId, hatchDate, on, words },
  onSet,
}: {
  farm: SavedFarm;
  leaving: LeavingChoice;
  onSet?: () => void;
}) {
  const batch = useBatches(farm.id).data?.find(({ id }) => id === batchId);
  const save = useSave<Batch, SavedBatch>(farm.id, 'batches', wordsOfRow(batchFields, farm));
  return (
    <Touch
      isReady={batch !== undefined}
      save={save}
      set={() =>
        save.mutate(leavingOn(batch!, { hatchDate }, on), onSet ? { onSuccess: onSet } : {})
      }
    >
      {save.isSuccess ? `${words}. Kept.` : words}
    </Touch>
  );
}
