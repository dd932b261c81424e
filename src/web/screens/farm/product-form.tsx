import { TextInput } from '@mantine/core';
import { problemsOfRow } from '../../../../shared/farm/check-row.js';
import {
  beddingProductFields,
  chickProductFields,
  mineralsProductFields,
  productFields,
  type ProductKind,
} from '../../../../shared/farm/product.js';
import { freePriceProblems } from '../../../../shared/farm/feed-product.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { useSave, type SavedFarm } from '../../api/queries.js';
import { messagesByField, wordsOfRow } from '../../fields/field-words.js';
import { draftKey } from '../../fields/kept-draft.js';
import { PriceInput } from '../../fields/price-input.js';
import { QuantityInput, typedText } from '../../fields/quantity-input.js';
import { RowForm, useRowForm } from '../../fields/row-form.js';
import { Select } from '../../fields/select.js';
import { OWN_COSTS, OwnCostFields } from './own-cost-fields.js';
import { FeedFields, MoreFeedFields } from './feed-fields.js';
import type { ProductDraft } from './product-kinds.js';

interface Props {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  readonly start: ProductDraft;
  readonly onDone: () => void;
}

/** One thing the place buys, or a cost of its own that no shop asks. */
export function ProductForm({ farm, tables, start, onDone }: Props) {
  const words = wordsOfRow(productFields[start.kind], farm);
  const save = useSave<ProductDraft>(farm.id, 'products', words);
  const form = useRowForm<ProductDraft>({
    keptAs: draftKey(farm.id, start.kind, start.id ?? 'new'),
    start,
    words,
    check: (draft) => ({
      ...messagesByField(
        [...problemsOfRow(productFields[draft.kind], draft), ...freePriceProblems(draft)],
        words,
      ),
      ...(draft.name?.trim() ? {} : { name: 'Give it a name.' }),
    }),
    save: (draft) => save.mutateAsync(draft),
    onDone,
  });
  const { draft, set, errorAt } = form;
  return (
    <RowForm form={form} onDone={onDone}>
      <TextInput
        label="Name"
        data-autofocus
        value={draft.name ?? ''}
        error={errorAt('name')}
        onChange={(e) => set({ name: e.currentTarget.value })}
      />
      {draft.kind === 'feed' && (
        <FeedFields farm={farm} tables={tables} draft={draft} set={set} errorAt={errorAt} />
      )}
      {draft.kind === 'chicks' && (
        <Select
          label={chickProductFields.fields.strainId.label}
          value={draft.strainId}
          error={errorAt('strainId')}
          onChange={(strainId) => set({ strainId })}
          options={tables.strains}
          none="Any breed"
        />
      )}
      {draft.kind === 'bedding' && (
        <QuantityInput
          field={beddingProductFields.fields.opensToM3}
          units={farm.units}
          value={draft.opensToM3}
          error={errorAt('opensToM3')}
          placeholder={typedText(
            tables.litter.bagLooseM3,
            beddingProductFields.fields.opensToM3,
            farm.units,
          )}
          onChange={(opensToM3) => set({ opensToM3 })}
        />
      )}
      {draft.kind === 'minerals' && (
        <>
          <QuantityInput
            field={mineralsProductFields.fields.bagKg}
            units={farm.units}
            value={draft.bagKg}
            error={errorAt('bagKg')}
            onChange={(bagKg) => set({ bagKg })}
          />
          <QuantityInput
            field={mineralsProductFields.fields.eatenGPerDay}
            units={farm.units}
            value={draft.eatenGPerDay}
            error={errorAt('eatenGPerDay')}
            placeholder={typedText(
              tables.judgements.buying.mineralsGPerDay.value,
              mineralsProductFields.fields.eatenGPerDay,
              farm.units,
            )}
            onChange={(eatenGPerDay) => set({ eatenGPerDay })}
          />
        </>
      )}
      {OWN_COSTS.has(draft.kind) && (
        <OwnCostFields farm={farm} tables={tables} draft={draft} set={set} errorAt={errorAt} />
      )}
      {draft.kind !== 'meat' && (
        <PriceInput
          label={PRICE_LABELS[draft.kind]}
          currency={farm.currency}
          value={draft.price}
          error={errorAt('price')}
          onChange={(price) => set({ price })}
        />
      )}
      {draft.kind === 'feed' && (
        <MoreFeedFields farm={farm} draft={draft} set={set} errorAt={errorAt} />
      )}
    </RowForm>
  );
}

const PRICE_LABELS = Object.fromEntries(
  Object.entries(productFields).map(([kind, { fields }]) => [kind, fields.price.label]),
) as Record<ProductKind, string>;
