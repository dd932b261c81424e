import { Button, Group, TextInput } from '@mantine/core';
import { useState } from 'react';
import { addDays, type PlainDate } from '../../../shared/calendar/plain-date.js';
import { problemsOfNumber } from '../../../shared/farm/bounds.js';
import { progressFields } from '../../../shared/farm/job.js';
import { atRisk } from '../../../shared/plan/work/at-risk.js';
import { listed } from '../../../shared/units/listed.js';
import type { TripToBuy } from '../../../shared/plan/tasks/task.js';
import type { UnitSystem } from '../../../shared/units/unit.js';
import type { SaidOrBought } from '../api/mark-queries.js';
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
  /** Batch or herd it is for, what hangs on it, and the last day on which it is in time. */
  readonly of?: string | undefined;
  readonly ifLate?: string | undefined;
  readonly latest?: PlainDate | undefined;
  /** Who else has the hours for it today. */
  readonly others?: readonly string[] | undefined;
  /** What was told of it before this screen was opened. */
  readonly state?: 'done' | 'struck-out';
}

/** Hours that may be told. */
const isRight = (hours: number | undefined): hours is number =>
  hours !== undefined && problemsOfNumber('hours', hours, FIELDS.hours.bounds).length === 0;

/** Work of today is put off to tomorrow; what is planned for later, by a week. */
const laterThan = (
  planned: PlainDate | undefined,
  today: PlainDate,
): { readonly on: PlainDate; readonly said: string } =>
  planned === undefined || planned <= today
    ? { on: addDays(today, 1), said: 'to tomorrow' }
    : { on: addDays(planned, 7), said: 'by a week' };

/** What was about to be said, and what it would mean for animals. */
interface Asked {
  readonly said: Said;
  readonly risk: string;
}

const allTheSame = ({ struckOut }: Said): string =>
  struckOut ? 'Strike it out all the same' : 'Put it off all the same';

/** Done on another day than today, whose hours it does not take; other hours, other days, or not at all. */
export function ChangeWork({
  work,
  units,
  today,
  say: sayAtOnce,
}: {
  work: WorkRow;
  units: UnitSystem;
  today: PlainDate;
  say: (said: SaidOrBought) => void;
}) {
  const { key, name, due, planned, hours: open, hoursDone = 0, others = [] } = work;
  const hours = open + hoursDone;
  const [asked, setAsked] = useState<Asked>();
  const say = (said: Said): void => {
    const risk = atRisk(work, said);
    if (risk === undefined) sayAtOnce(said);
    else setAsked({ said, risk });
  };
  const later = laterThan(planned, today);
  const [ownHours, setHours] = useState<number | undefined>(hours);
  const [notBefore, setFrom] = useState<PlainDate | undefined>();
  const [dueOn, setDue] = useState<PlainDate | undefined>(due);
  const [because, setBecause] = useState('');
  const [doneOn, setDoneOn] = useState<PlainDate | undefined>();
  const isToCome = doneOn !== undefined && today < doneOn;
  const isOrdered = notBefore === undefined || dueOn === undefined || notBefore <= dueOn;
  const changed: Said = {
    key,
    ...(ownHours !== undefined && ownHours !== hours ? { ownHours } : {}),
    ...(notBefore === undefined ? {} : { notBefore }),
    ...(dueOn === undefined || dueOn === due ? {} : { dueOn }),
  };
  if (asked) {
    return (
      <div role="alert">
        <p>{asked.risk}</p>
        {0 < others.length && (
          <p>
            {listed(others, 'or')} has the hours for it today: tick it off when they have done it.
          </p>
        )}
        <Group gap="xs">
          <Button variant="default" onClick={() => setAsked(undefined)}>
            Leave it as it is
          </Button>
          <Button
            variant="light"
            aria-label={`${allTheSame(asked.said)}: ${name}`}
            onClick={() => sayAtOnce(asked.said)}
          >
            {allTheSame(asked.said)}
          </Button>
        </Group>
      </div>
    );
  }
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
        <DateField
          label={FIELDS.doneOn.label}
          aria-label={`Day it was done: ${name}`}
          max={today}
          value={doneOn}
          error={isToCome ? 'This day is still to come.' : undefined}
          onChange={setDoneOn}
        />
        <Button
          variant="default"
          disabled={doneOn === undefined || isToCome}
          aria-label={`Done on that day: ${name}`}
          onClick={() => doneOn && sayAtOnce({ key, doneOn, buys: work.buys })}
        >
          Done on that day
        </Button>
      </Group>
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
