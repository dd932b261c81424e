import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { ToldFact } from '../../../../shared/farm/told-fact.js';
import type { CalvingAsked } from '../../../../shared/plan/today/calving-asked.js';
import { useTell } from '../../api/told-queries.js';
import type { FirstTold } from '../../mishap/mishap-props.js';
import { Failure } from '../../shell/states.js';

/** What came of cows that were due: a birth with its day, or that they are not in calf. */
export function CalvingTouches({
  farmId,
  today,
  of: { herdId, cowId, head },
  onBirth,
  onTold,
}: {
  farmId: string;
  today: PlainDate;
  of: CalvingAsked;
  onBirth: (herdId: string, first: FirstTold) => void;
  onTold: (fact: ToldFact) => void;
}) {
  const tell = useTell<'calved'>(farmId);
  const who = cowId === undefined ? {} : { cowId };
  const said = {
    ...({ kind: 'calved', about: herdId, on: today } as const),
    details: { calves: 0, notInCalf: head, ...who },
  };
  // The row goes with what is told, so that nothing hangs on its being there.
  const none = (): Promise<void> =>
    tell.mutateAsync(said).then(
      (facts) => facts.forEach(onTold),
      () => undefined,
    );
  return (
    <>
      <button
        type="button"
        className="today-button"
        onClick={() => onBirth(herdId, { kind: 'calved', start: { calves: 1, ...who } })}
      >
        Calved on …
      </button>
      <button
        type="button"
        className="today-button"
        disabled={tell.isPending || tell.isSuccess}
        onClick={() => void none()}
      >
        {head === 1 ? 'Not in calf' : `None of the ${head} in calf`}
      </button>
      <Failure error={tell.error} />
    </>
  );
}
