import { Checkbox, Stack, Text } from '@mantine/core';
import { useMemo, useState } from 'react';
import { facilityFields, facilityOf, type Brooder } from '../../../shared/farm/facility.js';
import { heaterOut } from '../../../shared/plan/mishap/heater-out.js';
import { usePicture, useSave, useTables } from '../api/queries.js';
import { wordsOfRow } from '../fields/field-words.js';
import { Select } from '../fields/select.js';
import { Failure, useAll } from '../shell/states.js';
import { isOnHeat, type MishapProps } from './mishap-props.js';
import { Cautions, KeepOrLeave, MishapCard } from './mishap-parts.js';

/** Of heaters that were told to be out, so many may be told to work again here; more in their form. */
const MOST_AGAIN = 12;

/** Heaters that failed, or no power: what tonight is like and what can be done within the hour. */
export default function HeatOut({
  farm,
  animals,
  onDone,
  onBack,
  isPowerOut: isOutFirst = false,
}: MishapProps & { readonly isPowerOut?: boolean }) {
  const all = useAll(usePicture(farm.id), useTables());
  const batches = animals.filter(isOnHeat);
  const [batchId, setBatchId] = useState(batches[0]!.id);
  const [isPowerOut, setPowerOut] = useState(isOutFirst);
  const [working, setWorking] = useState(0);
  const [picture, tables] = 'data' in all ? all.data : [];
  const mishap = useMemo(
    () => picture && tables && heaterOut(picture, tables, { batchId, working, isPowerOut }),
    [picture, tables, batchId, working, isPowerOut],
  );
  const save = useSave<Brooder>(farm.id, 'facilities', wordsOfRow(facilityFields.brooder, farm));
  if ('waiting' in all) return all.waiting;
  const { batches: rows, facilities } = all.data[0];
  const brooder = facilityOf(
    facilities,
    'brooder',
    rows.find(({ id }) => id === batchId)?.brooderId,
  );
  const count = brooder?.heat.count ?? 0;
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
          setWorking(0);
        }}
      />
      {count !== 1 && (
        <Select
          label={count === 0 ? 'How many work again' : 'How many still work'}
          value={String(working)}
          options={Array.from({ length: count === 0 ? MOST_AGAIN + 1 : count }, (_, k) => ({
            id: String(k),
            name: k === 0 ? 'none' : count === 0 ? String(k) : `${k} of ${count}`,
          }))}
          onChange={(chosen) => setWorking(Number(chosen ?? 0))}
        />
      )}
      <div role="status">
        {mishap ? <MishapCard mishap={mishap} /> : <Text>They need no heat any more.</Text>}
      </div>
      {mishap && <Cautions of={[mishap]} />}
      <Failure error={save.error} />
      {brooder && mishap && !isPowerOut ? (
        <KeepOrLeave
          keep={
            working === 0
              ? 'Plan with none until mended'
              : count === 0
                ? `Plan with ${working} from now on`
                : `Plan with ${working} until mended`
          }
          isKeeping={save.isPending}
          onKeep={() =>
            save.mutate(
              { ...brooder, heat: { ...brooder.heat, count: working } },
              { onSuccess: onDone },
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
