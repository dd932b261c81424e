import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { ToldFact } from '../../../../shared/farm/told-fact.js';
import {
  bornOf,
  notInCalfOf,
  type CalvingAsked,
} from '../../../../shared/plan/today/calving-asked.js';
import { useTell } from '../../api/told-queries.js';
import type { FirstTold } from '../../mishap/mishap-props.js';
import { Failure } from '../../shell/states.js';

/** What came of cows that were due: a birth with its day, or that they are not in calf. */
export default function CalvingTouches({
  farmId,
  today,
  of: asked,
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
  const { herdId, head } = asked;
  const said = {
    ...({ kind: 'calved', about: herdId, on: today } as const),
    details: notInCalfOf(asked),
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
        onClick={() => onBirth(herdId, { kind: 'calved', start: bornOf(asked) })}
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
      {1 < head && (
        <button
          type="button"
          className="today-button"
          onClick={() =>
            onBirth(herdId, {
              ...{ kind: 'calved', asks: 'notInCalf' },
              start: notInCalfOf(asked, 1),
            })
          }
        >
          Some not in calf …
        </button>
      )}
      <Failure error={tell.error} />
    </>
  );
}
