import './tick.css';
import { Button, Group, TextInput } from '@mantine/core';
import { useState } from 'react';
import { addDays, type PlainDate } from '../../../shared/calendar/plain-date.js';
import { problemsOfNumber } from '../../../shared/farm/bounds.js';
import { progressFields } from '../../../shared/farm/job.js';
import { formatHours } from '../../../shared/units/format.js';
import type { UnitSystem } from '../../../shared/units/unit.js';
import { useSayDate } from '../explain/say-date.js';
import { DateField } from '../fields/date-input.js';
import { QuantityInput } from '../fields/quantity-input.js';
import { useWorkMarks, type Said } from './work-marks.js';

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
  /** What was told of it before this screen was opened. */
  readonly state?: 'done' | 'struck-out';
}

/** One control for a piece of work, at any time: done, undone, struck out, other hours or days. */
export function DayJob({
  work,
  units,
  today,
}: {
  work: WorkRow;
  units: UnitSystem;
  today: PlainDate;
}) {
  const { said, isSaving, say } = useWorkMarks();
  const { key, name, partHours, hours, hoursDone = 0 } = work;
  const now = said.get(key);
  const isDone = now?.doneOn !== undefined || (work.state === 'done' && now === undefined);
  const isStruck = now?.struckOut === true || (work.state === 'struck-out' && now === undefined);
  if (isDone || isStruck || now) {
    return (
      <div className="day-job-done" role="status">
        <Group gap="xs" align="end">
          <span>{isSaving(key) ? 'Saving …' : <SaidWords said={now} work={work} />}</span>
          <Button
            variant="default"
            aria-label={`Undo: ${name}`}
            onClick={() => say({ key, undo: true })}
          >
            Undo
          </Button>
          {isDone && <HoursTook work={work} units={units} />}
        </Group>
      </div>
    );
  }
  return (
    <Group gap="xs" align="end" className="no-print">
      {partHours !== undefined && (
        <Button
          variant="light"
          onClick={() => say({ key, hoursDone: hoursDone + partHours })}
          aria-label={`Done for this day: ${name}`}
        >
          {formatHours(partHours)} done
        </Button>
      )}
      <Button
        variant="light"
        onClick={() => say({ key, doneOn: today })}
        aria-label={`Done: ${name}`}
      >
        {partHours === undefined ? 'Done' : 'All done'}
      </Button>
      <details className="day-job-more">
        <summary aria-label={`Change: ${name}`}>Change</summary>
        <ChangeWork work={work} units={units} today={today} hours={hours + hoursDone} />
      </details>
    </Group>
  );
}

function SaidWords({ said, work }: { said: Said | undefined; work: WorkRow }) {
  const sayDate = useSayDate();
  if (said?.struckOut || (!said && work.state === 'struck-out')) return 'Struck out.';
  if (said?.doneOn !== undefined || work.state === 'done') return 'Done.';
  if (said?.hoursDone !== undefined) return `${formatHours(said.hoursDone)} of it done.`;
  if (said?.dueOn !== undefined) return `Due by ${sayDate(said.dueOn)} now.`;
  if (said?.ownHours !== undefined) return `Planned with ${formatHours(said.ownHours)}.`;
  return said?.notBefore === undefined ? null : `Not before ${sayDate(said.notBefore)}.`;
}

/** Hours that it took are asked after it is done, and kept when the box is left. */
function HoursTook({ work, units }: { work: WorkRow; units: UnitSystem }) {
  const { say } = useWorkMarks();
  const usual = work.hours + (work.hoursDone ?? 0);
  const [took, setTook] = useState<number | undefined>(usual);
  return (
    <QuantityInput
      w={130}
      label={FIELDS.hours.label}
      aria-label={`Hours it took: ${work.name}`}
      field={FIELDS.hours}
      units={units}
      value={took}
      onChange={setTook}
      onBlur={() => {
        if (took !== usual && isRight(took)) say({ key: work.key, hours: took });
      }}
    />
  );
}

const isRight = (hours: number | undefined): hours is number =>
  hours !== undefined && problemsOfNumber('hours', hours, FIELDS.hours.bounds).length === 0;

/** Other hours, other days, or not at all. */
function ChangeWork({
  work: { key, name, due },
  units,
  today,
  hours,
}: {
  work: WorkRow;
  units: UnitSystem;
  today: PlainDate;
  hours: number;
}) {
  const { say } = useWorkMarks();
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
        aria-label={`Put off: ${name}`}
        onClick={() => say({ key, notBefore: addDays(today, 1) })}
      >
        Put off to tomorrow
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
