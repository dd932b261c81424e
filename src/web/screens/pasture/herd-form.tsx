import { Button, Fieldset, Group, SimpleGrid, Stack, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { CattleGroup, Herd } from '../../../../shared/farm/herd.js';
import type { Paddock } from '../../../../shared/farm/paddock.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { useSave, type SavedBatch, type SavedFarm } from '../../api/queries.js';
import { DateField } from '../../fields/date-input.js';
import { messagesByField, problemsIn } from '../../fields/field-words.js';
import { QuantityInput, typedText } from '../../fields/quantity-input.js';
import { Select } from '../../fields/select.js';
import { Failure } from '../../shell/states.js';

type GroupDraft = { -readonly [K in keyof CattleGroup]?: CattleGroup[K] | undefined };
type Draft = Omit<{ -readonly [K in keyof Herd]?: Herd[K] | undefined }, 'groups'> & {
  groups?: readonly GroupDraft[];
};

const LABELS: Readonly<Record<string, string>> = {
  name: 'Name',
  groups: 'Classes',
  longestStayDays: 'Longest stay in a paddock',
  inPaddockId: 'Now in',
  inSince: 'Since',
  turnOutOn: 'Not on grass before',
  followedByBatchId: 'Birds that follow',
  followDays: 'Days behind',
};
const GROUP_LABELS: Readonly<Record<string, string>> = {
  classId: 'Class',
  head: 'Head',
  weightKg: 'Weight of one',
  gainKgPerDay: 'Gain a day',
  milkKgPerDay: 'Milk a day',
  arrivesOn: 'Arrives on',
  leavesOn: 'Leaves on',
  bredOn: 'Served on',
  calvesOn: 'Calving due, if known',
  breedId: 'Breed',
};

function labelOf(field: string): string | undefined {
  const [first, index, name] = field.split('.');
  return first === 'groups' && name !== undefined
    ? `${GROUP_LABELS[name] ?? name} of class ${Number(index) + 1}`
    : LABELS[field];
}

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
  const [draft, setDraft] = useState<Draft>(
    start ?? { name: '', groups: [{ classId: 'cow-calf', head: 4 }] },
  );
  const save = useSave<Draft>(farm.id, 'herds');
  const words = { labelOf, reader: farm };
  const errors = messagesByField(problemsIn(save.error), words);
  const set = (part: Draft) => setDraft({ ...draft, ...part });
  const groups = draft.groups ?? [];
  const setGroup = (k: number, part: GroupDraft) =>
    set({ groups: groups.map((each, i) => (i === k ? { ...each, ...part } : each)) });
  const submit = async () => {
    try {
      await save.mutateAsync(draft);
      onDone();
    } catch {
      // Shown below.
    }
  };
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void submit();
      }}
    >
      <Stack>
        <TextInput
          label={LABELS['name']}
          value={draft.name ?? ''}
          error={errors['name']}
          data-autofocus
          onChange={(e) => set({ name: e.currentTarget.value })}
        />
        {groups.map((group, k) => {
          const of = tables.cattle.classes.find((c) => c.id === group.classId);
          const error = (name: string) => errors[`groups.${k}.${name}`];
          return (
            <Fieldset key={k} legend={`Class ${k + 1}`}>
              <SimpleGrid cols={{ base: 1, xs: 2 }}>
                <Select
                  label={GROUP_LABELS['classId']}
                  value={group.classId}
                  options={tables.cattle.classes}
                  onChange={(classId) => setGroup(k, { classId })}
                />
                <QuantityInput
                  label={GROUP_LABELS['head']}
                  bound="head"
                  units={farm.units}
                  value={group.head}
                  error={error('head')}
                  onChange={(head) => setGroup(k, { head })}
                />
                <QuantityInput
                  label={GROUP_LABELS['weightKg']}
                  bound="cattleKg"
                  units={farm.units}
                  value={group.weightKg}
                  error={error('weightKg')}
                  placeholder={typedText(of?.weightKg, 'cattleKg', farm.units)}
                  onChange={(weightKg) => setGroup(k, { weightKg })}
                />
                <QuantityInput
                  label={GROUP_LABELS['gainKgPerDay']}
                  bound="gainKgPerDay"
                  units={farm.units}
                  value={group.gainKgPerDay}
                  error={error('gainKgPerDay')}
                  placeholder={typedText(of?.gainKgPerDay, 'gainKgPerDay', farm.units)}
                  onChange={(gainKgPerDay) => setGroup(k, { gainKgPerDay })}
                />
                {0 < (of?.milkKgPerDay ?? 0) && (
                  <QuantityInput
                    label={GROUP_LABELS['milkKgPerDay']}
                    bound="milkKgPerDay"
                    units={farm.units}
                    value={group.milkKgPerDay}
                    error={error('milkKgPerDay')}
                    placeholder={typedText(of?.milkKgPerDay, 'milkKgPerDay', farm.units)}
                    onChange={(milkKgPerDay) => setGroup(k, { milkKgPerDay })}
                  />
                )}
                {(['arrivesOn', 'leavesOn', 'bredOn', 'calvesOn'] as const).map((name) => (
                  <DateField
                    key={name}
                    label={GROUP_LABELS[name]}
                    value={group[name]}
                    error={error(name)}
                    onChange={(value) => setGroup(k, { [name]: value })}
                  />
                ))}
                {group.bredOn !== undefined && (
                  <Select
                    label={GROUP_LABELS['breedId']}
                    value={group.breedId ?? 'all'}
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
                  Remove this class
                </Button>
              )}
            </Fieldset>
          );
        })}
        <Button
          variant="default"
          onClick={() => set({ groups: [...groups, { classId: 'stocker', head: 1 }] })}
        >
          Add a class
        </Button>
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          <QuantityInput
            label={LABELS['longestStayDays']}
            bound="stayDays"
            units={farm.units}
            value={draft.longestStayDays}
            error={errors['longestStayDays']}
            placeholder={String(tables.pasture.longestStayDays.value)}
            onChange={(longestStayDays) => set({ longestStayDays })}
          />
          <DateField
            label={LABELS['turnOutOn']}
            value={draft.turnOutOn}
            onChange={(turnOutOn) => set({ turnOutOn })}
          />
          <Select
            label={LABELS['inPaddockId']}
            value={draft.inPaddockId}
            none="not on grass"
            error={errors['inPaddockId']}
            options={paddocks}
            onChange={(inPaddockId) => set({ inPaddockId })}
          />
          {draft.inPaddockId !== undefined && (
            <DateField
              label={LABELS['inSince']}
              value={draft.inSince}
              onChange={(inSince) => set({ inSince })}
            />
          )}
          <Select
            label={LABELS['followedByBatchId']}
            value={draft.followedByBatchId}
            none="none"
            options={batches.map(({ id, name }) => ({ id, name }))}
            onChange={(followedByBatchId) => set({ followedByBatchId })}
          />
          {draft.followedByBatchId !== undefined && (
            <QuantityInput
              label={LABELS['followDays']}
              bound="followDays"
              units={farm.units}
              value={draft.followDays}
              placeholder={String(tables.pasture.birdsBehind.lagDays)}
              onChange={(followDays) => set({ followDays })}
            />
          )}
        </SimpleGrid>
        <Failure error={save.error} words={words} />
        <Group>
          <Button type="submit" loading={save.isPending}>
            Save
          </Button>
          <Button variant="subtle" onClick={onDone}>
            Back
          </Button>
        </Group>
      </Stack>
    </form>
  );
}
