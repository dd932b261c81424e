import { ActionIcon, Button, Checkbox, Group, Input, Stack, Text } from '@mantine/core';
import { IconTrash } from '@tabler/icons-react';
import {
  feedProductFields,
  mayCostFields,
  nutrientTagFields,
  priceBreakFields,
  type NutrientTag,
} from '../../../../shared/farm/feed-product.js';
import type { FeedProduct } from '../../../../shared/farm/product.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatPrice } from '../../../../shared/units/format.js';
import { useSuppliers } from '../../api/feed-queries.js';
import { farmDay, type SavedFarm } from '../../api/queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { DateField } from '../../fields/date-input.js';
import { NumberFields } from '../../fields/number-fields.js';
import { PriceInput } from '../../fields/price-input.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import type { useRowForm } from '../../fields/row-form.js';
import { Select } from '../../fields/select.js';
import { Folded } from '../../shell/folded.js';
import { feedPhases, type ProductDraft } from './product-kinds.js';

type Form = Pick<ReturnType<typeof useRowForm<ProductDraft>>, 'draft' | 'set' | 'errorAt'>;

const FORMS: readonly { readonly id: NonNullable<FeedProduct['form']>; readonly name: string }[] = [
  { id: 'crumble', name: 'Crumble' },
  { id: 'mash', name: 'Mash' },
  { id: 'pellets', name: 'Pellets' },
  { id: 'whole-grain', name: 'Whole grain' },
];

/** What makes a feed: what it is fed as, for which birds, and how large a bag is. */
export function FeedFields({
  farm,
  tables,
  draft,
  set,
  errorAt,
}: Form & { farm: SavedFarm; tables: Tables }) {
  const { fields } = feedProductFields;
  return (
    <>
      <Checkbox.Group
        size="md"
        label={fields.phaseIds.label}
        description="One feed can serve several phases."
        value={[...(draft.phaseIds ?? [])]}
        error={errorAt('phaseIds')}
        onChange={(phaseIds) => set({ phaseIds })}
      >
        <Group mt="xs">
          {feedPhases(tables).map(({ id, name }) => (
            <Checkbox key={id} size="md" value={id} label={name} />
          ))}
        </Group>
      </Checkbox.Group>
      <Select
        label={fields.feedFor.label}
        value={draft.feedFor}
        error={errorAt('feedFor')}
        onChange={(feedFor) => set({ feedFor })}
        options={[
          { id: 'meat', name: 'Meat birds' },
          { id: 'layers', name: 'Layers' },
        ]}
        none="Meat birds and layers"
      />
      <QuantityInput
        field={fields.bagKg}
        units={farm.units}
        value={draft.bagKg}
        error={errorAt('bagKg')}
        onChange={(bagKg) => set({ bagKg })}
      />
    </>
  );
}

/** What a feed can have beside its price: the seller, steps of the price, keeping, and its tag. */
export function MoreFeedFields({ farm, draft, set, errorAt }: Form & { farm: SavedFarm }) {
  const { fields } = feedProductFields;
  const { units } = farm;
  const suppliers = useSuppliers(farm.id).data ?? [];
  const number = (name: 'keepsDays' | 'withdrawalDays') => (
    <QuantityInput
      field={fields[name]}
      units={units}
      value={draft[name]}
      error={errorAt(name)}
      onChange={(value) => set({ [name]: value })}
    />
  );
  return (
    <>
      <Select
        label={fields.supplierId.label}
        value={draft.supplierId}
        error={errorAt('supplierId')}
        onChange={(supplierId) => set({ supplierId })}
        options={suppliers}
        none="Nobody in particular"
      />
      <PriceSteps farm={farm} draft={draft} set={set} errorAt={errorAt} />
      <Group align="flex-start" grow>
        <QuantityInput
          field={fields.storeBags}
          units={units}
          value={draft.storeBags}
          error={errorAt('storeBags')}
          onChange={(storeBags) =>
            set({
              storeBags,
              storeOn: storeBags === undefined ? undefined : (draft.storeOn ?? farmDay(farm)),
            })
          }
        />
        {draft.storeBags !== undefined && (
          <DateField
            label={fields.storeOn.label}
            value={draft.storeOn}
            error={errorAt('storeOn')}
            onChange={(storeOn) => set({ storeOn })}
          />
        )}
      </Group>
      <Folded id="feed-more" title="Keeping, medicine, tag" level={3}>
        <Stack gap="xs">
          <MayCost farm={farm} draft={draft} set={set} errorAt={errorAt} />
          {number('keepsDays')}
          {number('withdrawalDays')}
          <Select
            label={fields.form.label}
            value={draft.form}
            error={errorAt('form')}
            onChange={(form) => set({ form })}
            options={FORMS}
            none="Not known"
          />
          <TagFields farm={farm} draft={draft} set={set} errorAt={errorAt} />
          <EarlierPrices farm={farm} draft={draft} />
        </Stack>
      </Folded>
    </>
  );
}

/** The price of all bags of a trip, once there are so many of them. */
function PriceSteps({ farm, draft, set, errorAt }: Form & { farm: SavedFarm }) {
  const steps = draft.priceBreaks ?? [];
  const { fromBags, price } = priceBreakFields.fields;
  const change = (next: ProductDraft['priceBreaks']) =>
    set({ priceBreaks: next?.length === 0 ? undefined : next });
  const at = (k: number, step: Partial<(typeof steps)[number]>) =>
    change(steps.map((each, i) => (i === k ? { ...each, ...step } : each)));
  return (
    <Input.Wrapper
      size="md"
      label={feedProductFields.fields.priceBreaks.label}
      description="Where all bags of a trip cost less once there are so many"
      error={errorAt('priceBreaks')}
      component="fieldset"
      className="plain-fieldset"
    >
      <Stack gap="xs" align="flex-start" mt="xs">
        {steps.map((step, k) => (
          <Group key={k} align="flex-end" wrap="nowrap" gap="xs">
            <QuantityInput
              field={fromBags}
              units={farm.units}
              value={step.fromBags}
              error={errorAt(`priceBreaks.${k}.fromBags`)}
              onChange={(value) => at(k, { fromBags: value as number })}
            />
            <PriceInput
              label={price.label}
              currency={farm.currency}
              value={step.price}
              error={errorAt(`priceBreaks.${k}.price`)}
              onChange={(value) => at(k, { price: value as string })}
            />
            <ActionIcon
              variant="subtle"
              aria-label={`Remove step ${k + 1}`}
              onClick={() => change(steps.filter((_, i) => i !== k))}
            >
              <IconTrash aria-hidden />
            </ActionIcon>
          </Group>
        ))}
        <Button variant="light" onClick={() => change([...steps, {}])}>
          Add a price for more bags
        </Button>
      </Stack>
    </Input.Wrapper>
  );
}

/** How far its price may fall and rise. */
function MayCost({ farm, draft, set, errorAt }: Form & { farm: SavedFarm }) {
  const { low, high } = mayCostFields.fields;
  const change = (more: { low?: string | undefined; high?: string | undefined }) => {
    const next = { ...draft.mayCost, ...more };
    const isEmpty = next.low === undefined && next.high === undefined;
    set({ mayCost: isEmpty ? undefined : (next as ProductDraft['mayCost']) });
  };
  return (
    <Input.Wrapper
      size="md"
      label={feedProductFields.fields.mayCost.label}
      description="Left empty, as little and as much as it did in the last three years"
      component="fieldset"
      className="plain-fieldset"
    >
      <Group align="flex-start" grow mt="xs">
        <PriceInput
          label={low.label}
          currency={farm.currency}
          value={draft.mayCost?.low}
          error={errorAt('mayCost.low')}
          onChange={(value) => change({ low: value })}
        />
        <PriceInput
          label={high.label}
          currency={farm.currency}
          value={draft.mayCost?.high}
          error={errorAt('mayCost.high')}
          onChange={(value) => change({ high: value })}
        />
      </Group>
    </Input.Wrapper>
  );
}

const TAG_NAMES = Object.keys(nutrientTagFields.fields) as (keyof NutrientTag)[];

function TagFields({ farm, draft, set, errorAt }: Form & { farm: SavedFarm }) {
  const tag: NutrientTag = draft.tag ?? {};
  return (
    <NumberFields
      of={tag}
      names={TAG_NAMES}
      fields={nutrientTagFields.fields}
      units={farm.units}
      errorAt={(name) => errorAt(`tag.${name}`)}
      onChange={(next) => set({ tag: Object.keys(next).length === 0 ? undefined : next })}
    />
  );
}

/** What it cost before; prices are kept when another is saved. */
function EarlierPrices({ farm, draft }: { farm: SavedFarm; draft: ProductDraft }) {
  const sayDate = useSayDate();
  const earlier = draft.earlierPrices ?? [];
  if (earlier.length === 0) return null;
  return (
    <div>
      <Text fw={600}>{feedProductFields.fields.earlierPrices.label}</Text>
      {earlier.toReversed().map(({ price, until }) => (
        <Text key={until} size="sm">
          {formatPrice(price, farm.currency)} until {sayDate(until)}
        </Text>
      ))}
    </div>
  );
}
