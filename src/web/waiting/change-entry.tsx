import { Button, Stack } from '@mantine/core';
import { useState } from 'react';
import { progressFields } from '../../../shared/farm/job.js';
import { sendAgain } from '../api/outbox.js';
import { DateField } from '../fields/date-input.js';
import { DescribedField } from '../fields/described-field.js';
import type { Entry, SaidFact } from '../kept/entry.js';
import { fieldsOf } from './say-entry.js';
import { todayAt, type Place } from './say-moment.js';

/** What the page says by itself. */
const UNASKED = ['key', 'undo', 'work'];

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
        .filter(([name]) => name in values && !UNASKED.includes(name))
        .map(([name, field]) => (
          <DescribedField
            key={name}
            field={field}
            reader={place}
            value={values[name]}
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
