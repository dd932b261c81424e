import type { Attention } from '../../../../shared/plan/today/looked-at.js';
import { batchFields } from '../../../../shared/farm/batch.js';
import { useBatches, useRemove, type SavedFarm } from '../../api/queries.js';
import { wordsOfRow } from '../../api/row-words.js';
import { useTell } from '../../api/told-queries.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { Failure } from '../../shell/states.js';

/** One touch tells that birds came as planned; long after it another that they never did, which leaves no batch. */
export default function CameAsPlanned({
  farm,
  came: { batchId, on, birds, isLongAgo },
}: {
  farm: SavedFarm;
  came: NonNullable<Attention['came']>;
}) {
  const tell = useTell<'arrived'>(farm.id);
  const remove = useRemove(farm, 'batches');
  const batch = useBatches(farm.id).data?.find(({ id }) => id === batchId);
  return (
    <>
      <button
        type="button"
        className="today-button"
        disabled={tell.isPending || tell.isSuccess}
        onClick={() =>
          tell.mutate({ kind: 'arrived', about: batchId, on, details: { birds, dead: 0 } })
        }
      >
        All {birds} came that day
      </button>{' '}
      {isLongAgo && batch && (
        <ConfirmButton
          label={`${batch.name} did not come`}
          question={`Delete ${batch.name}, as they never came? This cannot be undone.`}
          loading={remove.isPending}
          onConfirm={() => remove.mutate(batch)}
        >
          They did not come
        </ConfirmButton>
      )}
      <Failure error={tell.error ?? remove.error} words={wordsOfRow(batchFields, farm)} />
    </>
  );
}
