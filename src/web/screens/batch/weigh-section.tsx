import { Button, Group, SimpleGrid, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { averageOf, weighedFields, type Weighed } from '../../../../shared/farm/weighing.js';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { WeighedPart, WeighingRow } from '../../../../shared/plan/weighed.js';
import { formatValue } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { useTakeBack, useTell } from '../../api/told-queries.js';
import { Num, Range } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { DateField } from '../../fields/date-input.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Folded } from '../../shell/folded.js';
import { useUnsaved } from '../../fields/unsaved.js';
import { Failure } from '../../shell/states.js';
import { EachWeight } from '../../fields/each-weight.js';
import { HowEven } from './how-even.js';
import { ToldLine } from './told-line.js';

interface Props {
  readonly plan: BatchPlan;
  readonly farm: SavedFarm;
  readonly batchId: string;
}

const FIELDS = weighedFields.fields;

/** A few birds on the scale; the plan's growth, feed and dates are right from there on. */
export function WeighSection({ plan, farm, batchId }: Props) {
  const { weighed, toWeigh } = plan.birds;
  if (plan.today <= plan.arrivalDate && !weighed) return null;
  return (
    <Folded level={3} isForScreen id="weigh" title="Weigh the birds">
      <Stack gap="sm">
        <Text size="sm">
          Weigh <Num of={toWeigh} /> or more, from several places in the pen, before the morning
          feed. Type each bird’s weight, what they weigh all together, or the average: weight, feed
          to come and the day of a target weight follow.
        </Text>
        <WeighForm plan={plan} farm={farm} batchId={batchId} />
        {weighed && <Found weighed={weighed} farm={farm} />}
      </Stack>
    </Folded>
  );
}

function WeighForm({ plan, farm, batchId }: Props) {
  const [typed, setTyped] = useState<Partial<Weighed>>({});
  const [on, setOn] = useState<string | undefined>(plan.today);
  const tell = useTell<'weighed'>(farm.id);
  useUnsaved(0 < Object.keys(typed).length);
  const { birds, totalKg, averageKg, eachKg } = typed;
  const isOne = eachKg !== undefined || (totalKg === undefined) !== (averageKg === undefined);
  const isReadable = Object.values(typed).every((n) => typeof n !== 'number' || Number.isFinite(n));
  const isWhole = birds !== undefined && isOne && isReadable && on !== undefined;
  const put = (more: { readonly [K in keyof Weighed]?: Weighed[K] | undefined }) =>
    setTyped(
      (old) =>
        Object.fromEntries(
          Object.entries({ ...old, ...more }).filter(([, value]) => value !== undefined),
        ) as Partial<Weighed>,
    );
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (!isWhole) return;
        const details: Weighed = { ...typed, birds };
        tell.mutate(
          { kind: 'weighed', about: batchId, on, details },
          { onSuccess: () => setTyped({}) },
        );
      }}
    >
      <SimpleGrid cols={{ base: 2, sm: 4 }} style={{ alignItems: 'end' }}>
        <DateField label="Day" value={on} max={plan.today} onChange={setOn} />
        {eachKg === undefined && (
          <>
            <QuantityInput
              field={FIELDS.birds}
              value={birds}
              units={farm.units}
              onChange={(value) => put({ birds: value })}
            />
            <QuantityInput
              field={FIELDS.totalKg}
              value={totalKg}
              units={farm.units}
              onChange={(value) => put({ totalKg: value })}
            />
            <QuantityInput
              field={FIELDS.averageKg}
              value={averageKg}
              units={farm.units}
              onChange={(value) => put({ averageKg: value })}
            />
          </>
        )}
      </SimpleGrid>
      {totalKg === undefined && averageKg === undefined && (
        <EachWeight
          field={FIELDS.eachKg.of}
          farm={farm}
          value={eachKg}
          onChange={(each) => put({ eachKg: each, birds: each?.length })}
        />
      )}
      <Group mt="sm">
        <Button type="submit" disabled={!isWhole} loading={tell.isPending}>
          Save the weighing
        </Button>
        {isWhole && averageKg === undefined && (
          <Text size="sm" role="status">
            {formatValue(averageOf({ ...typed, birds }), 'kg', farm)} each
          </Text>
        )}
      </Group>
      <Failure error={tell.error} words={wordsOfRow(weighedFields, farm)} />
    </form>
  );
}

function Found({ weighed, farm }: { weighed: WeighedPart; farm: SavedFarm }) {
  const { speed, rows, even } = weighed;
  const takeBack = useTakeBack(farm.id);
  return (
    <>
      {speed && (
        <Text role="status">
          Your birds grow at <Num of={speed} /> of the plan’s pace (about <Range of={speed} />
          ). The plan goes by that.
        </Text>
      )}
      {even && <HowEven even={even} />}
      <Failure error={takeBack.error} />
      {[...rows].reverse().map((row) => (
        <WeighingLine
          key={row.id ?? row.on}
          row={row}
          farm={farm}
          onDelete={row.id === undefined ? undefined : () => takeBack.mutate(row.id!)}
        />
      ))}
    </>
  );
}

function WeighingLine({
  row,
  farm,
  onDelete,
}: {
  row: WeighingRow;
  farm: SavedFarm;
  onDelete: (() => void) | undefined;
}) {
  const day = useSayDate()(row.on);
  return (
    <ToldLine what={`the weighing of ${day}`} onDelete={onDelete}>
      {day}: {row.birds === 1 ? '1 bird' : `${row.birds} birds`}, <Num of={row.average} /> each
      {row.plannedKg !== undefined && `; planned before: ${formatValue(row.plannedKg, 'kg', farm)}`}
    </ToldLine>
  );
}
