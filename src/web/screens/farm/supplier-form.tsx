import { Checkbox, Group, TextInput } from '@mantine/core';
import { problemsOfRow } from '../../../../shared/farm/check-row.js';
import { supplierFields, type Supplier } from '../../../../shared/farm/supplier.js';
import { formatWeekday } from '../../../../shared/units/dates.js';
import { useSave, type SavedFarm } from '../../api/queries.js';
import { messagesByField, wordsOfRow } from '../../fields/field-words.js';
import { draftKey } from '../../fields/kept-draft.js';
import { PriceInput } from '../../fields/price-input.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { RowForm, useRowForm } from '../../fields/row-form.js';
import { Select } from '../../fields/select.js';

export type SupplierDraft = { -readonly [K in keyof Supplier]?: Supplier[K] | undefined };

const COMES: readonly { readonly id: Supplier['comes']; readonly name: string }[] = [
  { id: 'fetched', name: 'You fetch it' },
  { id: 'delivered', name: 'It is delivered' },
];
const WEEK = [1, 2, 3, 4, 5, 6, 7];

/** Where feed is bought: what a trip costs, and when one can be. */
export function SupplierForm({
  farm,
  start,
  onDone,
}: {
  farm: SavedFarm;
  start: SupplierDraft;
  onDone: () => void;
}) {
  const words = wordsOfRow(supplierFields, farm);
  const save = useSave<SupplierDraft>(farm.id, 'suppliers', words);
  const form = useRowForm<SupplierDraft>({
    keptAs: draftKey(farm.id, 'supplier', start.id ?? 'new'),
    start,
    words,
    check: (draft) => ({
      ...messagesByField(problemsOfRow(supplierFields, draft), words),
      ...(draft.name?.trim() ? {} : { name: 'Give it a name.' }),
    }),
    save: (draft) => save.mutateAsync(draft),
    onDone,
  });
  const { draft, set, errorAt } = form;
  const { fields } = supplierFields;
  return (
    <RowForm form={form} onDone={onDone}>
      <TextInput
        label={fields.name.label}
        data-autofocus
        value={draft.name ?? ''}
        error={errorAt('name')}
        onChange={(e) => set({ name: e.currentTarget.value })}
      />
      <Select
        label={fields.comes.label}
        value={draft.comes}
        error={errorAt('comes')}
        options={COMES}
        onChange={(comes) => set({ comes })}
      />
      <PriceInput
        label={fields.tripCost.label}
        description="Fuel and fees, however much you buy"
        currency={farm.currency}
        value={draft.tripCost}
        error={errorAt('tripCost')}
        onChange={(tripCost) => set({ tripCost })}
      />
      {draft.comes === 'fetched' && (
        <QuantityInput
          field={fields.tripH}
          units={farm.units}
          value={draft.tripH}
          error={errorAt('tripH')}
          onChange={(tripH) => set({ tripH })}
        />
      )}
      <QuantityInput
        field={fields.leadDays}
        units={farm.units}
        value={draft.leadDays}
        error={errorAt('leadDays')}
        onChange={(leadDays) => set({ leadDays })}
      />
      <Checkbox
        size="md"
        label={fields.countsTogether.label}
        description="As of a mixed pallet; else each feed counts by itself"
        checked={draft.countsTogether ?? false}
        onChange={({ currentTarget: { checked } }) =>
          set({ countsTogether: checked ? true : undefined })
        }
      />
      <Checkbox.Group
        size="md"
        label={fields.openWeekdays.label}
        description="Tick none for every day"
        value={(draft.openWeekdays ?? []).map(String)}
        error={errorAt('openWeekdays')}
        onChange={(days) =>
          set({ openWeekdays: days.length === 0 ? undefined : days.map(Number).sort() })
        }
      >
        <Group gap="md" mt="xs">
          {WEEK.map((day) => (
            <Checkbox key={day} value={String(day)} label={formatWeekday(day)} />
          ))}
        </Group>
      </Checkbox.Group>
    </RowForm>
  );
}
