import { Button, Fieldset, Group, SimpleGrid, Stack, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import type { Circuit } from '../../../../shared/farm/facility.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { ApiError } from '../../api/client.js';
import { useSave, type SavedFarm } from '../../api/queries.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Failure } from '../../shell/states.js';
import { BrooderFields } from './brooder-fields.js';
import { KINDS, type Draft } from './kinds.js';

interface Props {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  readonly start: Draft;
  readonly circuits: readonly Circuit[];
  readonly onDone: () => void;
}

export function FacilityForm({ farm, tables, start, circuits, onDone }: Props) {
  const kind = KINDS.find((k) => k.kind === start.kind)!;
  const save = useSave<Draft>(farm.id, 'facilities');
  const form = useForm<Draft>({
    initialValues: start,
    validate: (draft) => ({
      name: draft.name.trim() ? null : 'Give it a name.',
      ...Object.fromEntries(
        kind.fields.map(({ name, optional }) => [
          name,
          optional || draft[name] !== undefined ? null : 'Give a number.',
        ]),
      ),
    }),
  });
  const { values, errors } = form;
  const set = (name: string, value: unknown) => form.setFieldValue(name as never, value as never);
  const submit = form.onSubmit(async (draft) => {
    try {
      await save.mutateAsync(draft);
      onDone();
    } catch (problem) {
      if (problem instanceof ApiError) form.setErrors(problem.byField);
    }
  });
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        <TextInput
          label="Name"
          data-autofocus
          value={values.name}
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
        <Failure error={save.error} />
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
