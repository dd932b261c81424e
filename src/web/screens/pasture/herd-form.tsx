import { Button, Fieldset, SimpleGrid, TextInput } from '@mantine/core';
import {
  cattleGroupFields,
  herdFields,
  type CattleGroup,
  type Herd,
} from '../../../../shared/farm/herd.js';
import type { Paddock } from '../../../../shared/farm/paddock.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { useSave, type SavedBatch, type SavedFarm } from '../../api/queries.js';
import { DateField } from '../../fields/date-input.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { NumberFields } from '../../fields/number-fields.js';
import { QuantityInput, typedText } from '../../fields/quantity-input.js';
import { draftKey } from '../../fields/kept-draft.js';
import { RowForm, useRowForm } from '../../fields/row-form.js';
import { Select } from '../../fields/select.js';
import { GirthWeight } from './girth-weight.js';

type GroupDraft = { -readonly [K in keyof CattleGroup]?: CattleGroup[K] | undefined };
type Draft = Omit<{ -readonly [K in keyof Herd]?: Herd[K] | undefined }, 'groups'> & {
  groups?: readonly GroupDraft[];
};

const FIELDS = herdFields.fields;
const GROUP = cattleGroupFields.fields;

/** One herd: its classes of cattle, where it is, who follows. */
export function HerdForm({
  farm,
  tables,
  paddocks,
  batches,
  start,
  onDone,
}: {
  farm: SavedFarm;
  tables: Tables;
  paddocks: readonly Paddock[];
  batches: readonly SavedBatch[];
  start: Herd | undefined;
  onDone: () => void;
}) {
  const words = wordsOfRow(herdFields, farm);
  const save = useSave<Draft>(farm.id, 'herds', words);
  const form = useRowForm<Draft>({
    keptAs: draftKey(farm.id, 'herd', start?.id ?? 'new'),
    start: start ?? { name: '', groups: [{ classId: 'cow-calf', head: 4 }] },
    words,
    save: (ready) => save.mutateAsync(ready),
    onDone,
  });
  const { draft, set, errorAt } = form;
  const groups = draft.groups ?? [];
  const setGroup = (k: number, part: GroupDraft) =>
    set({ groups: groups.map((each, i) => (i === k ? { ...each, ...part } : each)) });
  return (
    <RowForm form={form} onDone={onDone}>
      <TextInput
        label={FIELDS.name.label}
        value={draft.name ?? ''}
        error={errorAt('name')}
        data-autofocus
        onChange={(e) => set({ name: e.currentTarget.value })}
      />
      {groups.map((group, k) => {
        const of = tables.cattle.classes.find((c) => c.id === group.classId);
        const error = (name: string) => errorAt(`groups.${k}.${name}`);
        return (
          <Fieldset key={k} legend={`Group ${k + 1}${group.leftAs ? ', gone as told' : ''}`}>
            <SimpleGrid cols={{ base: 1, xs: 2 }}>
              <Select
                label={GROUP.classId.label}
                value={group.classId}
                error={error('classId')}
                options={tables.cattle.classes}
                onChange={(classId) => setGroup(k, { classId })}
              />
              <QuantityInput
                field={GROUP.head}
                units={farm.units}
                value={group.head}
                error={error('head')}
                onChange={(head) => setGroup(k, { head })}
              />
              <QuantityInput
                field={GROUP.weightKg}
                units={farm.units}
                value={group.weightKg}
                error={error('weightKg')}
                placeholder={typedText(of?.weightKg, GROUP.weightKg, farm.units)}
                onChange={(weightKg) => setGroup(k, { weightKg })}
              />
              <GirthWeight
                units={farm.units}
                tables={tables}
                onWeight={(weightKg) => setGroup(k, { weightKg })}
              />
              <QuantityInput
                field={GROUP.gainKgPerDay}
                units={farm.units}
                value={group.gainKgPerDay}
                error={error('gainKgPerDay')}
                placeholder={typedText(of?.gainKgPerDay, GROUP.gainKgPerDay, farm.units)}
                onChange={(gainKgPerDay) => setGroup(k, { gainKgPerDay })}
              />
              {0 < (of?.milkKgPerDay ?? 0) && (
                <QuantityInput
                  field={GROUP.milkKgPerDay}
                  units={farm.units}
                  value={group.milkKgPerDay}
                  error={error('milkKgPerDay')}
                  placeholder={typedText(of?.milkKgPerDay, GROUP.milkKgPerDay, farm.units)}
                  onChange={(milkKgPerDay) => setGroup(k, { milkKgPerDay })}
                />
              )}
              {of?.equation === 'nrc-dairy' && (
                <QuantityInput
                  field={GROUP.grainKgPerDay}
                  units={farm.units}
                  value={group.grainKgPerDay}
                  error={error('grainKgPerDay')}
                  onChange={(grainKgPerDay) => setGroup(k, { grainKgPerDay })}
                />
              )}
              {(['arrivesOn', 'leavesOn', 'bredOn', 'calvesOn'] as const).map((name) => (
                <DateField
                  key={name}
                  label={GROUP[name].label}
                  value={group[name]}
                  error={error(name)}
                  onChange={(value) => setGroup(k, { [name]: value })}
                />
              ))}
              {group.arrivesOn !== undefined && (
                <TextInput
                  label={GROUP.apartIn.label}
                  description="If others are there: a pen, or a paddock by its name"
                  value={group.apartIn ?? ''}
                  error={error('apartIn')}
                  onChange={({ currentTarget: { value } }) =>
                    setGroup(k, { apartIn: value === '' ? undefined : value })
                  }
                />
              )}
              {group.arrivesOn !== undefined && (
                <QuantityInput
                  field={GROUP.apartDays}
                  units={farm.units}
                  value={group.apartDays}
                  error={error('apartDays')}
                  placeholder={typedText(
                    tables.pasture.quarantineDays.value,
                    GROUP.apartDays,
                    farm.units,
                  )}
                  onChange={(apartDays) => setGroup(k, { apartDays })}
                />
              )}
              {group.bredOn !== undefined && (
                <Select
                  label={GROUP.breedId.label}
                  value={group.breedId ?? 'all'}
                  error={error('breedId')}
                  options={tables.gestation.breeds}
                  onChange={(breedId) => setGroup(k, { breedId })}
                />
              )}
            </SimpleGrid>
            {1 < groups.length && (
              <Button
                variant="subtle"
                onClick={() => set({ groups: groups.filter((_, i) => i !== k) })}
              >
                Remove this group
              </Button>
            )}
          </Fieldset>
        );
      })}
      <Button
        variant="default"
        onClick={() => set({ groups: [...groups, { classId: 'stocker', head: 1 }] })}
      >
        Add a group
      </Button>
      <SimpleGrid cols={{ base: 1, xs: 2 }}>
        <QuantityInput
          field={FIELDS.longestStayDays}
          units={farm.units}
          value={draft.longestStayDays}
          error={errorAt('longestStayDays')}
          placeholder={String(tables.pasture.longestStayDays.value)}
          onChange={(longestStayDays) => set({ longestStayDays })}
        />
        <DateField
          label={FIELDS.turnOutOn.label}
          value={draft.turnOutOn}
          error={errorAt('turnOutOn')}
          onChange={(turnOutOn) => set({ turnOutOn })}
        />
        <Select
          label={FIELDS.inPaddockId.label}
          value={draft.inPaddockId}
          none="not on grass"
          error={errorAt('inPaddockId')}
          options={paddocks}
          onChange={(inPaddockId) => set({ inPaddockId })}
        />
        {draft.inPaddockId !== undefined && (
          <DateField
            label={FIELDS.inSince.label}
            value={draft.inSince}
            error={errorAt('inSince')}
            onChange={(inSince) => set({ inSince })}
          />
        )}
        <NumberFields
          of={{ tankL: draft.tankL, supplyLPerH: draft.supplyLPerH }}
          names={['tankL', 'supplyLPerH']}
          fields={FIELDS}
          units={farm.units}
          errorAt={errorAt}
          onChange={({ tankL, supplyLPerH }) => set({ tankL, supplyLPerH })}
        />
        <Select
          label={FIELDS.followedByBatchId.label}
          value={draft.followedByBatchId}
          error={errorAt('followedByBatchId')}
          none="none"
          options={batches.map(({ id, name }) => ({ id, name }))}
          onChange={(followedByBatchId) => set({ followedByBatchId })}
        />
        {draft.followedByBatchId !== undefined && (
          <QuantityInput
            field={FIELDS.followDays}
            units={farm.units}
            value={draft.followDays}
            error={errorAt('followDays')}
            placeholder={String(tables.pasture.birdsBehind.lagDays)}
            onChange={(followDays) => set({ followDays })}
          />
        )}
      </SimpleGrid>
    </RowForm>
  );
}
