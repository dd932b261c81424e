import { Button, Group, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import { problemsOfNumber } from '../../../../shared/farm/bounds.js';
import { progressFields, type Progress } from '../../../../shared/farm/job.js';
import type { PlannedJob, WorkPlan } from '../../../../shared/plan/work/work-plan.js';
import { formatHours } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { personName } from './person-name.js';

const HOURS = progressFields.fields.hours;

/** One piece of work of a day: who, how long, why now, what if not; ticked off or put off. */
export function DayJob({
  plan,
  farm,
  job,
  date,
  isBusy,
  onMark,
}: {
  plan: WorkPlan;
  farm: SavedFarm;
  job: PlannedJob;
  date: string;
  isBusy: boolean;
  onMark: (mark: Progress) => void;
}) {
  const [isTimed, setTimed] = useState(false);
  const [took, setTook] = useState<number | undefined>(job.hours);
  const piece = job.pieces.find((each) => each.date === date)!;
  const who = piece.personIds.map((id) => personName(plan, id)).join(' and ');
  const isWrong = took === undefined || 0 < problemsOfNumber('hours', took, HOURS.bounds).length;
  const isPart = 1 < job.pieces.length;
  const done = { key: job.key, doneOn: plan.today };
  return (
    <Stack gap={2} mt="sm">
      <Text fw={600}>{job.name}</Text>
      <Text size="sm">
        {who}, {formatHours(piece.hours)}
        {1 < job.pieces.length && ` of ${formatHours(job.hours)}`}
        {job.belongsTo && ` · ${job.belongsTo.name}`}
        {0 < job.shortHours && `, ${formatHours(job.shortHours)} more than anyone has`}
      </Text>
      {job.learned && (
        <Text size="sm">
          The table says {formatHours(job.learned.reckonedHours)};{' '}
          {job.learned.times === 1
            ? 'the time you logged'
            : `the ${job.learned.times} times you logged`}{' '}
          make it {formatHours(job.hours)}.
        </Text>
      )}
      <Text size="sm">Why now: {job.why}</Text>
      {job.ifLate && <Text size="sm">If not: {job.ifLate}.</Text>}
      <Group gap="xs" align="end" className="no-print">
        {isPart && (
          <Button
            variant="light"
            disabled={isBusy}
            onClick={() => onMark({ key: job.key, hoursDone: job.hoursDone + piece.hours })}
            aria-label={`Done for this day: ${job.name}`}
          >
            {formatHours(piece.hours)} done
          </Button>
        )}
        <Button
          variant="light"
          disabled={isBusy}
          onClick={() => onMark(done)}
          aria-label={`Done: ${job.name}`}
        >
          {isPart ? 'All done' : 'Done'}
        </Button>
        {isTimed ? (
          <>
            <QuantityInput
              w={120}
              label="Hours it took"
              aria-label={`Hours it took: ${job.name}`}
              field={HOURS}
              units={farm.units}
              value={took}
              onChange={setTook}
            />
            <Button
              variant="default"
              disabled={isBusy || isWrong}
              onClick={() => onMark({ ...done, ...(took === undefined ? {} : { hours: took }) })}
              aria-label={`Save the hours: ${job.name}`}
            >
              Save the hours
            </Button>
          </>
        ) : (
          <Button
            variant="default"
            disabled={isBusy}
            onClick={() => setTimed(true)}
            aria-label={`Took other hours: ${job.name}`}
          >
            Log other hours
          </Button>
        )}
        <Button
          variant="default"
          disabled={isBusy}
          onClick={() =>
            onMark({
              key: job.key,
              notBefore: addDays(date, 1),
              ...(0 < job.hoursDone ? { hoursDone: job.hoursDone } : {}),
            })
          }
          aria-label={`Put off: ${job.name}`}
        >
          Put off a day
        </Button>
      </Group>
    </Stack>
  );
}
