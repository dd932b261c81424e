import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { HeatOutToday } from '../../../../shared/plan/today/batch-line.js';
import { useTakeBack, useTell } from '../../api/told-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { Failure } from '../../shell/states.js';

/** Heat that was told to be out: mended, or told by mistake, with one touch. */
export function HeatOutLine({
  farmId,
  batchId,
  today,
  out: { factId, since, working, of },
}: {
  farmId: string;
  batchId: string;
  today: PlainDate;
  out: HeatOutToday;
}) {
  const sayDate = useSayDate();
  const tell = useTell<'heat-works'>(farmId);
  const undo = useTakeBack(farmId);
  const isBusy = tell.isPending || undo.isPending;
  return (
    <div className="tell-said">
      <p role="status">
        {working === undefined
          ? 'The heat is mended'
          : `${working === 0 ? 'The heat is out' : `Only ${working} of ${of} heaters work`} since ${sayDate(since)}`}
      </p>
      {working !== undefined && (
        <button
          type="button"
          className="today-button"
          disabled={isBusy}
          onClick={() =>
            tell.mutate({ kind: 'heat-works', about: batchId, on: today, details: {} })
          }
        >
          Mended
        </button>
      )}
      <button
        type="button"
        className="today-button"
        disabled={isBusy}
        onClick={() => undo.mutate(factId)}
      >
        Undo
      </button>
      <Failure error={tell.error ?? undo.error} />
    </div>
  );
}
