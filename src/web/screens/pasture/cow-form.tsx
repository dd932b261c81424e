import { SimpleGrid, Text, Textarea, TextInput } from '@mantine/core';
import { cowFields, type Cow } from '../../../../shared/farm/cow.js';
import type { Herd } from '../../../../shared/farm/herd.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { useSave, type SavedFarm } from '../../api/queries.js';
import { DateField } from '../../fields/date-input.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { QuantityInput, typedText } from '../../fields/quantity-input.js';
import { draftKey } from '../../fields/kept-draft.js';
import { RowForm, useRowForm } from '../../fields/row-form.js';
import { Select } from '../../fields/select.js';
import { GirthWeight } from './girth-weight.js';

type Draft = { -readonly [K in keyof Cow]?: Cow[K] | undefined };

const FIELDS = cowFields.fields;

/** One cow by name: which herd and class she is one of, and what is known of her alone. */
export function CowForm({
  farm,
  tables,
  herds,
  herd,
  start,
  onDone,
}: {
  farm: SavedFarm;
  tables: Tables;
  herds: readonly Herd[];
  /** The herd that a new one is named in. */
  herd: Herd;
  start: Cow | undefined;
  onDone: () => void;
}) {
  const words = wordsOfRow(cowFields, farm);
  const save = useSave<Draft>(farm.id, 'cows', words);
  const form = useRowForm<Draft>({
    keptAs: draftKey(farm.id, 'cow', start?.id ?? 'new'),
    start: start ?? { name: '', herdId: herd.id, classId: herd.groups[0]!.classId },
    words,
    save: (ready) => save.mutateAsync(ready),
    onDone,
  });
  const { draft, set, errorAt } = form;
  const chosen = herds.find(({ id }) => id === draft.herdId) ?? herd;
  const group = chosen.groups.find(({ classId }) => classId === draft.classId);
  const of = tables.cattle.classes.find(({ id }) => id === draft.classId);
  const classIds = new Set([draft.classId, ...chosen.groups.map(({ classId }) => classId)]);
  const textOf = (typed: string): string | undefined => (typed === '' ? undefined : typed);
  return (
    <RowForm form={form} onDone={onDone}>
      <Text size="sm">
        She is one of the head of her group and is not counted again. What is left empty is as it is
        for the group.
      </Text>
      <SimpleGrid cols={{ base: 1, xs: 2 }}>
        <TextInput
          label={FIELDS.name.label}
          value={draft.name ?? ''}
          error={errorAt('name')}
          data-autofocus
          onChange={(e) => set({ name: e.currentTarget.value })}
        />
        <TextInput
          label={FIELDS.earTag.label}
          value={draft.earTag ?? ''}
          error={errorAt('earTag')}
          onChange={(e) => set({ earTag: textOf(e.currentTarget.value) })}
        />
        <Select
          label={FIELDS.herdId.label}
          value={draft.herdId}
          error={errorAt('herdId')}
          options={herds}
          onChange={(herdId) => set({ herdId })}
        />
        <Select
          label={FIELDS.classId.label}
          value={draft.classId}
          error={errorAt('classId')}
          options={tables.cattle.classes.filter(({ id }) => classIds.has(id))}
          onChange={(classId) => set({ classId })}
        />
        <DateField
          label={FIELDS.bornOn.label}
          value={draft.bornOn}
          error={errorAt('bornOn')}
          onChange={(bornOn) => set({ bornOn })}
        />
        {(['weightKg', 'gainKgPerDay', 'milkKgPerDay'] as const)
          .filter((name) => name !== 'milkKgPerDay' || 0 < (of?.milkKgPerDay ?? 0))
          .map((name) => (
            <QuantityInput
              key={name}
              field={FIELDS[name]}
              units={farm.units}
              value={draft[name]}
              error={errorAt(name)}
              placeholder={typedText(group?.[name] ?? of?.[name], FIELDS[name], farm.units)}
              onChange={(value) => set({ [name]: value })}
            />
          ))}
        <GirthWeight
          units={farm.units}
          tables={tables}
          onWeight={(weightKg) => set({ weightKg })}
        />
        {(['bredOn', 'calvesOn'] as const).map((name) => (
          <DateField
            key={name}
            label={FIELDS[name].label}
            value={draft[name]}
            error={errorAt(name)}
            onChange={(value) => set({ [name]: value })}
          />
        ))}
        {draft.bredOn !== undefined && (
          <Select
            label={FIELDS.breedId.label}
            value={draft.breedId ?? group?.breedId ?? 'all'}
            error={errorAt('breedId')}
            options={tables.gestation.breeds}
            onChange={(breedId) => set({ breedId })}
          />
        )}
      </SimpleGrid>
      <Textarea
        label={FIELDS.notes.label}
        autosize
        value={draft.notes ?? ''}
        error={errorAt('notes')}
        onChange={(e) => set({ notes: textOf(e.currentTarget.value) })}
      />
    </RowForm>
  );
}
