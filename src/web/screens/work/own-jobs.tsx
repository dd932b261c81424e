import { ActionIcon, Group, Stack, Text } from '@mantine/core';
import { IconPencil, IconTrash } from '@tabler/icons-react';
import { addDays, type PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { OwnJob, Progress } from '../../../../shared/farm/job.js';
import { isRepeated, repeatWords, timesBetween } from '../../../../shared/farm/repeated-jobs.js';
import { formatHours } from '../../../../shared/units/format.js';
import { useRemove, type SavedFarm } from '../../api/queries.js';
import { useSayDate, type SayDate } from '../../explain/say-date.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { Folded } from '../../shell/folded.js';
import { Failure } from '../../shell/states.js';

/** Jobs that stand at once; the others are one touch deeper. */
const NEXT = 10;

/** The household's own jobs, to change or remove. */
export function OwnJobs({
  farm,
  jobs,
  resting,
  progress,
  today,
  onEdit,
}: {
  farm: SavedFarm;
  jobs: readonly OwnJob[];
  resting: readonly OwnJob[];
  progress: readonly Progress[];
  today: PlainDate;
  onEdit: (job: OwnJob) => void;
}) {
  const sayDate = useSayDate();
  const remove = useRemove(farm, 'jobs');
  const doneOn = (job: OwnJob): PlainDate | undefined =>
    isRepeated(job) ? undefined : progress.find(({ key }) => key === `own/${job.id}`)?.doneOn;
  const open = jobs.filter((job) => doneOn(job) === undefined);
  const done = jobs.filter((job) => doneOn(job) !== undefined);
  const rowOf = (job: OwnJob) => (
    <Group key={job.id} id={rowOfJob(job)} justify="space-between" gap="xs" wrap="nowrap">
      <div>
        <Text fw={600}>{job.name}</Text>
        <Text size="sm">
          {formatHours(job.hours)},{' '}
          {doneOn(job) ? `done ${sayDate(doneOn(job)!)}` : whenText(job, today, sayDate)}
        </Text>
      </div>
      <Group gap={0} wrap="nowrap">
        <ActionIcon onClick={() => onEdit(job)} aria-label={`Change ${job.name}`}>
          <IconPencil aria-hidden />
        </ActionIcon>
        <ConfirmButton
          px={10}
          label={`Remove ${job.name}`}
          question={`Remove ${job.name}?`}
          onConfirm={() => remove.mutate(job)}
        >
          <IconTrash aria-hidden />
        </ConfirmButton>
      </Group>
    </Group>
  );
  return (
    <Stack gap="xs">
      {jobs.length === 0 && (
        <Text>
          Beds, orchard, hives, fence, firewood: what competes with the animals for the same hours.
        </Text>
      )}
      <div className="rows">{open.slice(0, NEXT).map(rowOf)}</div>
      {NEXT < open.length && (
        <Folded
          id="later-jobs"
          level={3}
          title={`${open.length - NEXT} later`}
          answer={`up to ${sayDate(open.at(-1)!.dueOn)}`}
        >
          <div className="rows">{open.slice(NEXT).map(rowOf)}</div>
        </Folded>
      )}
      {0 < done.length + resting.length && (
        <details>
          <summary>Done and put away: {done.length + resting.length}</summary>
          {0 < done.length && <div className="rows">{done.map(rowOf)}</div>}
          {resting.map(({ id, name, dueOn }) => (
            <Text key={id}>
              {name}, {sayDate(dueOn)}
            </Text>
          ))}
        </details>
      )}
      <Failure error={remove.error} />
    </Stack>
  );
}

/** Where a job stands in the list, to be led to. */
export const rowOfJob = ({ id }: OwnJob): string => `job-${id}`;

/** When it is due; of what comes again how often, and when it is the next time. */
function whenText(job: OwnJob, today: PlainDate, sayDate: SayDate): string {
  if (!isRepeated(job)) return `due ${sayDate(job.dueOn)}`;
  const [next] = timesBetween(job, today, addDays(today, FAR_DAYS));
  const often = repeatWords(job.repeats);
  return next === undefined ? `${often}, no more` : `${often}, next on ${sayDate(next)}`;
}

/** The longest from one time to the next, and a job may begin only in a year. */
const FAR_DAYS = 2 * 366;
