import { Fieldset, SimpleGrid, TextInput } from '@mantine/core';
import { facilityFields, type Circuit } from '../../../../shared/farm/facility.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { useSave, type SavedFarm } from '../../api/queries.js';
import { messagesByField, wordsOfRow } from '../../fields/field-words.js';
import { draftKey } from '../../fields/kept-draft.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { RowForm, useRowForm } from '../../fields/row-form.js';
import { Select } from '../../fields/select.js';
import { BrooderFields } from './brooder-fields.js';
import { KINDS, problemsOfDraft, sizesOf, type Draft } from './kinds.js';

interface Props {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  readonly start: Draft;
  readonly circuits: readonly Circuit[];
  readonly onDone: () => void;
}

const SIDES = [
  { id: 'closed', name: 'Roof and windward side closed' },
  { id: 'open', name: 'Open' },
] as const;

export function FacilityForm({ farm, tables, start, circuits, onDone }: Props) {
  const kind = KINDS.find((k) => k.kind === start.kind)!;
  const words = wordsOfRow(facilityFields[start.kind], farm);
  const save = useSave<Draft>(farm.id, 'facilities', words);
  const form = useRowForm<Draft>({
    keptAs: draftKey(farm.id, start.kind, start.id ?? 'new'),
    start,
    words,
    check: (draft) => ({
      ...messagesByField(problemsOfDraft(draft), words),
      ...(draft.name?.trim() ? {} : { name: 'Give it a name.' }),
    }),
    save: (draft) => save.mutateAsync(draft),
    onDone,
  });
  const { draft, errorAt, set: setPart } = form;
  const set = (name: string, value: unknown) => setPart({ [name]: value } as Partial<Draft>);
  return (
    <RowForm form={form} onDone={onDone}>
      <TextInput
        label="Name"
        data-autofocus
        value={draft.name ?? ''}
        error={errorAt('name')}
        onChange={(e) => set('name', e.currentTarget.value)}
      />
      <Fieldset legend="Size">
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          {sizesOf(kind).map(([name, field]) => (
            <QuantityInput
              key={name}
              label={field.isOptional ? `${field.label} (optional)` : field.label}
              field={field}
              units={farm.units}
              value={draft[name] as number | undefined}
              error={errorAt(name)}
              onChange={(v) => set(name, v)}
            />
          ))}
        </SimpleGrid>
      </Fieldset>
      {draft.kind === 'field-pen' && (
        <Select
          label={facilityFields['field-pen'].fields.sides.label}
          description="A wet or windblown bird stands far less cold."
          value={draft['sides'] as 'closed' | 'open' | undefined}
          error={errorAt('sides')}
          onChange={(v) => set('sides', v)}
          options={SIDES}
          none="Not known"
        />
      )}
      {draft.kind === 'brooder' && (
        <BrooderFields
          values={draft}
          errorAt={errorAt}
          set={set}
          tables={tables}
          units={farm.units}
          circuits={circuits}
        />
      )}
    </RowForm>
  );
}
