import { SimpleGrid, TextInput } from '@mantine/core';
import { problemsOfRow } from '../../../../shared/farm/check-row.js';
import { freePriceProblems } from '../../../../shared/farm/feed-product.js';
import { ingredientProductFields } from '../../../../shared/farm/mix-ingredient.js';
import type { NumberField } from '../../../../shared/farm/field.js';
import { usualBagKg } from '../../../../shared/tables/usual-bag.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { useSave, type SavedFarm } from '../../api/queries.js';
import { messagesByField, wordsOfRow } from '../../fields/field-words.js';
import { draftKey } from '../../fields/kept-draft.js';
import { PriceInput } from '../../fields/price-input.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { RowForm, useRowForm } from '../../fields/row-form.js';
import { Select } from '../../fields/select.js';

/** An ingredient while it is being typed: anything may still be missing. */
export interface IngredientDraft {
  readonly id?: string | undefined;
  readonly kind: 'ingredient';
  readonly name?: string | undefined;
  readonly ingredientId?: string | undefined;
  readonly bagKg?: number | undefined;
  readonly price?: string | undefined;
  readonly fixedShare?: number | undefined;
  readonly mostShare?: number | undefined;
  readonly holds?: Readonly<Record<string, number | undefined>> | undefined;
}

/** A new one begins with the usual size of a bag. */
export const newIngredient = (tables: Tables, farm: Pick<SavedFarm, 'units'>): IngredientDraft => ({
  kind: 'ingredient',
  name: '',
  bagKg: usualBagKg(tables, farm),
});

const { fields } = ingredientProductFields;
const OWN_VALUES = Object.entries<NumberField>(fields.holds.row.fields as never);

interface Props {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  readonly start: IngredientDraft;
  readonly onDone: () => void;
}

/** What an ingredient costs, and what its bag says where that is known. */
export function IngredientForm({ farm, tables, start, onDone }: Props) {
  const words = wordsOfRow(ingredientProductFields, farm);
  const save = useSave<IngredientDraft>(farm.id, 'products', words);
  const form = useRowForm<IngredientDraft>({
    keptAs: draftKey(farm.id, 'ingredient', start.id ?? 'new'),
    start,
    words,
    check: (draft) => ({
      ...messagesByField(
        [...problemsOfRow(ingredientProductFields, draft), ...freePriceProblems(draft)],
        words,
      ),
      ...(draft.ingredientId === undefined ? { ingredientId: 'Choose what it is.' } : {}),
      ...(draft.name?.trim() ? {} : { name: 'Give it a name.' }),
    }),
    save: (draft) => save.mutateAsync(draft),
    onDone,
  });
  const { draft, set, errorAt } = form;
  const row = tables.ingredients.find(({ id }) => id === draft.ingredientId);
  return (
    <RowForm form={form} onDone={onDone}>
      <Select
        label={fields.ingredientId.label}
        value={draft.ingredientId}
        error={errorAt('ingredientId')}
        onChange={(ingredientId) =>
          set({
            ingredientId,
            name: tables.ingredients.find(({ id }) => id === ingredientId)?.name ?? draft.name,
          })
        }
        options={tables.ingredients}
        none="Choose"
      />
      <TextInput
        label={fields.name.label}
        value={draft.name ?? ''}
        error={errorAt('name')}
        onChange={(event) => set({ name: event.currentTarget.value })}
      />
      <PriceInput
        label={fields.price.label}
        description="What you grow costs what you could sell it for."
        currency={farm.currency}
        value={draft.price}
        error={errorAt('price')}
        onChange={(price) => set({ price })}
      />
      <QuantityInput
        field={fields.bagKg}
        units={farm.units}
        value={draft.bagKg}
        error={errorAt('bagKg')}
        onChange={(bagKg) => set({ bagKg })}
      />
      {row?.what === 'premix' && (
        <QuantityInput
          field={fields.fixedShare}
          units={farm.units}
          value={draft.fixedShare}
          error={errorAt('fixedShare')}
          onChange={(fixedShare) => set({ fixedShare })}
        />
      )}
      <QuantityInput
        field={fields.mostShare}
        units={farm.units}
        value={draft.mostShare}
        error={errorAt('mostShare')}
        onChange={(mostShare) => set({ mostShare })}
      />
      <details>
        <summary>What the bag says it holds</summary>
        <SimpleGrid cols={2}>
          {OWN_VALUES.map(([name, field]) => (
            <QuantityInput
              key={name}
              field={field}
              units={farm.units}
              value={draft.holds?.[name]}
              error={errorAt(`holds.${name}`)}
              onChange={(value) => set({ holds: heldWith(draft.holds, name, value) })}
            />
          ))}
        </SimpleGrid>
      </details>
    </RowForm>
  );
}

/** Own values with one of them changed; nothing where none is left. */
function heldWith(
  holds: IngredientDraft['holds'],
  name: string,
  value: number | undefined,
): IngredientDraft['holds'] {
  const entries = Object.entries({ ...holds, [name]: value }).filter(
    ([, each]) => each !== undefined,
  );
  return entries.length === 0 ? undefined : Object.fromEntries(entries);
}
