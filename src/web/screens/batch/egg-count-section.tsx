import { Button, SimpleGrid, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { eggsCountedFields, type EggsCounted } from '../../../../shared/farm/egg-count.js';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { formatValue } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { useTakeBack, useTell } from '../../api/told-queries.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { DateField } from '../../fields/date-input.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Folded } from '../../shell/folded.js';
import { Failure } from '../../shell/states.js';
import { ToldLine } from './told-line.js';

interface Props {
  readonly plan: BatchPlan;
  readonly farm: SavedFarm;
  readonly batchId: string;
}

const FIELDS = eggsCountedFields.fields;
const WEEK: Partial<EggsCounted> = { days: 7 };

/** Eggs of some days; what the hens lay from then on is expected by them. */
export function EggCountSection({ plan, farm, batchId }: Props) {
  const takeBack = useTakeBack(farm.id);
  const sayDate = useSayDate();
  const { laying } = plan;
  if (!laying) return null;
  const { counts = [], firstEgg, own } = laying;
  if (plan.today <= String(firstEgg.value) && counts.length === 0) return null;
  return (
    <Folded level={3} isForScreen id="count-eggs" title="Count the eggs">
      <Stack gap="sm">
        <Text size="sm">
          Count the eggs of some days, a week at least. The plan is drawn toward them, the more the
          longer you counted.
        </Text>
        <CountForm plan={plan} farm={farm} batchId={batchId} />
        {own && (
          <Text role="status">
            Your hens are expected to lay <Num of={own} /> times the table.
          </Text>
        )}
        <Failure error={takeBack.error} />
        {[...counts].reverse().map(({ id, date, days, eggs }) => (
          <ToldLine
            key={id ?? date}
            what={`the count to ${sayDate(date)}`}
            onDelete={id === undefined ? undefined : () => takeBack.mutate(id)}
          >
            {formatValue(eggs, 'eggs', farm)} in {formatValue(days, 'day', farm)} to {sayDate(date)}
          </ToldLine>
        ))}
      </Stack>
    </Folded>
  );
}

function CountForm({ plan, farm, batchId }: Props) {
  const [on, setOn] = useState<string | undefined>(plan.today);
  const [{ days, eggs }, setTyped] =
    useState<Partial<Record<keyof EggsCounted, number | undefined>>>(WEEK);
  const tell = useTell<'eggs-counted'>(farm.id);
  const isWhole = on !== undefined && Number.isFinite(days) && Number.isFinite(eggs);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (!isWhole) return;
        const details: EggsCounted = { days: days!, eggs: eggs! };
        tell.mutate(
          { kind: 'eggs-counted', about: batchId, on, details },
          { onSuccess: () => setTyped(WEEK) },
        );
      }}
    >
      <SimpleGrid cols={{ base: 2, sm: 3 }} style={{ alignItems: 'end' }}>
        <DateField label="Last day counted" value={on} max={plan.today} onChange={setOn} />
        <QuantityInput
          field={FIELDS.days}
          units={farm.units}
          value={days}
          onChange={(value) => setTyped({ days: value, eggs })}
        />
        <QuantityInput
          field={FIELDS.eggs}
          units={farm.units}
          value={eggs}
          onChange={(value) => setTyped({ days, eggs: value })}
        />
      </SimpleGrid>
      <Button mt="sm" type="submit" disabled={!isWhole} loading={tell.isPending}>
        Save the count
      </Button>
      <Failure error={tell.error} words={wordsOfRow(eggsCountedFields, farm)} />
    </form>
  );
}
