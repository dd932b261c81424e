import { Button } from '@mantine/core';
import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import { herdFields, type Herd } from '../../../shared/farm/herd.js';
import { useHerds, useSave, type SavedFarm } from '../api/queries.js';
import { useSayDate } from '../explain/say-date.js';
import { wordsOfRow } from '../api/row-words.js';
import { Failure } from '../shell/states.js';

/** One touch has a herd go out no sooner than a day: its “Not on grass before”. */
export function TurnOutLater({
  farm,
  herdId,
  on,
}: {
  farm: SavedFarm;
  herdId: string;
  on: PlainDate;
}) {
  const sayDate = useSayDate();
  const herd = useHerds(farm.id).data?.find(({ id }) => id === herdId);
  const save = useSave<Herd>(farm.id, 'herds', wordsOfRow(herdFields, farm));
  return (
    <>
      <Button
        className="no-print"
        disabled={!herd || save.isSuccess}
        loading={save.isPending}
        onClick={() => save.mutate({ ...herd!, turnOutOn: on })}
      >
        Turn out on {sayDate(on)} or later
      </Button>
      <Failure error={save.error} />
    </>
  );
}
