import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import { useMark } from '../../api/mark-queries.js';
import { Failure } from '../../shell/states.js';

/** One touch tells that birds are ordered. */
export function Ordered({
  farmId,
  of: key,
  today,
}: {
  farmId: string;
  of: string;
  today: PlainDate;
}) {
  const mark = useMark(farmId);
  return (
    <>
      <button
        type="button"
        className="today-button"
        disabled={mark.isPending || mark.isSuccess}
        onClick={() => mark.mutate({ key, doneOn: today, buys: undefined })}
      >
        They are ordered
      </button>
      <Failure error={mark.error} />
    </>
  );
}
