import { Button, Group, TextInput } from '@mantine/core';
import { useState } from 'react';
import { addDays, type PlainDate } from '../../../shared/calendar/plain-date.js';
import { problemsOfNumber } from '../../../shared/farm/bounds.js';
import { progressFields } from '../../../shared/farm/job.js';
import type { TripToBuy } from '../../../shared/plan/tasks/task.js';
import type { UnitSystem } from '../../../shared/units/unit.js';
import type { Said } from '../api/work-queries.js';
import { DateField } from '../fields/date-input.js';
import { QuantityInput } from '../fields/quantity-input.js';

const FIELDS = progressFields.fields;

/** A piece of work as its control needs it, whichever list it stands in. */
export interface WorkRow {
  readonly key: string;
  readonly name: string;
  /** Of each who takes part, what is still open. */
  readonly hours: number;
  readonly hoursDone?: number;
  /** Hours of it that are planned for the day it stands under, where others come on other days. */
  readonly partHours?: number;
  readonly due?: PlainDate;
  /** The day it stands under; left out, today. */
  readonly planned?: PlainDate;
  /** What is bought on it, told when it is done. */
  readonly buys?: TripToBuy | undefined;
  /** What was told of it before this screen was opened. */
  readonly state?: 'done' | 'struck-out';
}

/** Hours that may be told. */
export const isRight = (hours: number | undefined): hours is number =>
  hours !== undefined && problemsOfNumber('hours', hours, FIELDS.hours.bounds).length === 0;

/** Work of today is put off to tomorrow; what is planned for later, by a week. */
const laterThan = (
  planned: PlainDate | undefined,
  today: PlainDate,
): { readonly on: PlainDate; readonly said: string } =>
  planned === undefined || planned <= today
    ? { on: addDays(today, 1), said: 'to tomorrow' }
    : { on: addDays(planned, 7), said: 'by a week' };

/** Other hours, other days, or not at all. */
export function ChangeWork({
  work: { key, name, due, planned, hours: open, hoursDone = 0 },
  units,
  today,
  say,
}: {
  work: WorkRow;
  units: UnitSystem;
  today: PlainDate;
  say: (said: Said) => void;
}) {
  const hours = open + hoursDone;
  const later = laterThan(planned, today);
  const [ownHours, setHours] = useState<number | undefined>(hours);
  const [notBefore, setFrom] = useState<PlainDate | undefined>();
  const [dueOn, setDue] = useState<PlainDate | undefined>(due);
  const [because, setBecause] = useState('');
  const isOrdered = notBefore === undefined || dueOn === undefined || notBefore <= dueOn;
  const changed: Said = {
    key,
    ...(ownHours !== undefined && ownHours !== hours ? { ownHours } : {}),
    ...(notBefore === undefined ? {} : { notBefore }),
    ...(dueOn === undefined || dueOn === due ? {} : { dueOn }),
  };
  return (
    <>
      <Button
        variant="default"
        aria-label={`Put off ${later.said}: ${name}`}
        onClick={() => say({ key, notBefore: later.on })}
      >
        Put off {later.said}
      </Button>
      <Group gap="xs" align="end" mt="xs">
        <QuantityInput
          w={130}
          label={FIELDS.ownHours.label}
          aria-label={`Hours to plan: ${name}`}
          field={FIELDS.ownHours}
          units={units}
          value={ownHours}
          onChange={setHours}
        />
        <DateField label={FIELDS.notBefore.label} value={notBefore} onChange={setFrom} />
        <DateField
          label={FIELDS.dueOn.label}
          value={dueOn}
          error={isOrdered ? undefined : 'This is before its first day.'}
          onChange={setDue}
        />
        <Button
          variant="light"
          disabled={!isRight(ownHours) || !isOrdered || Object.keys(changed).length === 1}
          aria-label={`Save the change: ${name}`}
          onClick={() => say(changed)}
        >
          Save the change
        </Button>
      </Group>
      <Group gap="xs" align="end" mt="xs">
        <TextInput
          label={FIELDS.because.label}
          aria-label={`Why it is struck out: ${name}`}
          value={because}
          maxLength={FIELDS.because.most}
          onChange={(e) => setBecause(e.currentTarget.value)}
        />
        <Button
          variant="default"
          aria-label={`Strike out: ${name}`}
          onClick={() => say({ key, struckOut: true, ...(because ? { because } : {}) })}
        >
          Strike out
        </Button>
      </Group>
    </>
  );
}
