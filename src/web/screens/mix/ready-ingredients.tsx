import { Button, Checkbox, Group, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { problemsOfRow } from '../../../../shared/farm/check-row.js';
import { freePriceProblems } from '../../../../shared/farm/feed-product.js';
import { ingredientProductFields } from '../../../../shared/farm/mix-ingredient.js';
import { usualBagKg } from '../../../../shared/tables/usual-bag.js';
import type { Ingredient } from '../../../../shared/tables/ration-tables.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatValue } from '../../../../shared/units/format.js';
import { useSave, type SavedFarm } from '../../api/queries.js';
import { messagesByField, wordsOfRow } from '../../fields/field-words.js';
import { PriceInput } from '../../fields/price-input.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Failure } from '../../shell/states.js';
import type { IngredientDraft } from './ingredient-form.js';

interface Props {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  /** Ids of what the household has already. */
  readonly had: ReadonlySet<string>;
  readonly onDone: () => void;
}

const { fields } = ingredientProductFields;

/** In the order in which a mix is put together. */
const KINDS = ['grain', 'protein', 'mineral', 'premix', 'additive', 'fat'] as const;

/** Ready rows of the table: what the household can get is touched, and only its price is typed. */
export function ReadyIngredients({ farm, tables, had, onDone }: Props) {
  const words = wordsOfRow(ingredientProductFields, farm);
  const save = useSave<IngredientDraft>(farm.id, 'products', words);
  const [chosen, setChosen] = useState<ReadonlyMap<string, IngredientDraft>>(new Map());
  const rows = KINDS.flatMap((kind) =>
    tables.ingredients.filter(({ id, what }) => what === kind && !had.has(id)),
  );
  const put = (id: string, draft: IngredientDraft | undefined): void => {
    const next = new Map(chosen);
    if (draft) next.set(id, draft);
    else next.delete(id);
    setChosen(next);
  };
  const drafts = [...chosen.values()];
  const isWhole = drafts.every((draft) => problemsOf(draft).length === 0);
  const saveAll = async (): Promise<void> => {
    for (const [id, draft] of chosen) {
      await save.mutateAsync(draft);
      // What is saved is not saved again where a later one fails.
      setChosen((old) => new Map([...old].filter(([each]) => each !== id)));
    }
    onDone();
  };
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        // What went wrong is said by the mutation.
        if (isWhole && 0 < drafts.length) saveAll().catch(() => undefined);
      }}
    >
      <Stack gap="xs">
        {rows.map((row) => (
          <OneRow
            key={row.id}
            row={row}
            farm={farm}
            draft={chosen.get(row.id)}
            onChange={(draft) => put(row.id, draft)}
            bagKg={usualBagKg(tables, farm)}
          />
        ))}
        <Failure error={save.error} />
        <Group>
          <Button type="submit" disabled={drafts.length === 0 || !isWhole} loading={save.isPending}>
            {drafts.length < 2 ? 'Add it' : `Add these ${drafts.length}`}
          </Button>
        </Group>
      </Stack>
    </form>
  );
}

const problemsOf = (draft: IngredientDraft) => [
  ...problemsOfRow(ingredientProductFields, draft),
  ...freePriceProblems(draft),
];

interface OneProps {
  readonly row: Ingredient;
  readonly farm: SavedFarm;
  readonly draft: IngredientDraft | undefined;
  readonly onChange: (draft: IngredientDraft | undefined) => void;
  readonly bagKg: number;
}

function OneRow({ row, farm, draft, onChange, bagKg }: OneProps) {
  const { id, name } = row;
  const words = wordsOfRow(ingredientProductFields, farm);
  const errors = draft && messagesByField(problemsOf(draft), words);
  const fresh: IngredientDraft = { kind: 'ingredient', name, ingredientId: id, bagKg };
  return (
    <div>
      <Checkbox
        size="md"
        checked={draft !== undefined}
        onChange={() => onChange(draft ? undefined : fresh)}
        label={
          <>
            {name}{' '}
            <Text span size="sm" display="block">
              {holdsSaid(row, farm)}
            </Text>
          </>
        }
      />
      {draft && (
        <Group grow align="start" mt="xs" mb="sm">
          <PriceInput
            label={fields.price.label}
            aria-label={`${fields.price.label} of ${name}`}
            currency={farm.currency}
            value={draft.price}
            error={draft.price === undefined ? undefined : errors?.price}
            onChange={(price) => onChange({ ...draft, price })}
          />
          <QuantityInput
            field={fields.bagKg}
            units={farm.units}
            value={draft.bagKg}
            error={errors?.bagKg}
            onChange={(bagKg) => onChange({ ...draft, bagKg })}
          />
        </Group>
      )}
    </div>
  );
}

/** What it is in a mix for, as the table has it. */
function holdsSaid({ what, holds }: Ingredient, farm: SavedFarm): string {
  const percent = (value: number): string => formatValue(value, 'percent', farm);
  if (what === 'mineral')
    return [
      [holds.calciumPercent, 'calcium'] as const,
      [holds.phosphorusPercent, 'phosphorus'] as const,
      [holds.sodiumPercent, 'sodium'] as const,
    ]
      .filter(([value]) => 1 <= value)
      .map(([value, of]) => `${percent(value)} ${of}`)
      .join(', ');
  if (what === 'premix') return 'vitamins and trace minerals: every mix needs it';
  if (what === 'fat') return formatValue(holds.energyKcalPerKg, 'kcalPerKg', farm);
  return `${percent(holds.proteinPercent)} protein, ${formatValue(holds.energyKcalPerKg, 'kcalPerKg', farm)}`;
}
