import { NativeSelect, Switch, TextInput } from '@mantine/core';
import { personFields, type Person } from '../../../../shared/farm/farm.js';
import { useSave, useTables, type SavedFarm } from '../../api/queries.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { draftKey } from '../../fields/kept-draft.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { RowForm, useRowForm } from '../../fields/row-form.js';
import { AwayRows } from './away-rows.js';
import { StartTimes } from './start-times.js';
import { WeekdayHours } from './weekday-hours.js';

type Draft = {
  -readonly [K in Exclude<keyof Person, 'hoursByWeekday'>]?: Person[K] | undefined;
} & {
  hoursByWeekday?: readonly (number | undefined)[] | undefined;
};

const BY_DAY = [
  { value: '', label: 'Out where their hours begin in the afternoon' },
  { value: 'at-home', label: 'At home' },
  { value: 'out-am', label: 'Out in the mornings' },
  { value: 'out-pm', label: 'Out in the afternoons' },
  { value: 'out', label: 'Out of the house' },
];

/** Somebody of the household: name, hours, when they begin, and the days away; one save for all. */
export function PersonForm({
  farm,
  start,
  onDone,
}: {
  farm: SavedFarm;
  start: Person | undefined;
  onDone: () => void;
}) {
  const usual = useTables().data?.work;
  const words = wordsOfRow(personFields, farm);
  const save = useSave<Draft>(farm.id, 'people', words);
  const form = useRowForm<Draft>({
    keptAs: draftKey(farm.id, 'person', start?.id ?? 'new'),
    start: start ?? { name: '', away: [] },
    words,
    check: (draft): Record<string, string> => (draft.name?.trim() ? {} : { name: 'Give a name.' }),
    // A box left empty is no hours that day.
    save: ({ hoursByWeekday, ...draft }) =>
      save.mutateAsync({
        ...draft,
        ...(hoursByWeekday ? { hoursByWeekday: hoursByWeekday.map((each) => each ?? 0) } : {}),
      }),
    onDone,
  });
  const { draft, set, errorAt } = form;
  return (
    <RowForm form={form} onDone={onDone}>
      <TextInput
        label={personFields.fields.name.label}
        data-autofocus
        value={draft.name ?? ''}
        error={errorAt('name')}
        onChange={(e) => set({ name: e.currentTarget.value })}
      />
      <Switch
        label={personFields.fields.isChild.label}
        description="Given the daily round of hens and pullets outdoors, and jobs that are for a child or name it"
        checked={draft.isChild ?? false}
        onChange={(e) => set({ isChild: e.currentTarget.checked })}
      />
      {usual && (
        <>
          <WeekdayHours
            hours={draft.hoursByWeekday}
            usual={usual.hoursByWeekday.values}
            units={farm.units}
            errorAt={errorAt}
            onChange={(hoursByWeekday) => set({ hoursByWeekday })}
          />
          <StartTimes
            startH={draft.startH}
            usual={usual.startH}
            errorAt={errorAt}
            onChange={(startH) => set({ startH })}
          />
          <NativeSelect
            label={personFields.fields.byDay.label}
            description="Day-old chicks and calving cows are not left alone for long"
            value={draft.byDay ?? ''}
            error={errorAt('byDay')}
            data={BY_DAY}
            onChange={(e) =>
              set({ byDay: (e.currentTarget.value || undefined) as Person['byDay'] })
            }
          />
        </>
      )}
      <QuantityInput
        field={personFields.fields.looksIn}
        units={farm.units}
        description="Only for a neighbor: comes by in between, and does chores that nobody else has time for"
        value={draft.looksIn}
        error={errorAt('looksIn')}
        onChange={(looksIn) => set({ looksIn })}
      />
      <AwayRows
        farmId={farm.id}
        away={draft.away ?? []}
        error={errorAt('away')}
        onChange={(away) => set({ away })}
      />
    </RowForm>
  );
}
