import { Button, Checkbox, Stack, Text } from '@mantine/core';
import { useMutation } from '@tanstack/react-query';
import { useMemo, useState } from 'react';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { paddockFields, type Paddock } from '../../../shared/farm/paddock.js';
import { putBack } from '../../../shared/farm/put-back.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import type { PastureChoices } from '../../../shared/farm/pasture-choices.js';
import {
  closedBy,
  ledOff,
  sayPaddockLost,
  sayShorterRest,
  toldOfLedOff,
  withPaddockLost,
  withShorterRest,
  type PaddockLost,
} from '../../../shared/plan/mishap/paddock-lost.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import type { Tables } from '../../../shared/tables/tables.js';
import { useChoose } from '../api/pasture-queries.js';
import { usePicture, useSave, useTables, type SavedFarm } from '../api/queries.js';
import { useTakeBack, useTell } from '../api/told-queries.js';
import { useSayDate } from '../explain/say-date.js';
import { DateField } from '../fields/date-input.js';
import { wordsOfRow } from '../fields/field-words.js';
import { Select } from '../fields/select.js';
import { usePasturePlan, type PlannedPasture } from '../screens/pasture/use-pasture.js';
import { Failure, Problems, useAll } from '../shell/states.js';
import { Follows, KeepOrLeave } from './mishap-parts.js';
import type { Kept } from '../shell/kept-said.js';
import type { MishapProps } from './mishap-props.js';

/** Water goes down, and a fence is up again, within about so long. */
const USUAL_DAYS = 14;

type Asked = MishapProps & { readonly picture: FarmPicture; readonly tables: Tables };

/** A paddock that nobody can graze: where the herd goes today and next, and what hay it takes. */
export default function PaddockGone(props: MishapProps) {
  const all = useAll(usePicture(props.farm.id), useTables());
  if ('waiting' in all) return all.waiting;
  const [picture, tables] = all.data;
  if (picture.paddocks.length === 0) return <Text>No paddock is drawn or typed yet.</Text>;
  return <Which {...props} picture={picture} tables={tables} />;
}

function Which(props: Asked) {
  const { picture, onBack } = props;
  const { paddocks, herds, today } = picture;
  const [paddockId, setPaddockId] = useState(
    herds.find(({ inPaddockId }) => inPaddockId !== undefined)?.inPaddockId ?? paddocks[0]!.id,
  );
  const [until, setUntil] = useState<string | undefined>(addDays(today, USUAL_DAYS));
  const [isForGood, setForGood] = useState(false);
  const [why, setWhy] = useState<PaddockLost['why']>('wet');
  const isRight = isForGood || (until !== undefined && today <= until);
  const lost = useMemo<PaddockLost | undefined>(
    () => (isRight ? { paddockId, why, ...(isForGood ? {} : { until: until! }) } : undefined),
    [isRight, paddockId, why, isForGood, until],
  );
  return (
    <Stack gap="sm">
      <Select
        label="Which paddock"
        value={paddockId}
        options={paddocks}
        onChange={(id) => setPaddockId(id ?? paddockId)}
      />
      <Select
        label="What happened"
        value={why}
        options={[
          { id: 'wet', name: 'Under water, or too wet' },
          { id: 'other', name: 'Fence down, or something else' },
        ]}
        onChange={(id) => setWhy(id ?? why)}
      />
      {!isForGood && (
        <DateField label="Until about" value={until} min={today} onChange={setUntil} />
      )}
      <Checkbox
        label="For good"
        checked={isForGood}
        onChange={(event) => setForGood(event.currentTarget.checked)}
      />
      {lost ? <Tried {...props} lost={lost} /> : <KeepOrLeave onBack={onBack} />}
    </Stack>
  );
}

/** The season with the paddock, without it, and without it on shorter rests. */
function Tried({
  farm,
  picture,
  tables,
  lost,
  onDone,
  onBack,
}: Asked & { readonly lost: PaddockLost }) {
  const before = usePasturePlan(picture, tables);
  const assumedMoves = before.plan?.assumedMoves;
  const without = useMemo(
    () => withPaddockLost(picture, lost, assumedMoves),
    [picture, lost, assumedMoves],
  );
  const hurried = useMemo(
    () => withShorterRest(without, tables.judgements.alarms),
    [without, tables],
  );
  const after = usePasturePlan(without, tables);
  const shorter = usePasturePlan(hurried, tables);
  const keeping = useKeeping(farm, picture, lost);
  const isWorking = before.isWorking || after.isWorking || shorter.isWorking;
  const saved =
    isWorking || !before.plan || !after.plan || !shorter.plan
      ? undefined
      : sayShorterRest(picture, {
          before: before.plan,
          after: after.plan,
          shorter: shorter.plan,
        });
  const keep = (plan: PasturePlan, wanted?: PastureChoices): void =>
    keeping.mutate({ before: before.plan!, plan, wanted }, { onSuccess: onDone });
  return (
    <>
      <Stack gap="xs" role="status">
        {isWorking && <Text>The grass is planned again …</Text>}
        {!isWorking && before.plan && after.plan && (
          <Follows
            label="What follows"
            lines={sayPaddockLost(picture, lost, before.plan, after.plan)}
          />
        )}
        {saved !== undefined && (
          <Text>
            <b>Or rest the others a fifth less.</b> {saved}
          </Text>
        )}
      </Stack>
      {!isWorking && <Problems texts={refusalsOf(after)} />}
      <Failure error={keeping.error} />
      <KeepOrLeave
        keep="Keep it"
        isOff={!before.plan || !after.plan || isWorking}
        isKeeping={keeping.isPending}
        onKeep={() => after.plan && keep(after.plan)}
        onBack={onBack}
      >
        {saved !== undefined && (
          <Button
            size="md"
            variant="default"
            disabled={keeping.isPending}
            onClick={() => keep(shorter.plan!, hurried.pastureChoices)}
          >
            Keep it, on shorter rests
          </Button>
        )}
      </KeepOrLeave>
    </>
  );
}

const refusalsOf = ({ problems = [], failed }: PlannedPasture): readonly string[] => [
  ...problems.map(({ fix }) => fix),
  ...(failed === undefined ? [] : [failed]),
];

/** Closes the paddock, tells where its herd went, and shortens rests where that was chosen. */
function useKeeping(farm: SavedFarm, picture: FarmPicture, lost: PaddockLost) {
  const words = wordsOfRow(paddockFields, farm);
  const save = useSave<Paddock>(farm.id, 'paddocks', words);
  const back = useSave<Paddock>(farm.id, 'paddocks', words, { isPutBack: true });
  const tell = useTell<'herd-move'>(farm.id);
  const takeBack = useTakeBack(farm.id);
  const choose = useChoose(farm);
  const sayDate = useSayDate();
  return useMutation({
    mutationFn: async ({
      before,
      plan,
      wanted,
    }: {
      before: PasturePlan;
      plan: PasturePlan;
      wanted: PastureChoices | undefined;
    }): Promise<Kept> => {
      const loaded = picture.pastureChoices;
      const paddock = picture.paddocks.find(({ id }) => id === lost.paddockId)!;
      const closed = closedBy(lost, paddock, picture.today);
      const row = putBack<Paddock>(paddock, closed, await save.mutateAsync(closed));
      const told: string[] = [];
      for (const led of ledOff(picture, lost, before, plan)) {
        const moves = toldOfLedOff(led, before);
        const facts = await tell.mutateAsync({ ...moves.at(-1)!, before: moves.slice(0, -1) });
        told.push(...facts.map(({ id }) => id));
      }
      if (wanted) await choose.mutateAsync({ loaded, wanted });
      const until = lost.until === undefined ? 'for good' : `until ${sayDate(lost.until)}`;
      return {
        words: `${paddock.name} closed ${until}`,
        undo: async () => {
          await back.mutateAsync(row);
          for (const id of told) await takeBack.mutateAsync(id);
          if (wanted) await choose.mutateAsync({ loaded: wanted, wanted: loaded });
        },
      };
    },
  });
}
