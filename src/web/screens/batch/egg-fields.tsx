import { ActionIcon, Button, Group, SimpleGrid, Stack, Text } from '@mantine/core';
import { IconTrash } from '@tabler/icons-react';
import { useState } from 'react';
import { batchFields, eggCountFields, type EggCount } from '../../../../shared/farm/batch.js';
import type { Strain } from '../../../../shared/tables/bird-tables.js';
import { choicesFor } from '../../../../shared/tables/tables.js';
import { useSayDate } from '../../explain/say-date.js';
import { DateField } from '../../fields/date-input.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Select } from '../../fields/select.js';
import type { BatchDraft, Setting } from './use-plan.js';

const FIELDS = batchFields.fields;
const COUNT = eggCountFields.fields;

interface Props {
  readonly setting: Setting;
  readonly draft: BatchDraft;
  readonly errors: Readonly<Record<string, string>>;
  readonly strain: Strain;
  readonly onChange: (more: BatchDraft) => void;
}

/** What a household says of its eggs and how its hens are fed. */
export function EggFields({ setting, draft, errors, strain, onChange }: Props) {
  const { farm, tables } = setting;
  const quantity = (field: 'eggsWantedPerWeek' | 'ownEggsPerHen') => (
    <QuantityInput
      label={FIELDS[field].label}
      field={FIELDS[field]}
      units={farm.units}
      value={draft[field]}
      error={errors[field]}
      onChange={(value) => onChange({ [field]: value })}
    />
  );
  return (
    <>
      {quantity('eggsWantedPerWeek')}
      <Select
        label={FIELDS.layCurveId.label}
        value={draft.layCurveId ?? strain.layCurve}
        error={errors['layCurveId']}
        onChange={(id) => onChange({ layCurveId: id === strain.layCurve ? undefined : id })}
        options={choicesFor(tables.layCurves, strain.layCurve!)}
      />
      <Select
        label={FIELDS.feedProgramId.label}
        value={draft.feedProgramId ?? strain.feedProgram.layers}
        error={errors['feedProgramId']}
        onChange={(id) =>
          onChange({ feedProgramId: id === strain.feedProgram.layers ? undefined : id })
        }
        options={choicesFor(tables.feedPrograms, strain.feedProgram.layers!)}
      />
      {quantity('ownEggsPerHen')}
      <Counts
        farm={farm}
        counts={draft.eggCounts ?? []}
        onChange={(counts) => onChange({ eggCounts: counts.length === 0 ? undefined : counts })}
      />
    </>
  );
}

function Counts({
  farm,
  counts,
  onChange,
}: {
  farm: Setting['farm'];
  counts: readonly EggCount[];
  onChange: (counts: readonly EggCount[]) => void;
}) {
  const sayDate = useSayDate();
  const [next, setNext] = useState<Partial<EggCount>>({});
  const { from, days, eggs } = next;
  const isWhole = from !== undefined && 0 < (days ?? NaN) && 0 <= (eggs ?? NaN);
  return (
    <Stack gap="xs">
      <Text size="sm" fw={500}>
        {FIELDS.eggCounts.label}
      </Text>
      <Text size="sm" c="dimmed">
        What you counted corrects what is expected, the more the longer you counted.
      </Text>
      {counts.map((count, i) => (
        <Group key={`${count.from}-${i}`} gap="xs" justify="space-between" wrap="nowrap">
          <Text size="sm">
            {count.eggs} eggs in {count.days} days from {sayDate(count.from)}
          </Text>
          <ActionIcon
            color="stop"
            aria-label={`Remove the count from ${sayDate(count.from)}`}
            onClick={() => onChange(counts.filter((_, k) => k !== i))}
          >
            <IconTrash aria-hidden size={18} />
          </ActionIcon>
        </Group>
      ))}
      <DateField
        label={COUNT.from.label}
        value={from}
        onChange={(date) => setNext({ ...next, ...(date === undefined ? {} : { from: date }) })}
      />
      <SimpleGrid cols={2}>
        <QuantityInput
          field={COUNT.days}
          units={farm.units}
          value={days}
          onChange={(value) => setNext({ ...next, days: value! })}
        />
        <QuantityInput
          field={COUNT.eggs}
          units={farm.units}
          value={eggs}
          onChange={(value) => setNext({ ...next, eggs: value! })}
        />
      </SimpleGrid>
      <Button
        variant="default"
        disabled={!isWhole}
        onClick={() => {
          onChange([...counts, next as EggCount]);
          setNext({});
        }}
      >
        Add this count
      </Button>
    </Stack>
  );
}
