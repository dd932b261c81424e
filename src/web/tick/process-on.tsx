import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import { batchFields, type Batch } from '../../../shared/farm/batch.js';
import { leavingOn } from '../../../shared/plan/leaving-on.js';
import type { LeavingChoice } from '../../../shared/plan/record/weight-follows.js';
import { useBatches, useSave, type SavedBatch, type SavedFarm } from '../api/queries.js';
import { wordsOfRow } from '../api/row-words.js';
import { useTakeBack, useTell } from '../api/told-queries.js';
import type { Kept } from '../shell/kept-said.js';
import { Touch } from './touch.js';

/** One touch has the birds processed on another day than the one planned, and answers what asked for it. */
export function ProcessOn({
  farm,
  today,
  leaving: { batchId, hatchDate, on, words, settles },
  onKept,
}: {
  farm: SavedFarm;
  today: PlainDate;
  leaving: LeavingChoice;
  onKept: (kept: Kept) => void;
}) {
  const batch = useBatches(farm.id).data?.find(({ id }) => id === batchId);
  const rowWords = wordsOfRow(batchFields, farm);
  const save = useSave<Batch, SavedBatch>(farm.id, 'batches', rowWords);
  const back = useSave<Batch, SavedBatch>(farm.id, 'batches', rowWords, { isPutBack: true });
  const seen = useTell<'alarm-seen'>(farm.id);
  const unsee = useTakeBack(farm.id);
  const keep = async (was: SavedBatch): Promise<void> => {
    await save.mutateAsync(leavingOn(was, { hatchDate }, on));
    const facts = await seen.mutateAsync({
      ...({ kind: 'alarm-seen', about: settles, details: {} } as const),
      on: today,
    });
    onKept({
      words,
      undo: async () => {
        await back.mutateAsync(was);
        for (const { id } of facts) await unsee.mutateAsync(id);
      },
    });
  };
  return (
    <Touch
      isReady={batch !== undefined}
      save={save}
      // What fails is said by the save.
      set={() => void keep(batch!).catch(() => undefined)}
    >
      {words}
    </Touch>
  );
}
