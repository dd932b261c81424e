import type { NamedBatch } from '../../../shared/farm/picture.js';
import { useSave, type SavedFarm } from '../api/queries.js';
import { useOpener } from '../explain/explain-panel.js';
import { batchWords } from '../screens/batch/batch-labels.js';
import { Failure } from '../shell/states.js';

interface Props {
  readonly farm: SavedFarm;
  readonly words: string;
  readonly was: NamedBatch;
  readonly onUndone: () => void;
}

/** What was kept of a batch that comes otherwise, until the screen is left. */
export default function OtherwiseSaid({ farm, words, was, onUndone }: Props) {
  const { reader } = useOpener();
  const save = useSave<NamedBatch>(farm.id, 'batches', batchWords(was.purpose, reader), {
    isPutBack: true,
  });
  return (
    <div className="tell-said">
      <p role="status">{words}. Kept.</p>
      <button
        type="button"
        className="today-button"
        disabled={save.isPending}
        onClick={() => save.mutate(was, { onSuccess: onUndone })}
      >
        Undo
      </button>
      <Failure error={save.error} />
    </div>
  );
}
