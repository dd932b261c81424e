import { Button, SimpleGrid, Text } from '@mantine/core';
import type { Batch } from '../../../../shared/farm/batch.js';
import { batchChoiceFields, type BatchChoice } from '../../../../shared/farm/batch-choice.js';
import { problemsOfRow } from '../../../../shared/farm/check-row.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import type { SavedFarm } from '../../api/queries.js';
import { DateField } from '../../fields/date-input.js';
import { messagesByField, wordsOfRow } from '../../fields/field-words.js';
import { PriceInput } from '../../fields/price-input.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Select } from '../../fields/select.js';
import { breedsFor, feedsFor, MOST, type Varied } from './varied.js';

interface Props {
  readonly varied: Varied;
  readonly batch: Batch;
  readonly farm: SavedFarm;
  readonly tables: Tables;
  readonly choices: readonly BatchChoice[];
  readonly onChange: (choices: readonly BatchChoice[]) => void;
}

const { fields } = batchChoiceFields;

/** A box a column beside the first. */
export function ChoiceFields({ choices, onChange, ...rest }: Props) {
  const set = (k: number, choice: BatchChoice) => onChange(choices.with(k, choice));
  if (choices.length === 0)
    return <Text>There is only one way of that for these birds. Change something else.</Text>;
  return (
    <SimpleGrid cols={{ base: 1, sm: MOST }} className="no-print" style={{ alignItems: 'end' }}>
      {choices.map((choice, k) => (
        <OneField key={k} {...rest} choice={choice} onChange={(next) => set(k, next)} />
      ))}
      {choices.length < MOST && (
        <Button variant="default" onClick={() => onChange([...choices, choices.at(-1)!])}>
          One more
        </Button>
      )}
    </SimpleGrid>
  );
}

function OneField({
  varied,
  batch,
  farm,
  tables,
  choice,
  onChange,
}: Omit<Props, 'choices' | 'onChange'> & {
  choice: BatchChoice;
  onChange: (choice: BatchChoice) => void;
}) {
  const words = wordsOfRow(batchChoiceFields, farm);
  const error = messagesByField(problemsOfRow(batchChoiceFields, choice), words)[varied];
  if (varied === 'strainId' || varied === 'feedProgramId')
    return (
      <Select
        label={fields[varied].label}
        value={choice[varied]}
        onChange={(id) => id !== undefined && onChange({ [varied]: id })}
        options={varied === 'strainId' ? breedsFor(batch, tables) : feedsFor(batch, tables)}
      />
    );
  if (varied === 'arrivalDate')
    return (
      <DateField
        label={fields.arrivalDate.label}
        value={choice.arrivalDate}
        error={error}
        onChange={(arrivalDate) => arrivalDate !== undefined && onChange({ arrivalDate })}
      />
    );
  if (varied === 'ownMixPerBag')
    return (
      <PriceInput
        label={fields.ownMixPerBag.label}
        description="As large a bag as you buy."
        currency={farm.currency}
        value={choice.ownMixPerBag}
        error={error}
        onChange={(ownMixPerBag) => onChange(ownMixPerBag === undefined ? {} : { ownMixPerBag })}
      />
    );
  return (
    <QuantityInput
      field={fields[varied]}
      units={farm.units}
      value={choice[varied]}
      error={error}
      onChange={(value) => onChange(value === undefined ? {} : { [varied]: value })}
    />
  );
}
