import { Button, Group, Stack, Text, Textarea, TextInput } from '@mantine/core';
import { isGrownUp } from '../../../../shared/farm/who-is-there.js';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import type { Absence } from '../../../../shared/farm/absences.js';
import type { Person } from '../../../../shared/farm/farm.js';
import {
  handoverFields,
  whereaboutFields,
  phoneNumberFields,
  type Handover,
} from '../../../../shared/farm/handover.js';
import type { WorkPlan } from '../../../../shared/plan/work/planned-work.js';
import { useBatches, useHerds, useSave, type SavedFarm } from '../../api/queries.js';
import { useSheetPreview, type SheetPreview } from '../../api/work-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { formatHours } from '../../../../shared/units/format.js';
import { listed } from '../../../../shared/units/listed.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { draftKey } from '../../fields/kept-draft.js';
import { RowForm, useRowForm } from '../../fields/row-form.js';
import { Select } from '../../fields/select.js';
import { Answer } from '../../shell/answer.js';
import { Failure } from '../../shell/states.js';
import { Ways } from '../../shell/ways.js';
import { AbsenceLine } from './absence-line.js';
import { ChangeList } from './change-list.js';
import { PairRows } from './pair-rows.js';
import { RoundOrder } from './round-order.js';
import { withLastAfterFirst } from '../../fields/last-after-first.js';
import { WhoAndWhen } from '../../fields/who-and-when.js';

type Draft = { -readonly [K in keyof Handover]?: Handover[K] | undefined };

const FIELDS = handoverFields.fields;
const PHONE = phoneNumberFields.fields;
const LEFT = whereaboutFields.fields;
const LEAD_DAYS = 7;
const SPAN_DAYS = 3;
const SITTER_H = 3;

/** Days to hand over, and what that moves before it is saved. */
export function HandoverForm({
  farm,
  people,
  plan,
  start,
  absence,
  absences,
  onDone,
}: {
  farm: SavedFarm;
  people: readonly Person[];
  plan: WorkPlan;
  start: Handover | undefined;
  /** Days of which somebody has said already to be away; a new sheet begins with them. */
  absence: Absence | undefined;
  /** Absences that can be chosen, where no days are given yet. */
  absences: readonly Absence[];
  onDone: () => void;
}) {
  const sayDate = useSayDate();
  const preview = useSheetPreview(farm.id);
  const batches = useBatches(farm.id);
  const herds = useHerds(farm.id);
  const words = wordsOfRow(handoverFields, farm);
  const save = useSave<Draft>(farm.id, 'handovers', words);
  const form = useRowForm<Draft>({
    keptAs: draftKey(farm.id, 'handover', start?.id ?? absence?.from ?? 'new'),
    start: start ?? {
      hoursPerDay: SITTER_H,
      ...(absence ? inChargeOf(people, absence) : {}),
      awayIds: absence?.awayIds ?? [],
      from: absence?.from ?? addDays(plan.today, LEAD_DAYS),
      to: absence?.to ?? addDays(plan.today, LEAD_DAYS + SPAN_DAYS),
      roundOrder: [],
      phones: [],
      whereabouts: [],
    },
    words,
    check: ({ awayIds: ids }): Record<string, string> =>
      ids?.length === 0 ? { awayIds: 'Say who is away.' } : {},
    save: (ready) => save.mutateAsync(withoutEmptyRows(ready)),
    onDone,
  });
  const { draft, set, errorAt } = form;
  // A sheet of before this was asked says only who is in charge: all others are away.
  const awayIds = draft.awayIds ?? people.map(({ id }) => id).filter((id) => id !== draft.personId);
  const staying = people.filter(({ id }) => !awayIds.includes(id));
  const stops = [...(batches.data ?? []), ...(herds.data ?? [])];
  return (
    <RowForm form={form} onDone={onDone}>
      {absences.map((each) => (
        <AbsenceLine
          key={each.from}
          absence={each}
          people={people}
          action="Use these days"
          onPress={() =>
            set({
              ...{ from: each.from, to: each.to, awayIds: each.awayIds, personId: undefined },
              ...inChargeOf(people, each),
            })
          }
        />
      ))}
      <WhoAndWhen
        people={people}
        awayIds={awayIds}
        days={draft}
        labels={{
          who: FIELDS.awayIds.label,
          from: FIELDS.from.label,
          to: FIELDS.to.label,
        }}
        errorAt={errorAt}
        onAway={(ids) =>
          set({
            awayIds: ids,
            ...((draft.personId === undefined || ids.includes(draft.personId)) &&
            draft.sitter === undefined
              ? inChargeOf(people, { ...draft, awayIds: ids })
              : {}),
          })
        }
        onDays={(days) => set(withLastAfterFirst(draft, days))}
      />
      <Text>{stayWords(staying)}</Text>
      <Group align="end">
        <Select
          label={FIELDS.personId.label}
          value={draft.personId ?? ''}
          error={errorAt('personId')}
          options={[...mayBeInCharge(staying, draft), { id: '', name: 'Farm sitter' }]}
          onChange={(id) =>
            set(
              id
                ? { personId: id, hoursPerDay: undefined }
                : { personId: undefined, hoursPerDay: draft.hoursPerDay ?? SITTER_H },
            )
          }
        />
        {draft.personId === undefined && (
          <TextInput
            label={FIELDS.sitter.label}
            value={draft.sitter ?? ''}
            error={errorAt('sitter')}
            onChange={(e) => set({ sitter: e.currentTarget.value || undefined })}
          />
        )}
        <QuantityInput
          field={FIELDS.hoursPerDay}
          units={farm.units}
          value={draft.hoursPerDay}
          error={errorAt('hoursPerDay')}
          description={draft.personId !== undefined && 'Left empty: their own hours of each day.'}
          onChange={(hoursPerDay) => set({ hoursPerDay })}
        />
      </Group>
      <RoundOrder
        stops={stops}
        order={draft.roundOrder ?? []}
        onChange={(roundOrder) => set({ roundOrder })}
      />
      <PairRows
        legend={FIELDS.phones.label}
        labels={[PHONE.who.label, PHONE.number.label]}
        rows={(draft.phones ?? []).map(({ who, number }) => [who, number])}
        error={errorAt('phones')}
        onChange={(rows) => set({ phones: rows.map(([who, number]) => ({ who, number })) })}
      />
      <PairRows
        legend={FIELDS.whereabouts.label}
        labels={[LEFT.what.label, LEFT.where.label]}
        rows={(draft.whereabouts ?? []).map(({ what, where }) => [what, where])}
        error={errorAt('whereabouts')}
        onChange={(rows) => set({ whereabouts: rows.map(([what, where]) => ({ what, where })) })}
      />
      <Textarea
        label={FIELDS.notes.label}
        value={draft.notes ?? ''}
        error={errorAt('notes')}
        onChange={(e) => set({ notes: e.currentTarget.value || undefined })}
        autosize
        minRows={2}
      />
      <Group>
        <Button
          variant="light"
          loading={preview.isPending}
          onClick={() => preview.mutate(withoutEmptyRows(draft) as Partial<Handover>)}
        >
          Preview
        </Button>
      </Group>
      <Failure error={preview.error} words={words} />
      {preview.data && (
        <Answer key={preview.submittedAt}>
          <Stack gap="xs">
            {preview.data.careGaps.map(({ kind, from, of, said, ways }) => (
              <div key={`${kind}/${from}/${of.join()}`}>
                <b>{said}</b>
                <Ways ways={ways} />
              </div>
            ))}
            {preview.data.sheet.pages
              .filter(({ isTooMuch }) => isTooMuch)
              .map(({ date, hours, hoursAvailable }) => (
                <Text key={date} fw={600}>
                  {sayDate(date)}: {formatHours(hours)} of work for {formatHours(hoursAvailable)}.
                </Text>
              ))}
            {preview.data.sheet.pages.flatMap(({ date, noHours }) =>
              noHours.map(({ key, name }) => (
                <Text key={key} fw={600}>
                  {sayDate(date)}: no hours for {name}.
                </Text>
              )),
            )}
            {fitsWhole(preview.data) && (
              <Text fw={600}>Every day fits into the hours available.</Text>
            )}
            <ChangeList changes={preview.data.moved} none="Nothing has to move for it." />
          </Stack>
        </Answer>
      )}
    </RowForm>
  );
}

/** Who is still there, children counted: they keep their hours. */
const stayWords = (staying: readonly Person[]): string =>
  staying.length === 0
    ? 'Nobody stays.'
    : `${listed(staying.map(({ name }) => name))} ${staying.length === 1 ? 'stays, and keeps' : 'stay, and keep'} their hours and chores.`;

/** Grown-ups who stay and have not said to be away on these days; never a child. */
const mayBeInCharge = (staying: readonly Person[], { from, to }: Draft): readonly Person[] =>
  staying.filter(
    (person) =>
      isGrownUp(person) &&
      !person.away.some((each) => each.from <= (to ?? each.from) && (from ?? each.to) <= each.to),
  );

/** The grown-up who stays, with the hours of their own; where nobody does, who comes in. */
function inChargeOf(people: readonly Person[], days: Draft): Partial<Draft> {
  const { awayIds = [] } = days;
  const staying = people.filter(({ id }) => !awayIds.includes(id));
  const [first] = awayIds.length === 0 ? [] : mayBeInCharge(staying, days);
  return first
    ? { personId: first.id, hoursPerDay: undefined }
    : { personId: undefined, hoursPerDay: days.hoursPerDay ?? SITTER_H };
}

/** Rows in which nothing was typed are no rows. */
const withoutEmptyRows = (draft: Draft): Draft => ({
  ...draft,
  phones: draft.phones?.filter(({ who, number }) => who.trim() || number.trim()),
  whereabouts: draft.whereabouts?.filter(({ what, where }) => what.trim() || where.trim()),
});

/** No day holds more than its hours, and nothing is pushed out of the plan by these days. */
const fitsWhole = ({ sheet, moved, careGaps }: SheetPreview): boolean =>
  careGaps.length === 0 &&
  sheet.pages.every(({ isTooMuch, noHours }) => !isTooMuch && noHours.length === 0) &&
  moved.every(({ kind }) => kind !== 'fits-no-more' && kind !== 'fits-in-part');
