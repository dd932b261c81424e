import './tick.css';
import { Button, Group } from '@mantine/core';
import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import { formatHours } from '../../../shared/units/format.js';
import type { UnitSystem } from '../../../shared/units/unit.js';
import type { Said } from '../api/work-queries.js';
import { useSayDate } from '../explain/say-date.js';
import { ChangeWork, type WorkRow } from './change-work.js';
import { HoursTook } from './hours-took.js';
import { useWorkMarks } from './work-marks.js';

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
  const { key, name, partHours, hoursDone = 0 } = work;
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
          {isDone && (
            <HoursTook
              {...{ name, units }}
              hours={work.hours + hoursDone}
              onHours={(hours) => say({ key, hours })}
            />
          )}
        </Group>
      </div>
    );
  }
  const done = partHours === undefined ? 'Done' : 'All done';
  return (
    <Group gap="xs" align="end" mt={4} className="no-print">
      {partHours !== undefined && (
        <Button
          variant="light"
          onClick={() => say({ key, hoursDone: hoursDone + partHours })}
          aria-label={`${formatHours(partHours)} done: ${name}`}
        >
          {formatHours(partHours)} done
        </Button>
      )}
      <Button
        variant="light"
        onClick={() => say({ key, doneOn: today, buys: work.buys })}
        aria-label={`${done}: ${name}`}
      >
        {done}
      </Button>
      <details className="day-job-more">
        <summary aria-label={`Change: ${name}`}>Change</summary>
        <ChangeWork work={work} units={units} today={today} say={say} />
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
  if (said?.notBefore === undefined) return null;
  const isLast = said.notBefore === (work.latest ?? work.due);
  return `Put off to ${sayDate(said.notBefore)}${isLast ? ', the last day in time' : ''}.`;
}
