import { batchFields, type Batch } from '../../../shared/farm/batch.js';
import { herdFields, type Herd } from '../../../shared/farm/herd.js';
import type { LaterMove } from '../../../shared/plan/work/later-event.js';
import { useBatches, useHerds, useSave, type SavedBatch, type SavedFarm } from '../api/queries.js';
import { useSayDate } from '../explain/say-date.js';
import { wordsOfRow } from '../api/row-words.js';
import type { Kept } from '../shell/kept-said.js';
import { Touch } from './touch.js';

interface Props {
  farm: SavedFarm;
  later: LaterMove;
  /** It is said where the touch stood, which is gone with what asked for it. */
  onKept: (kept: Kept) => void;
}

/** One touch has a herd go out no sooner than a day, or birds leave the brooder on it. */
export const MoveLater = (props: Props) =>
  props.later.kind === 'turn-out' ? <TurnOutLater {...props} /> : <MoveOutLater {...props} />;

function TurnOutLater({ farm, later: { ofId, to }, onKept }: Props) {
  const sayDate = useSayDate();
  const herd = useHerds(farm.id).data?.find(({ id }) => id === ofId);
  const rowWords = wordsOfRow(herdFields, farm);
  const save = useSave<Herd>(farm.id, 'herds', rowWords);
  const back = useSave<Herd>(farm.id, 'herds', rowWords, { isPutBack: true });
  const words = `Turn out on ${sayDate(to)} or later`;
  const kept = (was: Herd): Kept => ({ words, undo: () => back.mutateAsync(was) });
  const set = (was: Herd): Promise<void> =>
    save.mutateAsync({ ...was, turnOutOn: to }).then(() => onKept(kept(was)), saidBySave);
  return (
    <Touch isReady={herd !== undefined} save={save} set={() => void set(herd!)}>
      {words}
    </Touch>
  );
}

function MoveOutLater({ farm, later: { ofId, to }, onKept }: Props) {
  const sayDate = useSayDate();
  const batch = useBatches(farm.id).data?.find(({ id }) => id === ofId);
  const rowWords = wordsOfRow(batchFields, farm);
  const save = useSave<Batch, SavedBatch>(farm.id, 'batches', rowWords);
  const back = useSave<Batch, SavedBatch>(farm.id, 'batches', rowWords, { isPutBack: true });
  const words = `Move them out on ${sayDate(to)}`;
  const kept = (was: Batch): Kept => ({ words, undo: () => back.mutateAsync(was) });
  const set = (was: Batch): Promise<void> =>
    save.mutateAsync({ ...was, moveOutDate: to }).then(() => onKept(kept(was)), saidBySave);
  return (
    <Touch isReady={batch !== undefined} save={save} set={() => void set(batch!)}>
      {words}
    </Touch>
  );
}

const saidBySave = (): void => undefined;
