import { Text } from '@mantine/core';
import { dayPiece } from '../../../../shared/plan/work/day-piece.js';
import type { PlannedJob, WorkPlan } from '../../../../shared/plan/work/planned-work.js';
import { formatHours } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { DayJob } from '../../tick/day-job.js';
import { eachHours } from '../../tick/each-hours.js';
import { personName } from './person-name.js';

/** One piece of work of a day: who, how long, why now, what if not; and its control. */
export function DayWork({
  plan,
  farm,
  job,
  date,
}: {
  plan: WorkPlan;
  farm: SavedFarm;
  job: PlannedJob;
  date: string;
}) {
  const piece = dayPiece(job, date);
  const isPart = piece !== undefined && job.pieces.some((each) => each.date !== date);
  const nameOf = (id: string): string => personName(plan, id);
  // Where several have a piece of it each, each has hours of their own.
  const who = piece?.each
    ? piece.each
        .map(({ personIds, hours }) => `${personIds.map(nameOf).join()}: ${formatHours(hours)}`)
        .join(' and ')
    : (piece?.personIds ?? []).map(nameOf).join(' and ');
  return (
    <div className="day-work">
      <Text fw={600} component="h4" m={0}>
        {job.name}
      </Text>
      <details>
        <summary>
          {who && `${who}, `}
          {eachHours(piece?.hours ?? job.hours, job.peopleNeeded)}
          {isPart && ` of ${formatHours(job.hours)}`}
          {job.belongsTo && ` · ${job.belongsTo.name}`}
          {0 < job.shortHours && `, ${formatHours(job.shortHours)} more than anyone has`}
        </summary>
        <Text size="sm">Why now: {job.why}</Text>
        {job.ifLate && <Text size="sm">If not: {job.ifLate}.</Text>}
      </details>
      {job.learned && (
        <Text size="sm">
          {job.belongsTo ? 'The table says' : 'You gave it'}{' '}
          {formatHours(job.learned.reckonedHours)};{' '}
          {job.learned.times === 1
            ? 'the time you logged'
            : `the ${job.learned.times} times you logged`}{' '}
          make it {formatHours(job.hours)}.
        </Text>
      )}
      <DayJob
        work={{
          ...job,
          of: job.belongsTo?.name,
          due: job.latest,
          ...(piece ? { planned: piece.date } : {}),
          ...(isPart ? { partHours: piece.hours } : {}),
        }}
        units={farm.units}
        today={plan.today}
      />
    </div>
  );
}
