import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { MoveMeant, StillIn } from '../../../../shared/plan/today/move-meant.js';
import { moveTold } from '../../../../shared/plan/pasture/move-told.js';
import { useMessage, useTell } from '../../api/told-queries.js';
import { Failure } from '../../shell/states.js';

/** One touch tells that a herd moved as planned, all of it or nothing. */
export function AsPlanned({ farmId, moves }: { farmId: string; moves: readonly MoveMeant[] }) {
  const tell = useMessage(farmId);
  const facts = moves.map((move) => moveTold(move.herdId, move));
  return (
    <>
      <button
        type="button"
        className="today-button"
        disabled={tell.isPending || tell.isSuccess}
        onClick={() => tell.mutate({ message: { does: 'tell', facts } })}
      >
        {moves.length === 1 ? 'Yes, they did' : `Yes, all ${moves.length} moves`}
      </button>
      <Failure error={tell.error} />
    </>
  );
}

/** One touch tells that a herd did not move at all. */
export function StillThere({
  farmId,
  today,
  of: { herdId, paddockId, paddock },
  children,
}: {
  farmId: string;
  today: PlainDate;
  of: StillIn;
  children: string;
}) {
  const tell = useTell<'herd-move'>(farmId);
  const details = { paddockId, isStill: true };
  return (
    <>
      <button
        type="button"
        className="today-button"
        disabled={tell.isPending || tell.isSuccess}
        onClick={() => tell.mutate({ kind: 'herd-move', about: herdId, on: today, details })}
      >
        {children} {paddock}
      </button>
      <Failure error={tell.error} />
    </>
  );
}
