import { batchFields, type Batch } from '../../../shared/farm/batch.js';
import { herdFields, type Herd } from '../../../shared/farm/herd.js';
import type { LaterMove } from '../../../shared/plan/work/later-event.js';
import { useBatches, useHerds, useSave, type SavedBatch, type SavedFarm } from '../api/queries.js';
import { useSayDate } from '../explain/say-date.js';
import { wordsOfRow } from '../api/row-words.js';
import { Touch } from './touch.js';

interface Props {
  farm: SavedFarm;
  later: LaterMove;
}

/** One touch has a herd go out no sooner than a day, or birds leave the brooder on it. */
export const MoveLater = (props: Props) =>
  props.later.kind === 'turn-out' ? <TurnOutLater {...props} /> : <MoveOutLater {...props} />;

function TurnOutLater({ farm, later: { ofId, to } }: Props) {
  const sayDate = useSayDate();
  const herd = useHerds(farm.id).data?.find(({ id }) => id === ofId);
  const save = useSave<Herd>(farm.id, 'herds', wordsOfRow(herdFields, farm));
  return (
    <Touch
      isReady={herd !== undefined}
      {...{ save, set: () => save.mutate({ ...herd!, turnOutOn: to }) }}
    >
      Turn out on {sayDate(to)} or later
    </Touch>
  );
}

function MoveOutLater({ farm, later: { ofId, to } }: Props) {
  const sayDate = useSayDate();
  const batch = useBatches(farm.id).data?.find(({ id }) => id === ofId);
  const save = useSave<Batch, SavedBatch>(farm.id, 'batches', wordsOfRow(batchFields, farm));
  return (
    <Touch
      isReady={batch !== undefined}
      {...{ save, set: () => save.mutate({ ...batch!, moveOutDate: to }) }}
    >
      Move them out on {sayDate(to)}
    </Touch>
  );
}
