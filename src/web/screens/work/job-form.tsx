import { Checkbox, Group, SimpleGrid, Stack, TextInput } from '@mantine/core';
import { addDays, weekdayOf } from '../../../../shared/calendar/plain-date.js';
import type { Person } from '../../../../shared/farm/farm.js';
import { jobFields, workConditionFields, type OwnJob } from '../../../../shared/farm/job.js';
import type { KeyDate } from '../../../../shared/plan/tasks/event.js';
import { useSave, type SavedFarm } from '../../api/queries.js';
import { DateField } from '../../fields/date-input.js';
import { useSayDate } from '../../explain/say-date.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { draftKey } from '../../fields/kept-draft.js';
import { RowForm, useRowForm } from '../../fields/row-form.js';
import { Select } from '../../fields/select.js';
import { FoldedFields } from './folded-fields.js';
import { JobRepeats } from './job-repeats.js';
import { hangingOn, tied } from './job-ties.js';
import { withNumber } from '../../fields/number-fields.js';
import { JobConditions } from './job-conditions.js';
import { moreInWords } from './job-words.js';

type Draft = { -readonly [K in keyof OwnJob]?: OwnJob[K] | undefined };

const FIELDS = jobFields.fields;
const CONDITION = workConditionFields.fields;

const IMPORTANCE = [
  { id: 'must', name: 'Must be done' },
  { id: 'should', name: 'Should be done' },
  { id: 'could', name: 'Could be done' },
];
const FOR_WHOM = [
  { id: '', name: 'grown-ups, or a child that is named' },
  { id: 'child', name: 'a child can do it too' },
  { id: 'adult', name: 'needs an adult' },
];
const MORE_FIELDS = [
  ...['priority', 'noUseAfter', 'tiedTo', 'forWhom', 'waitsForId', 'waitDays', 'mostWaitDays'],
  ...['smallestPieceHours', 'ifLate'],
];
const DUE_DAYS = 14;

/** What comes every week comes on the weekday of its first date, until others are ticked. */
function onItsWeekday(
  repeats: OwnJob['repeats'],
  before: string | undefined,
  on: string | undefined,
): Pick<Draft, 'repeats'> {
  if (repeats?.every !== 'weekdays' || on === undefined) return {};
  const was = before === undefined ? [] : [weekdayOf(before)];
  const isUntouched = repeats.weekdays === undefined || repeats.weekdays.join() === was.join();
  return isUntouched ? { repeats: { ...repeats, weekdays: [weekdayOf(on)] } } : {};
}

/** One job of the household's own. */
export function JobForm({
  farm,
  people,
  jobs,
  today,
  events: keyDates,
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
  const sayDate = useSayDate();
  // Frost and first warm days come every year that is planned: each by its date.
  const events = keyDates.map((each) => ({ ...each, name: `${each.name}, ${sayDate(each.date)}` }));
  const usualDue = addDays(today, DUE_DAYS);
  const words = wordsOfRow(jobFields, farm);
  const save = useSave<Draft>(farm.id, 'jobs', words);
  const form = useRowForm<Draft>({
    keptAs: draftKey(farm.id, 'job', start?.id ?? 'new'),
    start: start ?? {
      name: '',
      hours: 2,
      dueOn: usualDue,
      priority: 'should',
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
  const isWrong = (fields: readonly string[]): boolean =>
    fields.some((field) => Boolean(errorAt(field)));
  return (
    <RowForm form={form} onDone={onDone}>
      <TextInput
        label={FIELDS.name.label}
        value={draft.name ?? ''}
        error={errorAt('name')}
        data-autofocus
        onChange={(e) => set({ name: e.currentTarget.value })}
      />
      <SimpleGrid cols={{ base: 1, xs: 2 }}>
        <QuantityInput
          field={FIELDS.hours}
          units={farm.units}
          value={draft.hours}
          error={errorAt('hours')}
          onChange={(hours) => set({ hours })}
        />
        <QuantityInput
          field={CONDITION.peopleNeeded}
          units={farm.units}
          value={conditions.peopleNeeded}
          error={errorAt('conditions.peopleNeeded')}
          placeholder="1"
          onChange={(count) =>
            set({
              conditions: withNumber(conditions, 'peopleNeeded', count),
            })
          }
        />
        <DateField
          label={FIELDS.notBefore.label}
          value={draft.notBefore}
          error={errorAt('notBefore')}
          onChange={(notBefore) => set({ notBefore })}
        />
        <DateField
          label={draft.repeats ? 'First due on' : FIELDS.dueOn.label}
          value={draft.dueOn}
          error={errorAt('dueOn')}
          onChange={(dueOn) => set({ dueOn, ...onItsWeekday(draft.repeats, draft.dueOn, dueOn) })}
        />
        <JobRepeats
          farm={farm}
          repeats={draft.repeats}
          events={events}
          errorAt={errorAt}
          onChange={(repeats) => set({ repeats, ...onItsWeekday(repeats, undefined, draft.dueOn) })}
        />
      </SimpleGrid>
      {1 < people.length && (
        <Checkbox.Group
          label={FIELDS.personIds.label}
          value={[...able]}
          error={errorAt('personIds')}
          onChange={(ids) => set({ personIds: ids.length === people.length ? undefined : ids })}
        >
          <Group gap="md" mt={6}>
            {people.map((person) => (
              <Checkbox key={person.id} value={person.id} label={person.name} />
            ))}
          </Group>
        </Checkbox.Group>
      )}
      <JobConditions
        farm={farm}
        conditions={conditions}
        harmedAtOrBelowC={draft.harmedAtOrBelowC}
        errorAt={errorAt}
        onChange={set}
      />
      <FoldedFields
        id="job-more"
        title="More about it"
        answer={moreInWords(draft, events, jobs)}
        isWrong={isWrong(MORE_FIELDS)}
      >
        <Stack>
          <SimpleGrid cols={{ base: 1, xs: 2 }}>
            <Select
              label={FIELDS.priority.label}
              value={draft.priority}
              error={errorAt('priority')}
              options={IMPORTANCE}
              onChange={(priority) => set({ priority: priority as OwnJob['priority'] })}
            />
            <DateField
              label={FIELDS.noUseAfter.label}
              value={draft.noUseAfter}
              error={errorAt('noUseAfter')}
              onChange={(noUseAfter) => set({ noUseAfter })}
            />
            <Select
              label={FIELDS.tiedTo.label}
              value={draft.tiedTo?.eventId ?? ''}
              error={errorAt('tiedTo')}
              options={[{ id: '', name: 'nothing: its dates are fixed' }, ...events]}
              onChange={(id) => set(tied(draft, hangingOn(events, id), usualDue))}
            />
            <Select
              label={FIELDS.forWhom.label}
              value={draft.forWhom ?? ''}
              error={errorAt('forWhom')}
              options={FOR_WHOM}
              onChange={(forWhom) => set({ forWhom: (forWhom || undefined) as OwnJob['forWhom'] })}
            />
            <Select
              label={FIELDS.waitsForId.label}
              value={draft.waitsForId ?? ''}
              error={errorAt('waitsForId')}
              options={[{ id: '', name: 'nothing' }, ...jobs.filter(({ id }) => id !== start?.id)]}
              onChange={(id) =>
                set(
                  id === ''
                    ? { waitsForId: undefined, waitDays: undefined, mostWaitDays: undefined }
                    : { waitsForId: id },
                )
              }
            />
            <QuantityInput
              field={FIELDS.waitDays}
              units={farm.units}
              value={draft.waitDays}
              error={errorAt('waitDays')}
              onChange={(waitDays) => set({ waitDays })}
            />
            <QuantityInput
              field={FIELDS.mostWaitDays}
              units={farm.units}
              value={draft.mostWaitDays}
              error={errorAt('mostWaitDays')}
              onChange={(mostWaitDays) => set({ mostWaitDays })}
            />
          </SimpleGrid>
          <Checkbox
            label={FIELDS.canBeSpread.label}
            checked={draft.canBeSpread ?? false}
            onChange={(e) => set({ canBeSpread: e.currentTarget.checked })}
          />
          {draft.canBeSpread && (
            <QuantityInput
              field={FIELDS.smallestPieceHours}
              units={farm.units}
              value={draft.smallestPieceHours}
              error={errorAt('smallestPieceHours')}
              onChange={(smallestPieceHours) => set({ smallestPieceHours })}
            />
          )}
          <TextInput
            label={FIELDS.ifLate.label}
            value={draft.ifLate ?? ''}
            error={errorAt('ifLate')}
            onChange={(e) => set({ ifLate: e.currentTarget.value || undefined })}
          />
        </Stack>
      </FoldedFields>
    </RowForm>
  );
}
