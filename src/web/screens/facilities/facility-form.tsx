import { Button, Fieldset, Group, SimpleGrid, Stack, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useState } from 'react';
import type { Circuit } from '../../../../shared/farm/facility.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { useSave, type SavedFarm } from '../../api/queries.js';
import { messagesByField, problemsIn } from '../../fields/field-words.js';
import {
  draftKey,
  dropDraft,
  keepDraft,
  readDraft,
  UnsavedNote,
  writeDraft,
} from '../../fields/kept-draft.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Failure } from '../../shell/states.js';
import { BrooderFields } from './brooder-fields.js';
import { KINDS, labelOfFacility, problemsOfDraft, type Draft } from './kinds.js';

interface Props {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  readonly start: Draft;
  readonly circuits: readonly Circuit[];
  readonly onDone: () => void;
}

export function FacilityForm(props: Props) {
  const [discards, setDiscards] = useState(0);
  return <Fields key={discards} {...props} onDiscard={() => setDiscards(discards + 1)} />;
}

function Fields({
  farm,
  tables,
  start,
  circuits,
  onDone,
  onDiscard,
}: Props & { onDiscard: () => void }) {
  const kind = KINDS.find((k) => k.kind === start.kind)!;
  const save = useSave<Draft>(farm.id, 'facilities');
  const words = { labelOf: labelOfFacility(start.kind), reader: farm };
  const key = draftKey(farm.id, start.kind, start.id ?? 'new');
  const [kept] = useState(() => readDraft<Draft>(key));
  const isRestored = kept !== undefined;
  const form = useForm<Draft>({
    initialValues: kept ?? start,
    onValuesChange: (draft) => keepDraft(key, draft, start),
    validate: (draft) => ({
      ...(draft.name?.trim() ? {} : { name: 'Give it a name.' }),
      ...messagesByField(problemsOfDraft(draft), words),
    }),
  });
  const { values, errors } = form;
  const set = (name: string, value: unknown) => form.setFieldValue(name as never, value as never);
  const submit = form.onSubmit(async (draft) => {
    dropDraft(key);
    try {
      await save.mutateAsync(draft);
      onDone();
    } catch (problem) {
      writeDraft(key, draft);
      form.setErrors(messagesByField(problemsIn(problem), words));
    }
  });
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        {(isRestored || JSON.stringify(values) !== JSON.stringify(start)) && (
          <UnsavedNote
            isRestored={isRestored}
            onDiscard={() => {
              dropDraft(key);
              onDiscard();
            }}
          />
        )}
        <TextInput
          label="Name"
          data-autofocus
          value={values.name ?? ''}
          error={errors['name']}
          onChange={(e) => set('name', e.currentTarget.value)}
        />
        <Fieldset legend="Size">
          <SimpleGrid cols={{ base: 1, xs: 2 }}>
            {kind.fields.map(({ name, label, bound, optional }) => (
              <QuantityInput
                key={name}
                label={optional ? `${label} (optional)` : label}
                bound={bound}
                units={farm.units}
                value={values[name] as number | undefined}
                error={errors[name]}
                onChange={(v) => set(name, v)}
              />
            ))}
          </SimpleGrid>
        </Fieldset>
        {values.kind === 'brooder' && (
          <BrooderFields
            values={values}
            errors={errors}
            set={set}
            tables={tables}
            units={farm.units}
            circuits={circuits}
          />
        )}
        <Failure error={save.error} words={words} />
        <Group>
          <Button type="submit" loading={form.submitting}>
            Save
          </Button>
          <Button variant="subtle" onClick={onDone}>
            Back
          </Button>
        </Group>
      </Stack>
    </form>
  );
}
