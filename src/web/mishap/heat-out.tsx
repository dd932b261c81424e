import { Checkbox, Stack, Text } from '@mantine/core';
import { useMemo, useState } from 'react';
import { facilityOf } from '../../../shared/farm/facility.js';
import { heaterOut } from '../../../shared/plan/mishap/heater-out.js';
import { waterOut } from '../../../shared/plan/mishap/water-out.js';
import { tablesIn } from '../../../shared/tables/in-own-units.js';
import { usePicture, useTables } from '../api/queries.js';
import { useTell } from '../api/told-queries.js';
import { Select } from '../fields/select.js';
import { Failure, useAll } from '../shell/states.js';
import { isOnHeat, type MishapProps } from './mishap-props.js';
import { Cautions, KeepOrLeave, MishapCard } from './mishap-parts.js';

/** Heaters that failed, or no power: what tonight is like and what can be done within the hour. */
export default function HeatOut({
  farm,
  animals,
  lowC,
  onDone,
  onBack,
  isPowerOut: isOutFirst = false,
}: MishapProps & { readonly isPowerOut?: boolean }) {
  const all = useAll(usePicture(farm.id), useTables());
  const batches = animals.filter(isOnHeat);
  const [batchId, setBatchId] = useState(batches[0]!.id);
  const [isPowerOut, setPowerOut] = useState(isOutFirst);
  const [chosen, setChosen] = useState<number>();
  const [picture, tables] = 'data' in all ? all.data : [];
  const brooder =
    picture &&
    facilityOf(
      picture.facilities,
      'brooder',
      picture.batches.find(({ id }) => id === batchId)?.brooderId,
    );
  const count = brooder?.heat.count ?? 0;
  const isGas = brooder?.heat.kind === 'gas';
  const working = chosen ?? (isPowerOut && isGas ? count : 0);
  const mishap = useMemo(
    () => picture && tables && heaterOut(picture, tables, { batchId, working, isPowerOut }),
    [picture, tables, batchId, working, isPowerOut],
  );
  const tell = useTell<'heat-works'>(farm.id);
  if ('waiting' in all) return all.waiting;
  const { today } = all.data[0];
  // The pump stands still for all of them, not only for those on heat.
  const water = isPowerOut
    ? waterOut(animals, tablesIn(farm.units, all.data[1]), farm, { lowC, isPowerOut })
    : undefined;
  // Where the power is out nothing electric works, and nobody is asked how much.
  const isAsked = 1 < count && (!isPowerOut || isGas);
  return (
    <Stack gap="sm">
      {1 < batches.length && (
        <Select
          label="Whose heat"
          value={batchId}
          options={batches}
          onChange={(id) => setBatchId(id ?? batchId)}
        />
      )}
      <Checkbox
        label="The power is out"
        checked={isPowerOut}
        onChange={(event) => {
          setPowerOut(event.currentTarget.checked);
          setChosen(undefined);
        }}
      />
      {isAsked && (
        <Select
          label="How many still work"
          value={String(working)}
          options={Array.from({ length: isPowerOut ? count + 1 : count }, (_, k) => ({
            id: String(k),
            name: k === 0 ? 'none' : `${k} of ${count}`,
          }))}
          onChange={(id) => setChosen(Number(id ?? 0))}
        />
      )}
      <div role="status">
        {mishap ? <MishapCard mishap={mishap} /> : <Text>They need no heat any more.</Text>}
        {water && <MishapCard mishap={water} />}
      </div>
      <Cautions of={[mishap, water].filter((each) => each !== undefined)} />
      <Failure error={tell.error} />
      {brooder && 0 < count && mishap && !isPowerOut ? (
        <KeepOrLeave
          keep={`Plan with ${working === 0 ? 'none' : working} until mended`}
          isKeeping={tell.isPending}
          onKeep={() =>
            tell.mutate(
              { kind: 'heat-works', about: batchId, on: today, details: { working, of: count } },
              { onSuccess: () => onDone() },
            )
          }
          onBack={onBack}
        />
      ) : (
        <KeepOrLeave onBack={onBack} />
      )}
    </Stack>
  );
}
