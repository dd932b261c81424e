import { Button, Checkbox, Group, SimpleGrid, Stack, Textarea, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import type { Field } from '../../../shared/farm/field.js';
import { BOUGHT_WORDS, CAUSE_WORDS, GONE_WORDS } from '../../../shared/farm/say-fact.js';
import type { ToldFact, ToldKind } from '../../../shared/farm/told-fact.js';
import type { SavedFarm } from '../api/queries.js';
import { useTell } from '../api/told-queries.js';
import { DateField } from '../fields/date-input.js';
import { messagesByField, problemsIn, unreadNumbers, wordsOfRow } from '../fields/field-words.js';
import { useWayBack } from '../fields/form-dialog.js';
import { PriceInput } from '../fields/price-input.js';
import { QuantityInput } from '../fields/quantity-input.js';
import { Select } from '../fields/select.js';
import { Failure } from '../shell/states.js';
import type { Tellable } from './what-to-tell.js';

interface Props {
  readonly farm: SavedFarm;
  readonly today: PlainDate;
  readonly what: Tellable;
  /** The fact that it changes, and its day. */
  readonly changes?: { readonly id: string; readonly on: PlainDate };
  readonly cows?: readonly { readonly id: string; readonly name: string }[];
  readonly onTold: (fact: ToldFact) => void;
  readonly onBack: () => void;
}

type Draft = Readonly<Record<string, unknown>>;

/** One thing that happened: its numbers are filled in as planned, and one press tells it. */
export function TellForm({ farm, today, what, changes, cows = [], onTold, onBack }: Props) {
  const [draft, setDraft] = useState<Draft>(what.start);
  const [on, setOn] = useState<PlainDate | undefined>(changes?.on ?? today);
  const tell = useTell<ToldKind>(farm.id);
  const isChanged = JSON.stringify(draft) !== JSON.stringify(what.start);
  const back = useWayBack(
    { isUnsaved: isChanged && !tell.isSuccess, discard: () => setDraft(what.start) },
    onBack,
  );
  const words = wordsOfRow(what.fields, farm);
  const problems = problemsIn(tell.error).map((each) => ({
    ...each,
    field: each.field.replace(/^facts\.0\.(details\.)?/, ''),
  }));
  const errors = messagesByField(problems, words);
  const fields = Object.entries(what.fields.fields).filter(
    ([name]) => name !== 'cowId' || 0 < cows.length,
  );
  const isRight =
    on !== undefined &&
    unreadNumbers(draft).length === 0 &&
    fields.every(([name, { isOptional }]) => isOptional || draft[name] !== undefined);
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (!isRight) return;
        const said = {
          ...{ kind: what.kind, about: what.about, on, details: withoutNothing(draft) },
          ...(changes ? { replaces: changes.id } : {}),
        };
        tell.mutate(said as Parameters<typeof tell.mutate>[0], {
          onSuccess: ([fact]) => fact && onTold(fact as ToldFact),
        });
      }}
    >
      <Stack gap="sm">
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          {fields.map(([name, field], k) => (
            <OneField
              key={name}
              name={name}
              field={field}
              farm={farm}
              cows={cows}
              isFirst={k === 0}
              value={draft[name]}
              error={errors[name]}
              onChange={(value) => setDraft((old) => ({ ...old, [name]: value }))}
            />
          ))}
          <DateField label="Day" value={on} max={today} error={errors['on']} onChange={setOn} />
        </SimpleGrid>
        {problems.length === 0 && <Failure error={tell.error} />}
        <Group>
          <Button type="submit" size="md" disabled={!isRight} loading={tell.isPending}>
            {changes ? 'Change it' : 'Tell it'}
          </Button>
          <Button variant="subtle" onClick={back}>
            Back
          </Button>
        </Group>
      </Stack>
    </form>
  );
}

function OneField({
  name,
  field,
  farm,
  cows,
  isFirst,
  value,
  error,
  onChange,
}: {
  name: string;
  field: Field;
  farm: SavedFarm;
  cows: NonNullable<Props['cows']>;
  isFirst: boolean;
  value: unknown;
  error: string | undefined;
  onChange: (value: unknown) => void;
}) {
  const shown = { label: field.label, error, ...(isFirst ? { 'data-autofocus': true } : {}) };
  if (field.kind === 'number')
    return (
      <QuantityInput
        {...shown}
        field={field}
        units={farm.units}
        value={value as number | undefined}
        onChange={onChange}
      />
    );
  if (field.kind === 'choice')
    return (
      <Select
        {...shown}
        value={value as string | undefined}
        options={field.allowed.map((id) => ({ id, name: CHOICES[id] ?? id }))}
        {...(field.isOptional ? { none: 'Not said' } : {})}
        onChange={onChange}
      />
    );
  if (field.kind === 'yes-no')
    return (
      <Checkbox
        mt="lg"
        label={field.label}
        checked={value === true}
        onChange={(event) => onChange(event.currentTarget.checked || undefined)}
      />
    );
  if (name === 'cowId')
    return (
      <Select
        {...shown}
        value={value as string | undefined}
        options={cows}
        none="Not said"
        onChange={onChange}
      />
    );
  if (field.kind === 'word')
    return (
      <PriceInput
        {...shown}
        currency={farm.currency}
        value={value as string | undefined}
        onChange={onChange}
      />
    );
  const text = {
    ...shown,
    value: (value as string | undefined) ?? '',
    onChange: (event: { currentTarget: { value: string } }) =>
      onChange(event.currentTarget.value || undefined),
  };
  return field.kind === 'text' && field.hasLines ? (
    <Textarea {...text} autosize minRows={3} />
  ) : (
    <TextInput {...text} />
  );
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** What choices are called. */
const CHOICES: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries({ ...CAUSE_WORDS, ...GONE_WORDS, ...BOUGHT_WORDS, other: 'something else' }).map(
    ([id, words]) => [id, capital(words)],
  ),
);

const withoutNothing = (draft: Draft): Draft =>
  Object.fromEntries(Object.entries(draft).filter(([, value]) => value !== undefined));
