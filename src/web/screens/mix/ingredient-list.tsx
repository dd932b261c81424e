import { ActionIcon, Button, Checkbox, Group, Text } from '@mantine/core';
import { IconPencil, IconTrash } from '@tabler/icons-react';
import { useState } from 'react';
import type { IngredientProduct } from '../../../../shared/farm/mix-ingredient.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatPrice, formatValue } from '../../../../shared/units/format.js';
import { useRemove, type SavedFarm } from '../../api/queries.js';
import { FormDialog } from '../../fields/form-dialog.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { Empty } from '../../shell/empty.js';
import { Section } from '../../shell/section.js';
import { Failure } from '../../shell/states.js';
import { IngredientForm, newIngredient, type IngredientDraft } from './ingredient-form.js';
import { ReadyIngredients } from './ready-ingredients.js';

interface Props {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  readonly ingredients: readonly IngredientProduct[];
  readonly leftOut: ReadonlySet<string>;
  readonly onLeaveOut: (ids: ReadonlySet<string>) => void;
}

/** What the household can mix of, each with its price; what is not ticked stays out of the mix. */
export function IngredientList({ farm, tables, ingredients, leftOut, onLeaveOut }: Props) {
  const [draft, setDraft] = useState<IngredientDraft>();
  const remove = useRemove(farm, 'products');
  const [isChoosing, setChoosing] = useState(false);
  const had = new Set(ingredients.map(({ ingredientId }) => ingredientId));
  const add = (
    <Group>
      <Button variant="light" onClick={() => setChoosing(true)}>
        {ingredients.length === 0 ? 'Choose what you can get' : 'Choose more'}
      </Button>
      <Button variant="default" onClick={() => setDraft(newIngredient(tables, farm))}>
        Add an ingredient
      </Button>
    </Group>
  );
  const toggle = (id: string) => {
    const ids = new Set(leftOut);
    if (!ids.delete(id)) ids.add(id);
    onLeaveOut(ids);
  };
  return (
    <div className="no-print">
      <Section title="What you can mix of">
        <Failure error={remove.error} />
        {ingredients.length === 0 && (
          <Empty text="Add what you can buy or grow, with its price: corn, soybean meal, limestone, a phosphate, salt and a vitamin premix make a whole feed.">
            {add}
          </Empty>
        )}
        <div className="rows">
          {ingredients.map((each) => (
            <Group key={each.id} justify="space-between" wrap="nowrap">
              <Checkbox
                size="md"
                checked={!leftOut.has(each.id)}
                onChange={() => toggle(each.id)}
                label={
                  <>
                    {each.name}{' '}
                    <Text span size="sm" display="block">
                      {aboutPrice(each, farm)}
                    </Text>
                  </>
                }
              />
              <Group gap={0} wrap="nowrap">
                <ActionIcon aria-label={`Change ${each.name}`} onClick={() => setDraft(each)}>
                  <IconPencil aria-hidden />
                </ActionIcon>
                <ConfirmButton
                  px={10}
                  label={`Delete ${each.name}`}
                  question={`Delete ${each.name} and its price?`}
                  onConfirm={() => remove.mutate(each)}
                >
                  <IconTrash aria-hidden />
                </ConfirmButton>
              </Group>
            </Group>
          ))}
        </div>
        {0 < ingredients.length && <Group mt="sm">{add}</Group>}
      </Section>
      <FormDialog
        isOpen={isChoosing}
        onClose={() => setChoosing(false)}
        title="What you can get, and its price"
      >
        <ReadyIngredients farm={farm} tables={tables} had={had} onDone={() => setChoosing(false)} />
      </FormDialog>
      <FormDialog
        isOpen={draft !== undefined}
        onClose={() => setDraft(undefined)}
        title={draft?.id === undefined ? 'Add an ingredient' : 'Change an ingredient'}
      >
        {draft && (
          <IngredientForm
            farm={farm}
            tables={tables}
            start={draft}
            onDone={() => setDraft(undefined)}
          />
        )}
      </FormDialog>
    </div>
  );
}

const aboutPrice = ({ price, bagKg }: IngredientProduct, farm: SavedFarm): string =>
  `${formatPrice(price, farm.currency)} for ${formatValue(bagKg, 'kg', farm)}`;
