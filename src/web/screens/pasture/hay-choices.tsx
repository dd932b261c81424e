import { Button, NumberInput, SimpleGrid, Switch, Text } from '@mantine/core';
import { useState } from 'react';
import {
  pastureChoiceFields,
  type PastureChoices,
} from '../../../../shared/farm/pasture-choices.js';
import { rowById, type Tables } from '../../../../shared/tables/tables.js';
import { formatValue } from '../../../../shared/units/format.js';
import { useChoose } from '../../api/pasture-queries.js';
import type { SavedFarm } from '../../api/queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { DateField } from '../../fields/date-input.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { FormDialog } from '../../fields/form-dialog.js';
import { draftKey } from '../../fields/kept-draft.js';
import { RowForm, useRowForm } from '../../fields/row-form.js';
import { Select } from '../../fields/select.js';

type Draft = { -readonly [K in keyof PastureChoices]?: PastureChoices[K] | undefined };

const FIELDS = pastureChoiceFields.fields;

interface Props {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  readonly choices: PastureChoices;
  readonly today: string;
}

/** Whether hay is made, what lies in store, and how it is kept and fed. */
export function HayChoices(props: Props) {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <Button variant="light" mt="sm" onClick={() => setOpen(true)}>
        Hay: what you make, have and feed
      </Button>
      {isOpen && (
        <FormDialog title="Hay" onClose={() => setOpen(false)}>
          <HayForm {...props} onDone={() => setOpen(false)} />
        </FormDialog>
      )}
    </>
  );
}

function HayForm({
  farm,
  tables,
  choices,
  today,
  onDone,
}: Props & { readonly onDone: () => void }) {
  const choose = useChoose(farm);
  const form = useRowForm<Draft>({
    keptAs: draftKey(farm.id, 'hay'),
    start: choices,
    words: wordsOfRow(pastureChoiceFields, farm),
    save: (wanted) => choose.mutateAsync({ loaded: choices, wanted: wanted as PastureChoices }),
    onDone,
  });
  const { draft, set, errorAt } = form;
  const sayDate = useSayDate();
  const { bales, feeding, storing } = tables.pasture.hay;
  const bale = rowById(bales, draft.baleId ?? bales.at(-1)!.id);
  const { hayInStoreKg } = draft;
  const count = hayInStoreKg === undefined ? '' : Math.round((10 * hayInStoreKg) / bale.kg) / 10;
  return (
    <RowForm form={form} onDone={onDone}>
      <Switch
        label="We make hay of the grass that is left over"
        checked={draft.makesHay ?? true}
        onChange={(e) => set({ makesHay: e.currentTarget.checked })}
      />
      <SimpleGrid cols={{ base: 1, xs: 2 }}>
        <Select
          label={FIELDS.baleId.label}
          value={draft.baleId ?? bale.id}
          error={errorAt('baleId')}
          options={bales}
          onChange={(baleId) => set({ baleId })}
        />
        <NumberInput
          label="Bales in store now"
          hideControls
          value={count}
          min={0}
          error={errorAt('hayInStoreKg')}
          description={
            hayInStoreKg === undefined
              ? `one is about ${formatValue(bale.kg, 'kg', farm)}`
              : `${formatValue(hayInStoreKg, 'kg', farm)}${draft.hayInStoreOn === undefined ? '' : `, counted on ${sayDate(draft.hayInStoreOn)}`}`
          }
          onChange={(value) =>
            set(
              value === ''
                ? { hayInStoreKg: undefined, hayInStoreOn: undefined }
                : { hayInStoreKg: Number(value) * bale.kg, hayInStoreOn: today },
            )
          }
        />
        <Select
          label={FIELDS.storingId.label}
          value={draft.storingId ?? 'barn'}
          error={errorAt('storingId')}
          options={storing}
          onChange={(storingId) => set({ storingId })}
        />
        <Select
          label={FIELDS.feedingId.label}
          value={draft.feedingId ?? 'ring'}
          error={errorAt('feedingId')}
          options={feeding}
          onChange={(feedingId) => set({ feedingId })}
        />
        <DateField
          label={FIELDS.onHaySince.label}
          value={draft.onHaySince}
          error={errorAt('onHaySince')}
          description="the day by which the grass was grazed down"
          onChange={(onHaySince) => set({ onHaySince })}
        />
      </SimpleGrid>
      <Text size="sm">
        Weigh a few bales: what a bale holds differs by half, and all of it is counted by weight.
      </Text>
    </RowForm>
  );
}
