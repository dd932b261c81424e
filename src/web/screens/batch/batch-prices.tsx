import { Anchor, Button, SimpleGrid, Text } from '@mantine/core';
import { Link } from 'wouter';
import { arrivalAgeDaysOf, hatchesHere, isStarted } from '../../../../shared/farm/batch-origin.js';
import { batchPriceFields, type Batch } from '../../../../shared/farm/batch.js';
import { productFields } from '../../../../shared/farm/product.js';
import {
  productsOfPrices,
  withoutPrice,
  type KeptProduct,
} from '../../../../shared/plan/kept-prices.js';
import {
  bagOf,
  beddingBag,
  chickPrice,
  goodPrice,
  processingPrice,
  type PriceOfOne,
} from '../../../../shared/plan/prices.js';
import type { FeedProgram, Strain } from '../../../../shared/tables/bird-tables.js';
import { rowById } from '../../../../shared/tables/tables.js';
import { formatValue } from '../../../../shared/units/format.js';
import { useSave } from '../../api/queries.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { PriceInput } from '../../fields/price-input.js';
import { Failure } from '../../shell/states.js';
import type { BatchDraft, Setting } from './use-plan.js';

const PRICES = batchPriceFields.fields;

interface Props {
  readonly setting: Setting;
  readonly draft: BatchDraft;
  readonly strain: Strain;
  readonly onChange: (more: BatchDraft) => void;
}

/** Whether a feed is over before birds of an age: they never get it here. */
function endsBefore({ phases }: FeedProgram, k: number, ageDays: number): boolean {
  const next = phases[k + 1]?.fromDay;
  return typeof next === 'number' && next <= ageDays;
}

/** Prices of one batch: the place's stand in the empty boxes, and what is typed counts here alone. */
export function BatchPrices({ setting, draft, strain, onChange }: Props) {
  const { farm, picture, tables } = setting;
  const { currency } = farm;
  const purpose = draft.purpose ?? 'meat';
  const prices = draft.prices ?? {};
  const batch = { ...without(draft), purpose, strainId: strain.id };
  const asked = { farm, batch, products: picture.products, tables };
  const { prices: _typed, ...unpriced } = batch;
  const ofPlace = { ...asked, batch: unpriced };
  const program = rowById(tables.feedPrograms, draft.feedProgramId ?? strain.feedProgram[purpose]!);
  const ageDays = isStarted(draft) ? arrivalAgeDaysOf({ hatchToArrivalDays: 0, ...batch }) : 0;
  const phases = program.phases.filter((_, k) => !endsBefore(program, k, ageDays));
  const set = (more: Batch['prices']) => onChange({ prices: some({ ...prices, ...more }) });
  const one = (
    name:
      | 'perBird'
      | 'perEgg'
      | 'beddingPerBag'
      | 'processingPerBird'
      | 'iceBag'
      | 'freezerBag'
      | 'eggDozen',
    price?: PriceOfOne,
    label = PRICES[name].label,
  ) => (
    <PriceInput
      label={label}
      description={price?.product}
      placeholder={price?.price}
      currency={currency}
      value={prices[name]}
      onChange={(value) => set({ [name]: value })}
    />
  );
  return (
    <>
      <Text size="sm" c="dimmed">
        A gray price is your place’s, with its size of bag:{' '}
        <Anchor component={Link} href={`/farm/${farm.id}/place`} inherit>
          prices of your place
        </Anchor>
        . What you type counts for this batch alone.
      </Text>
      <SimpleGrid cols={2}>
        {hatchesHere(draft)
          ? one('perEgg')
          : one('perBird', chickPrice(ofPlace), isStarted(draft) ? 'A pullet' : undefined)}
        {one('beddingPerBag', beddingBag(ofPlace).price)}
        {phases.map((phase) => {
          const { price } = bagOf(ofPlace, phase.id);
          const { bagKg } = bagOf(asked, phase.id);
          return (
            <PriceInput
              key={phase.id}
              label={`${phase.name}, a bag of ${formatValue(bagKg, 'kg', farm)}`}
              description={price?.product}
              placeholder={price?.price}
              currency={currency}
              value={prices.feedPerBag?.[phase.id]}
              onChange={(value) =>
                set({ feedPerBag: some({ ...prices.feedPerBag, [phase.id]: value }) })
              }
            />
          );
        })}
        {purpose === 'layers' && one('eggDozen')}
        {one('processingPerBird', processingPrice(ofPlace))}
        {purpose === 'meat' && one('iceBag', goodPrice(ofPlace, 'ice'))}
        {purpose === 'meat' && one('freezerBag', goodPrice(ofPlace, 'freezer-bags'))}
      </SimpleGrid>
      <KeepPrices setting={setting} batch={batch} onKept={onChange} />
    </>
  );
}

/** Makes the typed prices those of the place, so that the next batch begins with them. */
function KeepPrices({
  setting: { farm, picture, tables },
  batch,
  onKept,
}: {
  setting: Setting;
  batch: Parameters<typeof productsOfPrices>[0];
  onKept: (more: BatchDraft) => void;
}) {
  const words = wordsOfRow(productFields.feed, farm);
  const save = useSave<KeptProduct>(farm.id, 'products', words);
  const products = productsOfPrices(batch, picture, tables);
  if (products.length === 0) return null;
  const keep = async () => {
    let prices = batch.prices!;
    for (const product of products) {
      await save.mutateAsync(product);
      // Should the next one fail, what is kept is not kept twice.
      prices = withoutPrice(prices, product);
      onKept({ prices });
    }
    onKept({ prices: Object.keys(prices).length === 0 ? undefined : prices, bagKg: undefined });
  };
  return (
    <>
      <Button variant="light" loading={save.isPending} onClick={() => void keep()}>
        Keep for every batch
      </Button>
      <Failure error={save.error} words={words} />
    </>
  );
}

/** Prices that are given; an emptied box is none. */
const some = <T extends object>(values: T) =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as never;

const without = (draft: BatchDraft): Partial<Batch> => some(draft);
