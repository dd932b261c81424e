import { Text } from '@mantine/core';
import { addDays, type PlainDate } from '../../../../shared/calendar/plain-date.js';
import { OVER, withAway, withoutAway, type Absence } from '../../../../shared/farm/absences.js';
import { awayFields, personFields, type Person } from '../../../../shared/farm/farm.js';
import { useSave, type SavedFarm } from '../../api/queries.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { draftKey } from '../../fields/kept-draft.js';
import { RowForm, useRowForm } from '../../fields/row-form.js';
import { withLastAfterFirst } from '../../fields/last-after-first.js';
import { WhoAndWhen } from '../../fields/who-and-when.js';

interface Draft {
  readonly awayIds: readonly string[];
  readonly from?: PlainDate | undefined;
  readonly to?: PlainDate | undefined;
}

const LEAD_DAYS = 7;
const SPAN_DAYS = 3;

/** Who is away and when, and nothing else: whether somebody is put in charge is said after it. */
export function AbsenceForm({
  farm,
  people,
  today,
  start,
  onSaved,
  onDone,
}: {
  farm: SavedFarm;
  people: readonly Person[];
  today: PlainDate;
  /** Days that are changed; left out for new ones. */
  start: Absence | undefined;
  onSaved: () => void;
  onDone: () => void;
}) {
  const words = wordsOfRow(awayFields, farm);
  const save = useSave<Person>(farm.id, 'people', wordsOfRow(personFields, farm));
  const form = useRowForm<Draft>({
    keptAs: draftKey(farm.id, 'absence', start?.from ?? 'new'),
    start: start ?? {
      awayIds: people.length === 1 ? people.map(({ id }) => id) : [],
      from: addDays(today, LEAD_DAYS),
      to: addDays(today, LEAD_DAYS + SPAN_DAYS),
    },
    words,
    check: (draft) => problemsOf(draft, today),
    save: async ({ awayIds, from, to }) => {
      const others = start ? withoutAway(people, start) : people;
      // Who was ill on days that are changed is ill on the days they are changed to.
      const isIll = (id: string): boolean => start?.illIds.includes(id) ?? false;
      const days = { from: from!, to: to! };
      const changed = withAway(
        withAway(others, { awayIds: awayIds.filter((id) => !isIll(id)), ...days }),
        { awayIds: awayIds.filter(isIll), ...days, isIll: true },
      );
      for (const [k, person] of changed.entries())
        if (person !== people[k]) await save.mutateAsync(person);
      onSaved();
    },
    onDone,
  });
  const { draft, set, errorAt } = form;
  const fields = awayFields.fields;
  return (
    <RowForm form={form} onDone={onDone}>
      <WhoAndWhen
        people={people}
        awayIds={draft.awayIds}
        days={draft}
        labels={{ who: 'Who is away', from: fields.from.label, to: fields.to.label }}
        errorAt={errorAt}
        onAway={(awayIds) => set({ awayIds })}
        onDays={(days) => set(withLastAfterFirst(draft, days))}
      />
      <Text size="sm">Work is planned around these days. A sheet can be made for them after.</Text>
    </RowForm>
  );
}

function problemsOf({ awayIds, from, to }: Draft, today: PlainDate): Record<string, string> {
  return {
    ...(awayIds.length === 0 ? { awayIds: 'Say who is away.' } : {}),
    ...(from === undefined ? { from: 'Give the first day.' } : {}),
    ...(to === undefined ? { to: 'Give the last day.' } : {}),
    ...(from !== undefined && to !== undefined && to < from
      ? { to: 'The last day comes before the first: swap the two.' }
      : {}),
    ...(to !== undefined && to < today ? { to: OVER } : {}),
  };
}
