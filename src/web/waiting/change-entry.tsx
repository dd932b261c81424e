import { Button, Checkbox, NativeSelect, Stack, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { Field } from '../../../shared/farm/field.js';
import { progressFields } from '../../../shared/farm/job.js';
import { sendAgain } from '../api/outbox.js';
import { DateField } from '../fields/date-input.js';
import { QuantityInput } from '../fields/quantity-input.js';
import type { Entry, SaidFact } from '../kept/entry.js';
import { fieldsOf } from './say-entry.js';
import { todayAt, type Place } from './say-moment.js';

type Values = Readonly<Record<string, unknown>>;

/** What was not taken, to be put right: its day and what was said of it. */
export function ChangeEntry({ entry, place }: { entry: Entry; place: Place }) {
  const { message } = entry;
  const first = message.does === 'tell' ? message.facts[0]! : undefined;
  const [on, setOn] = useState<string | undefined>(first?.on);
  const [values, setValues] = useState<Values>(
    first ? { ...first.details } : message.does === 'work' ? { ...message.said } : {},
  );
  const described = first ? fieldsOf(first.kind) : progressFields;
  const isReadable = Object.values(values).every((each) => !Number.isNaN(each));
  const save = (): void => {
    const said = Object.fromEntries(Object.entries(values).filter(([, v]) => v !== undefined));
    const changed: SaidFact | undefined = first && { ...first, on: on!, details: said };
    void sendAgain(entry, {
      message: changed ? { does: 'tell', facts: [changed] } : { does: 'work', said: said as never },
    });
  };
  return (
    <Stack gap="sm" mt="sm">
      {first && <DateField label="Day" value={on} max={todayAt(place)} onChange={setOn} />}
      {Object.entries(described.fields)
        .filter(([name]) => name in values && name !== 'key' && name !== 'undo')
        .map(([name, field]) => (
          <Box
            key={name}
            field={field}
            value={values[name]}
            place={place}
            onChange={(value) => setValues({ ...values, [name]: value })}
          />
        ))}
      <Button
        disabled={!isReadable || (first !== undefined && on === undefined)}
        style={{ alignSelf: 'start' }}
        onClick={save}
      >
        Send it again
      </Button>
    </Stack>
  );
}

/** A box for a value, by how its field is described; what has none stays as it was. */
function Box({
  field,
  value,
  place,
  onChange,
}: {
  field: Field;
  value: unknown;
  place: Place;
  onChange: (value: unknown) => void;
}) {
  const { label } = field;
  if (field.kind === 'number')
    return (
      <QuantityInput
        field={field}
        units={place.units}
        value={value as number | undefined}
        onChange={onChange}
      />
    );
  if (field.kind === 'yes-no')
    return (
      <Checkbox
        label={label}
        checked={value === true}
        onChange={(event) => onChange(event.currentTarget.checked)}
      />
    );
  if (field.kind === 'word' && field.word.name === 'date')
    return <DateField label={label} value={value as string | undefined} onChange={onChange} />;
  if (field.kind === 'choice')
    return (
      <NativeSelect
        label={label}
        data={[...field.allowed]}
        value={String(value)}
        onChange={(event) => onChange(event.currentTarget.value)}
      />
    );
  if (field.kind === 'text')
    return (
      <TextInput
        label={label}
        maxLength={field.most}
        value={String(value ?? '')}
        onChange={(event) => onChange(event.currentTarget.value || undefined)}
      />
    );
  return null;
}
