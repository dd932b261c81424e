import { Checkbox, SimpleGrid, TextInput } from '@mantine/core';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import type { Person } from '../../../../shared/farm/farm.js';
import type { OwnJob, WorkConditions } from '../../../../shared/farm/job.js';
import type { KeyDate } from '../../../../shared/plan/tasks/event.js';
import { useSave, type SavedFarm } from '../../api/queries.js';
import { DateField } from '../../fields/date-input.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { RowForm, useRowForm } from '../../fields/row-form.js';
import { Select } from '../../fields/select.js';

type Draft = { -readonly [K in keyof OwnJob]?: OwnJob[K] | undefined };

const LABELS: Readonly<Record<string, string>> = {
  name: 'Name',
  hours: 'Hours of each who takes part',
  'conditions.people': 'People at once',
  notBefore: 'Not before',
  dueOn: 'Due by',
  lastOn: 'Lost after',
  importance: 'How much it matters',
  hangsOn: 'Moves along with',
  waitsForId: 'After',
  waitDays: 'Days to wait after it',
  ifLate: 'What if it is late',
  personIds: 'Who can do it',
};

const IMPORTANCE = [
  { id: 'must', name: 'Must be done' },
  { id: 'should', name: 'Should be done' },
  { id: 'could', name: 'Could be done' },
];
const CONDITIONS: readonly (readonly [keyof WorkConditions, string])[] = [
  ['dryGround', 'Ground dry enough to work'],
  ['noRain', 'No rain'],
  ['daylight', 'Daylight'],
];
const DUE_DAYS = 14;

/** One job of the household's own. */
export function JobForm({
  farm,
  people,
  jobs,
  today,
  events,
  start,
  onDone,
}: {
  farm: SavedFarm;
  people: readonly Person[];
  jobs: readonly OwnJob[];
  today: string;
  events: readonly KeyDate[];
  start: OwnJob | undefined;
  onDone: () => void;
}) {
  const words = {
    labelOf: (field: string) => LABELS[field.replace(/\.\d+$/, '')],
    reader: farm,
  };
  const save = useSave<Draft>(farm.id, 'jobs', words);
  const form = useRowForm<Draft>({
    start: start ?? {
      name: '',
      hours: 2,
      dueOn: addDays(today, DUE_DAYS),
      importance: 'should',
      conditions: {},
      canBeSpread: true,
    },
    words,
    save: (ready) => save.mutateAsync(ready),
    onDone,
  });
  const { draft, set, errorAt } = form;
  const conditions = draft.conditions ?? {};
  const able = draft.personIds ?? people.map(({ id }) => id);
  return (
    <RowForm form={form} onDone={onDone}>
      <TextInput
        label={LABELS['name']}
        value={draft.name ?? ''}
        error={errorAt('name')}
        data-autofocus
        onChange={(e) => set({ name: e.currentTarget.value })}
      />
      <SimpleGrid cols={{ base: 1, xs: 2 }}>
        <QuantityInput
          label={LABELS['hours']}
          bound="jobHours"
          units={farm.units}
          value={draft.hours}
          error={errorAt('hours')}
          onChange={(hours) => set({ hours })}
        />
        <QuantityInput
          label={LABELS['conditions.people']}
          bound="peopleAtOnce"
          units={farm.units}
          value={conditions.people}
          error={errorAt('conditions.people')}
          placeholder="1"
          onChange={(count) => set({ conditions: withPeople(conditions, count) })}
        />
        <DateField
          label={LABELS['notBefore']}
          value={draft.notBefore}
          error={errorAt('notBefore')}
          onChange={(notBefore) => set({ notBefore })}
        />
        <DateField
          label={LABELS['dueOn']}
          value={draft.dueOn}
          error={errorAt('dueOn')}
          onChange={(dueOn) => set({ dueOn })}
        />
        <DateField
          label={LABELS['lastOn']}
          value={draft.lastOn}
          error={errorAt('lastOn')}
          onChange={(lastOn) => set({ lastOn })}
        />
        <Select
          label={LABELS['importance']}
          value={draft.importance}
          error={errorAt('importance')}
          options={IMPORTANCE}
          onChange={(importance) => set({ importance: importance as OwnJob['importance'] })}
        />
        <Select
          label={LABELS['hangsOn']}
          value={draft.hangsOn?.eventId ?? ''}
          error={errorAt('hangsOn')}
          options={[{ id: '', name: 'nothing: its dates are fixed' }, ...events]}
          onChange={(id) => set({ hangsOn: hangingOn(events, id) })}
        />
        <Select
          label={LABELS['waitsForId']}
          value={draft.waitsForId ?? ''}
          error={errorAt('waitsForId')}
          options={[{ id: '', name: 'nothing' }, ...jobs.filter(({ id }) => id !== start?.id)]}
          onChange={(id) => set({ waitsForId: id === '' ? undefined : id })}
        />
        <QuantityInput
          label={LABELS['waitDays']}
          bound="waitDays"
          units={farm.units}
          value={draft.waitDays}
          error={errorAt('waitDays')}
          onChange={(waitDays) => set({ waitDays })}
        />
      </SimpleGrid>
      <Checkbox
        label="May be spread over several days"
        checked={draft.canBeSpread ?? false}
        onChange={(e) => set({ canBeSpread: e.currentTarget.checked })}
      />
      {CONDITIONS.map(([key, label]) => (
        <Checkbox
          key={key}
          label={label}
          checked={conditions[key] === true}
          onChange={(e) => set({ conditions: { ...conditions, [key]: e.currentTarget.checked } })}
        />
      ))}
      {1 < people.length && (
        <Checkbox.Group
          label={LABELS['personIds']}
          value={[...able]}
          error={errorAt('personIds')}
          onChange={(ids) => set({ personIds: ids.length === people.length ? undefined : ids })}
        >
          {people.map((person) => (
            <Checkbox key={person.id} value={person.id} label={person.name} mt={6} />
          ))}
        </Checkbox.Group>
      )}
      <TextInput
        label={LABELS['ifLate']}
        value={draft.ifLate ?? ''}
        error={errorAt('ifLate')}
        onChange={(e) => set({ ifLate: e.currentTarget.value || undefined })}
      />
    </RowForm>
  );
}

const hangingOn = (events: readonly KeyDate[], id: string | undefined): OwnJob['hangsOn'] => {
  const event = events.find((each) => each.id === id);
  return event && { eventId: event.id, on: event.date };
};

/** One person is what every job takes: nothing is kept of it. */
function withPeople(conditions: WorkConditions, people: number | undefined): WorkConditions {
  const { people: _before, ...rest } = conditions;
  return people === undefined || people === 1 ? rest : { ...rest, people };
}
